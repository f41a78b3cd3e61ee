package odds_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"ledgerboard/pkg/odds"
)

// sums is a plan whose one figure is the sum of what is drawn.
func sums(seed uint64, trials, workers int, spreads ...odds.Spread) odds.Plan {
	return odds.Plan{
		Spreads: spreads, Outputs: 1, Seed: seed, Trials: trials, Workers: workers,
		Worker: func() func(in, out [][]float64) error {
			return func(in, out [][]float64) error {
				for t := range out[0] {
					out[0][t] = 0
					for _, x := range in {
						out[0][t] += x[t]
					}
				}
				return nil
			}
		},
	}
}

// truth are the estimates of two tied normal figures' sum, in closed form: the mean and
// variance add, the tail's average is that of a normal one (McNeil, Frey and Embrechts,
// Quantitative Risk Management, example 2.14; from memory).
func truth(mean, deviation float64) map[string]float64 {
	n := distuv.Normal{Mu: mean, Sigma: deviation}
	tenth := distuv.UnitNormal.Quantile(0.1)
	return map[string]float64{
		"mean": mean, "P10": n.Quantile(0.1), "P50": n.Quantile(0.5), "P90": n.Quantile(0.9),
		"chance": n.CDF(0), "shortfall": mean - deviation*distuv.UnitNormal.Prob(tenth)/0.1,
	}
}

func estimates(f *odds.Found) map[string]odds.Estimate {
	h := f.Outputs[0]
	return map[string]odds.Estimate{
		"mean": h.Mean(), "P10": h.Percentile(0.1), "P50": h.Percentile(0.5), "P90": h.Percentile(0.9),
		"chance": f.Chance(0), "shortfall": h.Shortfall(0.1),
	}
}

// closed is a plan with a closed form: two normal figures with a rank correlation.
func closed(t testing.TB, seed uint64, trials int) (odds.Plan, map[string]float64) {
	rho := 0.5
	p := sums(seed, trials, 2, must[odds.Spread](t)(odds.Normal(0.1, 10_000, 50_000)), must[odds.Spread](t)(odds.Normal(0.1, -40_000, 20_000)))
	p.Ties = must[*odds.Ties](t)(odds.Tie(2, []odds.Rank{{A: 0, B: 1, Rho: rho}}))
	p.Events = []odds.Event{{{Output: 0, Least: 0}}}
	z := distuv.UnitNormal.Quantile(0.9)
	a, b, r := 20_000/z, 30_000/z, 2*math.Sin(math.Pi*rho/6)
	return p, truth(20_000, math.Sqrt(a*a+b*b+2*r*a*b))
}

func TestClosedForm(t *testing.T) {
	p, want := closed(t, 5, 1_000_000)
	f := must[*odds.Found](t)(odds.Run(context.Background(), p))
	for name, e := range estimates(f) {
		require.InDelta(t, want[name], e.Value, 3*e.Error, name)
		require.Less(t, e.Error, 0.01*math.Max(1, math.Abs(want[name])), name)
	}
}

// In 19 of 20 runs an estimate lies within twice its standard error of the truth.
func TestStandardErrorsCover(t *testing.T) {
	const runs = 400
	within := map[string]int{}
	for seed := range uint64(runs) {
		p, want := closed(t, seed, 2000)
		f := must[*odds.Found](t)(odds.Run(context.Background(), p))
		for name, e := range estimates(f) {
			if math.Abs(e.Value-want[name]) <= 1.96*e.Error {
				within[name]++
			}
		}
	}
	require.Len(t, within, 6)
	for name, n := range within {
		require.InDelta(t, 0.95*runs, n, 3.5*math.Sqrt(runs*0.95*0.05), name)
	}
}

// The same seed gives the same to the last bit, whatever the number of workers, and the
// first trials are the same however many follow.
func TestWorkersDoNotMatter(t *testing.T) {
	p, _ := closed(t, 9, 50_000)
	p.Workers = 1
	var first []float64
	p.Seen = func(_, out [][]float64) error { first = append(first, out[0]...); return nil }
	one := must[*odds.Found](t)(odds.Run(context.Background(), p))
	for _, workers := range []int{2, 7} {
		var again []float64
		p.Workers = workers
		p.Seen = func(_, out [][]float64) error { again = append(again, out[0]...); return nil }
		require.Equal(t, one, must[*odds.Found](t)(odds.Run(context.Background(), p)))
		require.Equal(t, first, again)
	}
	p.Trials = 1500
	again := []float64{}
	p.Seen = func(_, out [][]float64) error { again = append(again, out[0]...); return nil }
	require.EqualValues(t, 1500, must[*odds.Found](t)(odds.Run(context.Background(), p)).Trials)
	require.Equal(t, first[:1500], again)
	p.Seed++
	other := []float64{}
	p.Seen = func(_, out [][]float64) error { other = append(other, out[0]...); return nil }
	_ = must[*odds.Found](t)(odds.Run(context.Background(), p))
	require.NotEqual(t, again, other)
}

