package slope_test

import (
	"flag"
	"math"
	"sync"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/conform"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/slope"
)

var randomDeals = flag.Int("deals", 500, "random deals to try; a twentieth of them with -short")

// uncut are the exact rules without what would hide a small change: rounding to the cent,
// and to 9 decimals before whole things are counted.
type uncut struct{ walk.Decimals }

// whole is how many decimals are looked at before whole things are counted: fewer than a
// quotient is good for, and so many that a step shows in all that follows it at 1e-12.
const whole = 20

func (uncut) Apply(op *formula.Op, args []decimal.Decimal) (decimal.Decimal, error) {
	switch op.Code {
	case formula.Cents:
		return args[0], nil
	case formula.Ceil:
		return args[0].Round(whole).Ceil(), nil
	case formula.Floor:
		return args[0].Round(whole).Floor(), nil
	}
	return op.Exact(args)
}

// wanted are results that the ranking of a stress shows.
var wanted = []string{"profit", "owner_profit", "cash_needed", "roi", "margin", "total_cost", "payoff"}

// step is how far apart the exact reader is asked, as a share of an input or in its unit:
// so near that bends between do not show.
const step = 1e-8

// A tally counts what was compared.
type tally struct {
	sync.Mutex
	compared, bent, none int
	most                 float64
}

// compare draws some inputs of a deal and compares the slopes of all wanted lines with
// what the exact reader makes of small steps to the right, uncut.
func (y *tally) compare(t *rapid.T, m *model.Model) {
	inputs := inputs(m)
	if len(inputs) > 12 {
		some := rapid.SliceOfNDistinct(rapid.IntRange(0, len(inputs)-1), 6, 12, rapid.ID[int]).Draw(t, "inputs")
		var kept []*model.Cell
		for _, i := range some {
			kept = append(kept, inputs[i])
		}
		inputs = kept
	}
	var want []*model.Cell
	for _, w := range wanted {
		if c := m.Find(m.Root, w); c != nil && !c.Line.Monthly {
			want = append(want, c)
		}
	}
	slopes, err := slope.Of(m, inputs, want)
	require.NoError(t, err)
	base, err := at(m, nil)
	require.NoError(t, err)
	for i, c := range inputs {
		x := base.Scalar[c.Index]
		h := decimal.NewFromFloat(step).Mul(decimal.Max(x.Abs(), decimal.NewFromInt(1)))
		var f [4]*walk.Values[decimal.Decimal]
		for k := 1; k < len(f) && err == nil; k++ {
			f[k], err = at(m, map[int]decimal.Decimal{c.Index: x.Add(h.Mul(decimal.NewFromInt(int64(k))))})
		}
		if err != nil {
			err = nil
			continue // the input cannot grow
		}
		for k, w := range want {
			y.see(t, scale(x, base.Scalar[w.Index]), slopes[k][i], [3]float64{
				per(f[1], base, w, h), per(f[2], f[1], w, h), per(f[3], f[2], w, h),
			}, w.Name()+" for "+c.Name()+" at "+x.String())
		}
	}
}

// per is the change of a cell from one working to another for each unit of an input.
func per(to, from *walk.Values[decimal.Decimal], c *model.Cell, h decimal.Decimal) float64 {
	return to.Scalar[c.Index].Sub(from.Scalar[c.Index]).Div(h).InexactFloat64()
}

// near is how far a slope may be off, as a share of it.
const near = 1e-6

// see compares a slope with three small steps, of which the first may cross a step of the
// deal just at the input. Where the others differ the deal bends there, and where only
// the first does, something may begin inside it that grows too slowly for a slope to see.
func (y *tally) see(t *rapid.T, scale, got float64, steps [3]float64, what string) {
	most := near * math.Max(scale, math.Abs(steps[1]))
	same := func(a, b float64) bool { return math.Abs(a-b) <= most }
	start := steps[1] + 1.5*(steps[1]-steps[2]) // the second step begins one step from it
	y.Lock()
	defer y.Unlock()
	switch {
	case same(got, start):
		y.compared++
		y.most = math.Max(y.most, math.Abs(got-start)/most)
	case !same(steps[1], steps[2]):
		y.bent++
	case !same(steps[0], steps[1]) || math.IsNaN(got) || math.IsInf(got, 0):
		y.none++
	default:
		t.Fatalf("%s: %v, but small steps give %v", what, got, steps)
	}
}

// scale is a slope that would not be worth telling apart from 0 if it were so much less.
func scale(x, y decimal.Decimal) float64 {
	return math.Max(math.Abs(y.InexactFloat64()), 1) / math.Max(math.Abs(x.InexactFloat64()), 1)
}

func at(m *model.Model, changes map[int]decimal.Decimal) (*walk.Values[decimal.Decimal], error) {
	w := walk.Walker[decimal.Decimal, uncut]{Values: walk.New[decimal.Decimal](m), Changed: changes}
	return w.Values, w.Steps(m.Needed())
}

// inputs are the numbers that a deal gives, and those that a stress moves.
func inputs(m *model.Model) (out []*model.Cell) {
	stress := map[string]bool{"overrun": true, "standstill": true, "late_sale": true, "market_change": true, "sale_price": true}
	for _, c := range m.Cells {
		number := c.Line.Unit != "choice" && c.Line.Unit != "flag" && c.Line.Unit != "day" && c.Line.Name != "lag" && c.Line.Name != "amortising_months"
		if c.Line.Input && !c.Line.Monthly && number && (c.Given != nil && c.Given.Refers == "" || stress[c.Line.Name]) {
			out = append(out, c)
		}
	}
	return out
}

// Slopes are those of small steps of the exact reader.
func TestConforms(t *testing.T) {
	var y tally
	conform.Run(t, conform.Effort{Random: *randomDeals, Times: 20}, func(t *rapid.T, d conform.Deal) { y.compare(t, d.Model) }, func(t *testing.T) {
		t.Logf("%d slopes compared, %d bent, %d not seen, at most %.2g of the tolerance apart", y.compared, y.bent, y.none, y.most)
		require.Greater(t, y.compared, 100*(y.bent+y.none))
		y = tally{}
	})
}
