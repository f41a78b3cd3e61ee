package fast_test

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/internal/conform"
	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/model"
)

var randomDeals = flag.Int("deals", 1000, "random deals to try; a twentieth of them with -short")

// apart is the stated bound: how far a trial may lie from the exact value where no rounding and no
// comparison is a tie: in its unit, or as a share of the largest sum of the deal.
const apart = 1e-9

// A report is what a comparison of many trials found.
type report struct {
	mutex  sync.Mutex
	trials int
	cells  int
	tied   map[string]int // trials with a tie, by operator
	most   float64        // the greatest difference without a tie, by the bound's measure
	where  string
	moved  float64 // the greatest with one, in dollars
	failed int     // trials that the exact reader refuses
	why    error   // of the last of them
}

// trials is how many are drawn of each deal.
const trials = 6

// compare draws trials of a deal and compares every cell of one value.
func (r *report) compare(t *rapid.T, m *model.Model) {
	axes, base := someAxes(t, m)
	var want []*model.Cell
	for _, c := range m.Cells {
		if !c.Line.Monthly {
			want = append(want, c)
		}
	}
	in, out := columns(len(axes)), columns(len(want))
	held := heldLoans(t, m, base)
	drawn := make([]map[int]decimal.Decimal, trials)
	for i := range trials {
		drawn[i] = map[int]decimal.Decimal{}
		for _, h := range held {
			drawn[i][h.Cell.Index] = h.Value
		}
		for k, c := range axes {
			x := another(t, c, base[c.Index])
			drawn[i][c.Index], in[k][i] = x, float.Near(x)
		}
	}
	q, err := fast.Ask(m, ended(t, axes, in), want, held...)
	require.NoError(t, err)
	require.NoError(t, q.Worker().Run(in, out))
	r.mutex.Lock()
	defer r.mutex.Unlock()
	for i, changes := range drawn {
		v, tie, err := exactly(m, m.Needed(), changes)
		r.trials++
		if err != nil {
			r.failed++
			r.why = err
			continue
		}
		if tie != "" {
			r.tied[tie]++
		}
		size := largest(m, v.Scalar)
		for k, c := range want {
			x := v.Scalar[c.Index].InexactFloat64()
			d := math.Abs(out[k][i] - x)
			if tie != "" {
				if c.Line.Unit == "$" {
					r.moved = math.Max(r.moved, d)
				}
				continue
			}
			r.cells++
			of := math.Max(1, math.Abs(x))
			if c.Line.Unit == "$" {
				of = math.Max(of, size)
			}
			if d /= of; d > r.most || math.IsNaN(d) {
				r.most, r.where = d, fmt.Sprintf("%s: %v, exactly %v", c.Name(), out[k][i], x)
			}
			if !(d <= apart) {
				t.Fatalf("%s: %v, exactly %v; changed: %v", c.Name(), out[k][i], x, changed(m, changes))
			}
		}
	}
}

// ended are axes that may have any value, or go just as far as the trials do.
func ended(t *rapid.T, axes []*model.Cell, in [][]float64) []fast.Axis {
	out := free(axes)
	for i, x := range in {
		if rapid.Bool().Draw(t, "has ends") {
			out[i].Least, out[i].Most = slices.Min(x), slices.Max(x)
		}
	}
	return out
}

// heldLoans keeps, in some deals, the loans at what they are in the plan.
func heldLoans(t *rapid.T, m *model.Model, base []decimal.Decimal) (out []fast.Change) {
	if !rapid.Bool().Draw(t, "loans are held") {
		return nil
	}
	for _, l := range m.Root.In("loan") {
		for _, line := range []string{"loan_at_closing", "holdback", "reserve"} {
			c := m.Find(l, line)
			out = append(out, fast.Change{Cell: c, Value: base[c.Index]})
		}
	}
	return out
}

func changed(m *model.Model, changes map[int]decimal.Decimal) (out []string) {
	for i, x := range changes {
		out = append(out, m.Cells[i].Name()+" "+x.String())
	}
	return out
}

