package chance_test

import (
	"context"
	"math"
	"os"
	"runtime"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/odds"
)

func juniper(t testing.TB) *deal.Deal {
	text, err := os.ReadFile("../../scenarios/juniper-lane.yaml")
	require.NoError(t, err)
	return read(t, string(text))
}

func ask(t testing.TB, d *deal.Deal, o chance.Options) *chance.Odds {
	if o.Confidence == 0 {
		o.Confidence = chance.UsualConfidence
	}
	out, err := chance.Ask(context.Background(), d, o)
	require.NoError(t, err)
	return out
}

// bell is a deal whose profit is the sale price less $250,000, and only that varies, by a
// bell curve of mean $270,000 and deviation 20,000 (1.2815516 of it to one in ten).
const bell = `purchase: {price: $200k}
value: {after-repair value: $270k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: roof, amount: $50k}]}
ranges:
  sale price: {low: $244,368.97, high: $295,631.03, spread: normal}
  overrun: {cases: {0%: 1, 0.0000001%: 1}}
  standstill: {cases: {0: 1, 1 day: 1}}
  marketing: {cases: {30 days: 1, 31 days: 1}}
ties: []
`

// What the closed form says of it: the chance of a loss is that of a score under -1, 0.1587
// (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: area 0.84134 below 1).
func TestABellCurveOfProfit(t *testing.T) {
	o := ask(t, read(t, bell), chance.Options{Trials: 100_000, Seed: 7})
	near := func(want float64, e odds.Estimate, what string) {
		require.Positive(t, e.Error, what)
		require.InDelta(t, want, e.Value, 3*e.Error+0.05, what) // 5 cents for what nearly does not vary
	}
	nearShare := func(want float64, e odds.Estimate) { require.InDelta(t, want, e.Value, 3*e.Error) }
	nearShare(1-0.841345, o.Loss)
	near(20_000-1.2815516*20_000, o.Figures[chance.Profit].Percentile(0.1), "P10")
	near(20_000, o.Figures[chance.Profit].Percentile(0.5), "P50")
	near(20_000+1.2815516*20_000, o.Figures[chance.Profit].Percentile(0.9), "P90")
	near(20_000, o.Figures[chance.Profit].Mean(), "mean")
	// the mean under a score of -1.2816 is -φ(1.2816)/0.1, φ(1.2816) being 0.1754983
	near(20_000-1.754983*20_000, o.Figures[chance.Profit].Shortfall(0.1), "expected shortfall")
	// Targets hold up to the sale price less $50,000: in 80% up to $220,000 less 0.8416212 deviations.
	require.True(t, o.Safe.Found)
	require.InDelta(t, 220_000-0.8416212*20_000, o.Safe.Price.InexactFloat64(), 3*o.Safe.Error+1)
	require.InDelta(t, math.Sqrt(0.8*0.2/100_000)/0.2799619*20_000, o.Safe.Error, 20, "√(pq/n) ÷ density, φ(0.8416) being 0.2799619")
	nearShare(0.8, o.Safe.Holds)
	require.GreaterOrEqual(t, o.Safe.Holds.Value, 0.8, "it is counted, and enough")
	require.Equal(t, "220000", o.PlanOffer.Price.String(), "the plan sells for $270,000")
}

// A seller lends all of the price, so that cash is needed only where the tax, in one case of
// four, is to be paid: the return is that of those trials, and of the others there is none.
func TestThereIsNoReturnOnNoCash(t *testing.T) {
	const text = `purchase: {price: $100k}
value: {after-repair value: $112k}
time: {marketing: 2 months, escrow: 1 month}
loans: [{name: seller, price share: 100%, rate: 6%, interest on: balance, interest paid: at payoff}]
holding: {tax: $0/month}
selling: {agent: 4%}
ranges:
  holding.tax: {cases: {$0/month: 3, $200/month: 1}}
  sale price: {spread: none}
  marketing: {spread: none}
`
	o := ask(t, read(t, text), chance.Options{Trials: 4000, Seed: 3})
	require.True(t, o.Plan[chance.Cash].IsZero())
	require.InDelta(t, 0.75, float64(o.NoReturn)/float64(o.Trials), 0.03)
	// By hand: sold for $112,000 less 4%; 3 months of interest at 6% on $100,000 are $1,500;
	// $600 of tax is the cash: $5,420 on $600 is 903.3%.
	require.EqualValues(t, o.Trials-o.NoReturn, o.Figures[chance.Return].Trials())
	require.InDelta(t, 100*5420.0/600, o.Figures[chance.Return].Quantile(0.01), 0.01)
	require.InDelta(t, 100*5420.0/600, o.Figures[chance.Return].Mean().Value, 0.01)
}

