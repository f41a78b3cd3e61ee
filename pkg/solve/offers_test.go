package solve

import (
	"math"
	"math/rand/v2"
	"sync/atomic"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/internal/conform"
	"ledgerboard/pkg/model"
)

// stressed are the inputs that trials vary, and how far each goes from its plan.
var stressed = []struct {
	line        string
	least, most float64
	share       bool // of the plan
}{
	{"after_repair_value", 0.7, 1.2, true},
	{"overrun", -0.1, 0.6, false},
	{"standstill", 0, 5, false},
	{"late_sale", 0, 9, false},
	{"market_change", -0.2, 0.1, false},
}

// drawn are trials of a deal: the values of each axis, exactly and nearly.
func drawn(t *rapid.T, m *model.Model, n int) (axes []fast.Axis, trials [][]exact.Change, in [][]float64) {
	trials = make([][]exact.Change, n)
	for _, s := range stressed {
		c := m.Find(m.Root, s.line)
		v, err := exact.Evaluate(m, c)
		require.NoError(t, err)
		a, values := fast.Free(c), make([]float64, n)
		for i := range n {
			by := decimal.NewFromFloat(s.least + (s.most-s.least)*float64(rapid.IntRange(0, 100).Draw(t, s.line))/100).Round(3)
			x := v.Of(c).Add(by)
			if s.share {
				x = v.Of(c).Mul(by).Round(2)
			}
			trials[i] = append(trials[i], exact.Change{Cell: c, Value: x})
			values[i] = x.InexactFloat64()
		}
		axes, in = append(axes, a), append(in, values)
	}
	return axes, trials, in
}

// same requires each trial's offer to be the one that an exact search finds. Where that
// is higher, the targets fail more than once: they do at the next dollar too.
func sameOffers(t *rapid.T, m *model.Model, targets []string, n int) (more int64) {
	axes, trials, in := drawn(t, m, n)
	o, err := AskOffers(m, targets, axes)
	require.NoError(t, err)
	prices := make([]float64, n)
	require.NoError(t, o.Worker().Run(in, prices))
	for i, changes := range trials {
		want, err := MaxOffer(m, targets, changes...)
		require.NoError(t, err)
		switch {
		case want.Endless:
			require.True(t, math.IsInf(prices[i], 1), "%v, not endless", prices[i])
		case want.Found && want.Price.InexactFloat64() == prices[i], !want.Found && math.IsInf(prices[i], -1):
		case want.Found && math.Abs(want.Price.InexactFloat64()-prices[i]) == 1 && aCentAway(t, m, targets, max(want.Price.InexactFloat64(), prices[i]), changes):
		default:
			more++
			require.True(t, want.Found && want.Price.InexactFloat64() > prices[i], "%v, not %v", prices[i], want)
			turns(t, m, targets, prices[i], changes)
		}
	}
	return more
}

// aCentAway reports whether a target holds or is missed by a cent at the most at a price: a
// rounding that turns on less than float64 can tell decides there.
func aCentAway(t *rapid.T, m *model.Model, targets []string, price float64, changes []exact.Change) bool {
	watched := cells(m, Targets(targets))
	v, err := exact.NewPlan(m, watched...).Evaluate(append(changes[:len(changes):len(changes)], exact.Change{Cell: m.Find(m.Root, "price"), Value: decimal.NewFromFloat(price)})...)
	require.NoError(t, err)
	least := v.Of(watched[0])
	for _, c := range watched {
		least = decimal.Min(least, v.Of(c))
	}
	return least.Abs().LessThanOrEqual(decimal.New(1, -2))
}

// turns requires the targets to hold at a price, or at none, and to fail a dollar above.
func turns(t *rapid.T, m *model.Model, targets []string, price float64, changes []exact.Change) {
	watched := cells(m, Targets(targets))
	plan := exact.NewPlan(m, watched...)
	holds := func(x float64) bool {
		v, err := plan.Evaluate(append(changes, exact.Change{Cell: m.Find(m.Root, "price"), Value: decimal.NewFromFloat(x)})...)
		require.NoError(t, err)
		for _, c := range watched {
			if v.Of(c).IsNegative() {
				return false
			}
		}
		return true
	}
	price = max(price, -1)
	require.True(t, price < 0 || holds(price))
	require.False(t, holds(price+1))
}

func TestOffersAreTheMaximum(t *testing.T) {
	var all, more atomic.Int64
	conform.Run(t, conform.Effort{Random: *randomDeals, Times: 6}, func(t *rapid.T, d conform.Deal) {
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		m, err := d.Model.Summary(v.Of)
		require.NoError(t, err)
		all.Add(2)
		more.Add(sameOffers(t, m, d.Targets, 2))
	}, nil)
	t.Logf("%d of %d trials fail more than once", more.Load(), all.Load())
	require.LessOrEqual(t, more.Load(), all.Load()/50)
}

// BenchmarkOffers finds the offers of trials of the demo deal.
func BenchmarkOffers(b *testing.B) {
	d := conform.Scenario(b, "../../scenarios/juniper-lane.yaml")
	m := d.Model
	const n = 16_384
	axes, in := []fast.Axis{}, [][]float64{}
	random := rand.New(rand.NewPCG(1, 2))
	for i, s := range stressed[:4] {
		axes, in = append(axes, fast.Free(m.Find(m.Root, s.line))), append(in, make([]float64, n))
		for k := range n {
			if in[i][k] = s.least + (s.most-s.least)*random.Float64(); s.share {
				in[i][k] *= 359_000
			}
		}
	}
	o, err := AskOffers(m, d.Targets, axes)
	require.NoError(b, err)
	w, prices := o.Worker(), make([]float64, n)
	require.NoError(b, w.Run(in, prices))
	require.Zero(b, testing.AllocsPerRun(3, func() { _ = w.Run(in, prices) }))
	looked := 0
	for _, x := range w.at[:n] {
		looked += x.looked
	}
	for b.Loop() {
		_ = w.Run(in, prices)
	}
	b.ReportMetric(float64(b.N)*n/b.Elapsed().Seconds(), "trials/s")
	b.ReportMetric(float64(looked)/n, "prices/trial")
}