func columns(n int) [][]float64 {
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, trials)
	}
	return out
}

// largest is the largest sum of dollars in a deal; trillions stand for no limit.
func largest(m *model.Model, v []decimal.Decimal) float64 {
	most := 0.0
	for i, c := range m.Cells {
		if x := math.Abs(v[i].InexactFloat64()); c.Line.Unit == "$" && x < 1e11 {
			most = math.Max(most, x)
		}
	}
	return most
}

// someAxes draws inputs to vary, some eight: numbers that the deal gives or that a stress
// moves.
func someAxes(t *rapid.T, m *model.Model) ([]*model.Cell, []decimal.Decimal) {
	v, _, err := exactly(m, m.Needed(), nil)
	require.NoError(t, err)
	stress := map[string]bool{"overrun": true, "standstill": true, "late_sale": true, "market_change": true, "sale_price": true}
	var may []*model.Cell
	for _, c := range m.Cells {
		given := c.Given != nil && c.Given.Refers == "" && c.Line.Unit != "choice" && c.Line.Unit != "flag" && c.Line.Unit != "day"
		if c.Line.Input && !c.Line.Monthly && (given || stress[c.Line.Name]) {
			may = append(may, c)
		}
	}
	var axes []*model.Cell
	for _, i := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(may)-1), 0, min(8, len(may)), rapid.ID[int]).Draw(t, "vary") {
		axes = append(axes, may[i])
	}
	return axes, v.Scalar
}

// another draws another value of an input: some months or a part more, or a share of it,
// finely or in round numbers, so that halves of cents and whole months come up too.
func another(t *rapid.T, c *model.Cell, base decimal.Decimal) decimal.Decimal {
	n := part(t, 3)
	switch name := c.Line.Name; {
	case name == "lag":
		return decimal.NewFromInt(rapid.Int64Range(0, 4).Draw(t, "lag"))
	case name == "amortising_months":
		return decimal.NewFromInt(rapid.Int64Range(0, 400).Draw(t, "amortising"))
	case name == "late_sale" || name == "standstill":
		return base.Add(n.Mul(decimal.NewFromInt(8)))
	case name == "overrun" || name == "market_change":
		return base.Add(n.Sub(decimal.New(5, -1)))
	}
	return base.Mul(n.Add(decimal.New(5, -1)))
}

// part draws a number from 0 to 1, evenly: in few places or in 15.
func part(t *rapid.T, places int) decimal.Decimal {
	if rapid.Bool().Draw(t, "finely") {
		places = 15
	}
	x := decimal.Decimal{}
	for range places {
		x = x.Shift(1).Add(decimal.NewFromInt(int64(rapid.IntRange(0, 9).Draw(t, "digit"))))
	}
	return x.Shift(int32(-places))
}

func (r *report) log(t *testing.T) {
	t.Logf("%d trials, %d refused (%v), %d cells compared; at most %.3g apart (%s); ties: %v, at most $%.2f apart", r.trials, r.failed, r.why, r.cells, r.most, r.where, r.tied, r.moved)
	require.Positive(t, r.cells)
}

// ties is how many trials turn on one.
func (r *report) ties() (n int) {
	for _, times := range r.tied {
		n += times
	}
	return n
}

// Whatever varies in a deal, a trial is what the exact reader makes of it.
func TestConforms(t *testing.T) {
	r := report{tied: map[string]int{}}
	all, tied := 0, 0
	e := conform.Effort{Random: *randomDeals, Houses: *randomDeals / 10, Times: 40}
	conform.Run(t, e, func(t *rapid.T, d conform.Deal) { r.compare(t, d.Model) }, func(t *testing.T) {
		r.log(t)
		all, tied = all+r.trials, tied+r.ties()
		r = report{tied: map[string]int{}}
	})
	require.Less(t, tied, all/3, "few trials turn on a tie")
}

func scenario(t testing.TB, file string) *model.Model { return conform.Scenario(t, file).Model }