// Trials whose times leave no hold have no answer and count apart, as such a plan is refused.
func TestTrialsWithoutAHoldCountApart(t *testing.T) {
	const text = `purchase: {price: $100k}
value: {after-repair value: $150k}
time: {renovation: 1 month}
renovation: {contingency: 10%, lines: [{trade: a, amount: $20k}]}
selling: {agent: 5%}
ranges:
  time.renovation: {cases: {0 days: 1, 1 month: 2, 2 months: 1}}
  standstill: {spread: none}
  marketing: {spread: none}
`
	o := ask(t, read(t, text), chance.Options{Trials: 4000, Seed: 3})
	require.EqualValues(t, 4000, o.Trials+o.None)
	require.InDelta(t, 0.25, float64(o.None)/4000, 0.03)
	least, _ := o.Figures[chance.Months].Range()
	require.Equal(t, 1.0, least)
	require.LessOrEqual(t, o.Safe.Holds.Value, 1.0)
}

// A triangular profit: the sale price from $230,000 to $310,000, likely $270,000. A loss is
// one under $250,000, of which the chance is (20 ÷ 80) × (20 ÷ 40) = 1/8.
func TestATriangleOfProfit(t *testing.T) {
	text := replace(bell, "{low: $244,368.97, high: $295,631.03, spread: normal}", "{low: $230k, likely: $270k, high: $310k, means: very ends, spread: triangular}")
	o := ask(t, read(t, text), chance.Options{Trials: 100_000, Seed: 7})
	require.InDelta(t, 0.125, o.Loss.Value, 3*o.Loss.Error)
	e := o.Figures[chance.Profit].Percentile(0.1)
	require.InDelta(t, -20_000+math.Sqrt(0.1*80*40)*1000, e.Value, 3*e.Error+0.05, "√(p × width × rise)")
}

// The stated standard errors are true: of many runs, 68% come within one of the truth and
// 95% within two. The bounds are four standard errors of such a share, and the seeds fixed.
func TestStandardErrorsAreTrue(t *testing.T) {
	runs := 400
	if testing.Short() {
		runs = 60
	}
	truths := map[string]float64{
		"loss": 1 - 0.841345, "P10": 20_000 - 1.2815516*20_000, "P50": 20_000, "P90": 20_000 + 1.2815516*20_000, "mean": 20_000,
		"shortfall": 20_000 - 1.754983*20_000, "safe": 220_000 - 0.8416212*20_000,
	}
	within := map[string][2]int{}
	d := read(t, bell)
	for seed := range uint64(runs) {
		o := ask(t, d, chance.Options{Trials: 4096, Seed: seed, Workers: 1})
		profit := o.Figures[chance.Profit]
		for name, e := range map[string]odds.Estimate{
			"loss": o.Loss, "P10": profit.Percentile(0.1), "P50": profit.Percentile(0.5), "P90": profit.Percentile(0.9), "mean": profit.Mean(),
			"shortfall": profit.Shortfall(0.1), "safe": {Value: o.Safe.Price.InexactFloat64(), Error: o.Safe.Error},
		} {
			n := within[name]
			for k := range n {
				if math.Abs(e.Value-truths[name]) <= float64(k+1)*e.Error {
					n[k]++
				}
			}
			within[name] = n
		}
	}
	for name, n := range within {
		t.Logf("%s: %.3f within one, %.3f within two", name, float64(n[0])/float64(runs), float64(n[1])/float64(runs))
		for k, share := range []float64{0.6827, 0.9545} {
			require.InDelta(t, share, float64(n[k])/float64(runs), 4*math.Sqrt(share*(1-share)/float64(runs)), name)
		}
	}
}