// Memory does not grow with the number of trials.
func TestMemoryIsFlat(t *testing.T) {
	taken := func(trials int) uint64 {
		p, _ := closed(t, 3, trials)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_ = must[*odds.Found](t)(odds.Run(context.Background(), p))
		runtime.ReadMemStats(&after)
		return after.TotalAlloc - before.TotalAlloc
	}
	few := taken(10 * odds.Block)
	require.Less(t, taken(300*odds.Block), few+few/10)
}

// Trials without an answer are counted apart.
func TestTrialsWithoutAnswer(t *testing.T) {
	p := sums(1, 10_000, 2, must[odds.Spread](t)(odds.Discrete(odds.Case{Value: 1, Weight: 1}, odds.Case{Value: math.NaN(), Weight: 1})))
	f := must[*odds.Found](t)(odds.Run(context.Background(), p))
	require.EqualValues(t, 10_000, f.Trials+f.None)
	require.InDelta(t, 5000, f.None, 200)
	require.Equal(t, 1.0, f.Outputs[0].Mean().Value)
}

func TestRunEnds(t *testing.T) {
	p, _ := closed(t, 1, 1_000_000_000)
	ctx, cancel := context.WithCancel(context.Background())
	blocks := 0
	p.Seen = func(_, out [][]float64) error {
		if blocks++; blocks == 10 {
			cancel()
		}
		return nil
	}
	f, err := odds.Run(ctx, p)
	require.ErrorIs(t, err, context.Canceled)
	require.GreaterOrEqual(t, f.Trials, int64(10*odds.Block), "what was found is not lost")
	broken := errors.New("broken")
	p.Seen = func(_, _ [][]float64) error { return broken }
	_, err = odds.Run(context.Background(), p)
	require.ErrorIs(t, err, broken)
}

// Quantiles are within a bin of those of the sorted figures, of every size and sign.
func TestHistogram(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	h, all := odds.NewHistogram(), []float64{}
	for range 20_000 {
		all = append(all, math.Exp(r.Float64()*30-8)*(2*float64(r.IntN(2))-1))
	}
	all = append(all, 0, 0, 0)
	h.Add(all[:7000])
	h.Add(all[7000:])
	slices.Sort(all)
	for i := 1; i < 1000; i++ {
		p := float64(i) / 1000
		x := all[int(p*float64(len(all)))]
		require.InDelta(t, x, h.Quantile(p), 0.001+math.Abs(x)/200, "%v", p)
	}
	least, most := h.Range()
	require.Equal(t, []float64{all[0], all[len(all)-1]}, []float64{least, most})
	require.Equal(t, least, h.Quantile(0))
	require.Equal(t, most, h.Quantile(1))
	sum := 0.0
	for _, s := range h.Share(-10, 10, 7) {
		sum += s
	}
	require.InDelta(t, 1, sum, 1e-12)
}

// NIST/SEMATECH e-Handbook, 7.2.6.2: the 90th percentile of 12 measurements is 95.1981 by
// its method. With few figures methods differ; this one stays within the figures beside.
func TestFewFigures(t *testing.T) {
	h := odds.NewHistogram()
	h.Add([]float64{95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682})
	require.InDelta(t, 95.1981, h.Quantile(0.9), 95.1981/1024)
	require.True(t, math.IsNaN(odds.NewHistogram().Quantile(0.5)))
}

// Of 100 trials 9.5 lose, and a lump of them comes to nothing: with other trials the
// tenth percentile may well be a loss.
func TestAPercentileInALumpLooksPastIt(t *testing.T) {
	h := odds.NewHistogram()
	for i := range 10_000 {
		x := 0.0
		switch {
		case i < 950: // the standard error of a share is 30 trials
			x = float64(i - 1000)
		case i > 9000:
			x = float64(i)
		}
		h.Add([]float64{x})
	}
	p := h.Percentile(0.1)
	require.Zero(t, p.Value)
	require.InDelta(t, 30, p.Error, 3)
	require.Zero(t, h.Percentile(0.5).Error, "far from the ends of the lump")
}

// An event that never happened still has an error.
func TestChance(t *testing.T) {
	c := odds.Chance(0, 1000)
	require.Zero(t, c.Value)
	require.InDelta(t, 0.001, c.Error, 1e-4)
	require.InDelta(t, math.Sqrt(0.25/1000), odds.Chance(500, 1000).Error, 1e-4)
}
