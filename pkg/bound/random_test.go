package bound_test

import (
	"errors"
	"flag"
	"sync"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/affine"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

var randomDeals = flag.Int("deals", 2000, "random deals to try; a twentieth of them with -short")

// bounded are the lines that searches watch.
var bounded = []string{"profit", "owner_profit", "profit_to_spare", "margin_to_spare", "roi_to_spare", "cash_to_spare"}

// grains are how many of each grain make 1; nothing is known of a fine one.
var grains = map[affine.Grain]decimal.Decimal{affine.Fine: {}, affine.OfCents: decimal.NewFromInt(100), affine.Whole: decimal.NewFromInt(1)}

// An axis is an input that varies and the ends between which it may.
type axis struct {
	line        string
	least, most decimal.Decimal
	step        decimal.Decimal
}

func axes(v *exact.Values, m *model.Model) []axis {
	arv := v.Of(m.Find(m.Root, "after_repair_value"))
	dollar, tenth, mille := decimal.NewFromInt(1), decimal.New(1, -1), decimal.New(1, -3)
	return []axis{
		{"price", decimal.Zero, arv.Mul(decimal.NewFromInt(3)).Ceil(), dollar},
		{"sale_price", decimal.Zero, arv.Mul(decimal.NewFromInt(3)).Ceil(), dollar},
		{"overrun", decimal.Zero, decimal.NewFromInt(3), mille},
		{"late_sale", decimal.Zero, decimal.NewFromInt(36), tenth},
		{"standstill", decimal.Zero, decimal.NewFromInt(12), tenth},
		{"rate", decimal.Zero, decimal.NewFromInt(1), mille},
	}
}

// cell is the axis's cell; a rate is that of the first loan, or none.
func (a axis) cell(m *model.Model) *model.Cell {
	if a.line != "rate" {
		return m.Find(m.Root, a.line)
	}
	for _, l := range m.Root.In("loan") {
		return m.Find(l, a.line)
	}
	return nil
}

// at is the value so many parts in 4096 along the axis, at a step of it.
func (a axis) at(parts int) decimal.Decimal {
	x := a.most.Sub(a.least).Mul(decimal.NewFromInt(int64(parts))).DivRound(decimal.NewFromInt(4096), 9)
	return a.least.Add(x.DivRound(a.step, 0).Mul(a.step))
}

func TestBoundsHoldForEveryValueInTheRange(t *testing.T) {
	var mutex sync.Mutex
	tried := map[string]int{}
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		d := modeltest.Random(t)
		doc, err := model.Standard()
		require.NoError(t, err)
		m, err := model.Bind(doc, d.Deal)
		require.NoError(t, err)
		v, err := exact.Evaluate(m, m.Find(m.Root, "after_repair_value"))
		require.NoError(t, err)
		a := rapid.SampledFrom(axes(v, m)).Draw(t, "axis")
		if a.cell(m) == nil {
			return
		}
		n := a.hold(t, m)
		mutex.Lock()
		tried[a.line] += n
		mutex.Unlock()
	})
	for _, line := range []string{"price", "sale_price", "overrun", "late_sale", "standstill", "rate"} {
		require.Positive(t, tried[line], "no range of %s was tried", line)
	}
	t.Logf("points tried: %v", tried)
}

// hold checks points of random ranges of an axis and returns how many.
func (a axis) hold(t *rapid.T, m *model.Model) (points int) {
	cell := a.cell(m)
	var wanted []*model.Cell
	for _, line := range bounded {
		wanted = append(wanted, m.Find(m.Root, line))
	}
	var changes []exact.Change
	if rapid.Bool().Draw(t, "at another value") {
		changes = append(changes, exact.Change{Cell: m.Find(m.Root, "after_repair_value"), Value: decimal.NewFromInt(250_000)})
	}
	along := bound.Axis{Cell: cell, Least: a.least, Most: a.most}
	if rapid.Bool().Draw(t, "by steps") {
		along.Step = a.step
	}
	plan, err := bound.NewPlan(m, along, changes, wanted...)
	require.NoError(t, err)
	truth := exact.NewPlan(m, wanted...)
	for range 3 {
		parts := 4096 >> rapid.IntRange(0, 12).Draw(t, "narrower")
		from := rapid.IntRange(0, 4096-parts).Draw(t, "from")
		low, high := a.at(from), a.at(from+parts)
		bounds, err := plan.Over(low, high)
		if errors.Is(err, bound.ErrVaries) {
			continue
		}
		require.NoError(t, err)
		for _, x := range a.inside(t, low, high) {
			values, err := truth.Evaluate(append(changes, exact.Change{Cell: cell, Value: x})...)
			require.NoError(t, err)
			for i, c := range wanted {
				along := 0.0
				if high.GreaterThan(low) {
					along = x.Sub(low).DivRound(high.Sub(low), 20).InexactFloat64()
				}
				b, got := bounds[i], values.Of(c).InexactFloat64()
				require.True(t, values.Of(c).Mul(grains[b.Grain()]).IsInteger(), "%s is %s where %s is %s, with grain %d", c.Name(), values.Of(c), a.line, x, b.Grain())
				require.LessOrEqual(t, b.C+b.S*along+b.Lo-bound.Noise, got, "%s where %s is %s, from %s to %s", c.Name(), a.line, x, low, high)
				require.GreaterOrEqual(t, b.C+b.S*along+b.Hi+bound.Noise, got, "%s where %s is %s, from %s to %s", c.Name(), a.line, x, low, high)
			}
			points++
		}
	}
	return points
}

// inside draws values at steps of the axis between low and high, ends included.
func (a axis) inside(t *rapid.T, low, high decimal.Decimal) []decimal.Decimal {
	steps := high.Sub(low).DivRound(a.step, 0).IntPart()
	out := []decimal.Decimal{low, high}
	for range 3 {
		n := rapid.Int64Range(0, steps).Draw(t, "step")
		out = append(out, low.Add(a.step.Mul(decimal.NewFromInt(n))))
	}
	return out
}