// Trials of another seed hold at the safe offer as often as asked, within the errors of both.
func TestTheSafeOfferHoldsWithAnotherSeed(t *testing.T) {
	for _, confidence := range []float64{0.8, 0.95} {
		if testing.Short() && confidence != chance.UsualConfidence {
			continue
		}
		o := ask(t, juniper(t), chance.Options{Trials: 20_000, Seed: 1, Confidence: confidence})
		require.True(t, o.Safe.Found)
		require.True(t, o.Safe.Price.LessThan(o.PlanOffer.Price))
		again := at(t, o.Safe.Price)
		for _, seed := range []uint64{2, 3} {
			other := ask(t, again, chance.Options{Trials: 20_000, Seed: seed, Confidence: confidence})
			held := 1 - other.AnyMissed.Value
			require.InDelta(t, confidence, held, 3*math.Hypot(other.AnyMissed.Error, o.Safe.Holds.Error), "seed %d", seed)
		}
		// And in the same trials, asked as a deal at that price, just as often as was counted.
		same := ask(t, again, chance.Options{Trials: 20_000, Seed: 1, Confidence: confidence})
		require.InDelta(t, o.Safe.Holds.Value, 1-same.AnyMissed.Value, 1e-12)
		over := ask(t, at(t, o.Safe.Price.Add(decimal.NewFromInt(1))), chance.Options{Trials: 20_000, Seed: 1, Confidence: confidence})
		require.Less(t, 1-over.AnyMissed.Value, confidence, "a dollar more holds in too few")
	}
}

// at is the demo deal at another price, whose lender looks at the same value.
func at(t testing.TB, price decimal.Decimal) *deal.Deal {
	text, err := os.ReadFile("../../scenarios/juniper-lane.yaml")
	require.NoError(t, err)
	d, found := deal.Read("a.yaml", text, deal.Set{Path: "price", Value: price.String()})
	require.Empty(t, found.Errors())
	return d
}

// What is found does not depend on the number of workers, to the last bit.
func TestWorkersDoNotMatter(t *testing.T) {
	d := juniper(t)
	var first *chance.Odds
	for _, workers := range []int{1, 2, 5} {
		o := ask(t, d, chance.Options{Trials: 30_000, Seed: 3, Workers: workers})
		o.Deal = nil
		if first == nil {
			first = o
			continue
		}
		require.Equal(t, first.Figures, o.Figures)
		require.Equal(t, first.Safe, o.Safe)
		require.Equal(t, []any{first.Loss, first.AnyMissed, first.Missed}, []any{o.Loss, o.AnyMissed, o.Missed})
	}
}

// Memory does not grow with the trials.
func TestMemoryIsFlat(t *testing.T) {
	d := juniper(t)
	taken := func(trials int) float64 {
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		ask(t, d, chance.Options{Trials: trials, Seed: 1, Workers: 1})
		runtime.ReadMemStats(&after)
		return float64(after.TotalAlloc - before.TotalAlloc)
	}
	few, many := taken(10_000), taken(100_000)
	require.Less(t, many, few*1.2, "ten times the trials, all that was ever taken")
}

// A trial is what the exact reader makes of the deal with what was drawn, the loans being
// those of the plan.
func TestTrialsAreTheDealsOwn(t *testing.T) {
	d := juniper(t)
	m := d.Model
	var rows [][2][]float64
	o := ask(t, d, chance.Options{Trials: 2000, Seed: 5, Seen: func(s chance.Shown) error {
		for i := range 40 {
			var in, out []float64
			for _, x := range s.In {
				in = append(in, x[i])
			}
			for _, x := range s.Out {
				out = append(out, x[i])
			}
			rows = append(rows, [2][]float64{in, out})
		}
		return nil
	}})
	loan := m.Root.In("loan")[0]
	plan, err := exact.Evaluate(m)
	require.NoError(t, err)
	sizes := []string{"loan_at_closing", "holdback", "reserve"}
	for _, row := range rows {
		var changes []exact.Change
		for _, line := range sizes {
			c := m.Find(loan, line)
			changes = append(changes, exact.Change{Cell: c, Value: plan.Of(c)})
		}
		for i, r := range o.Ranges {
			changes = append(changes, exact.Change{Cell: r.Cell, Value: decimal.NewFromFloat(row[0][i])})
		}
		v, err := exact.NewPlan(m).Evaluate(changes...)
		require.NoError(t, err)
		for i, line := range []string{"owner_profit", "profit_after_own_hours", "", "cash_needed", "hold_months"} {
			if line != "" {
				require.InDelta(t, v.Of(m.Find(m.Root, line)).InexactFloat64(), row[1][i], 1e-3, line)
			}
		}
	}
}

// An end of the context ends the trials, with what was had.
func TestAnEndedContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	n := 0
	o, err := chance.Ask(ctx, juniper(t), chance.Options{Trials: 1_000_000, Seed: 1, Confidence: 0.8, Workers: 1, Seen: func(s chance.Shown) error {
		if n += s.Trials(); n >= 3*odds.Block {
			cancel()
		}
		return nil
	}})
	require.ErrorIs(t, err, context.Canceled)
	require.Equal(t, int64(3*odds.Block), o.Trials)
	require.False(t, math.IsNaN(o.Figures[chance.Profit].Quantile(0.5)))
}
