package fast_test

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/odds"
)

// BenchmarkTrials works trials of the demo deal out: profit, cash and months while the
// value, the overrun and two delays vary.
func BenchmarkTrials(b *testing.B) {
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprintf("workers %d", workers), func(b *testing.B) {
			const n = 16_384
			q := demo(b)
			in := drawn(n)
			require.NoError(b, q.Worker().Run(in, room(n)))
			b.ResetTimer()
			var wait sync.WaitGroup
			for w := range workers {
				wait.Go(func() {
					worker, out := q.Worker(), room(n)
					for i := w; i < b.N; i += workers {
						if err := worker.Run(in, out); err != nil {
							b.Error(err)
						}
					}
				})
			}
			wait.Wait()
			b.ReportMetric(float64(b.N)*n/b.Elapsed().Seconds(), "trials/s")
			size, err := q.Size(9)
			require.NoError(b, err)
			b.ReportMetric(float64(size), "operations")
		})
	}
}

// BenchmarkOdds draws the trials too.
func BenchmarkOdds(b *testing.B) {
	spreads, ties := chances(b)
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprintf("workers %d", workers), func(b *testing.B) {
			const n = 100_000
			m := scenario(b, juniper)
			axes := stresses(m)
			for i, s := range spreads {
				axes[i].Least, axes[i].Most = s.Ends()
			}
			q, err := fast.Ask(m, axes, all(m, "profit", "cash_needed", "hold_months"))
			require.NoError(b, err)
			plan := odds.Plan{
				Spreads: spreads, Ties: ties, Outputs: 3, Seed: 1, Trials: n, Workers: workers,
				Worker: func() func(in, out [][]float64) error { return q.Worker().Run },
				Events: []odds.Event{{{Output: 0, Least: 0}}},
			}
			for b.Loop() {
				f, err := odds.Run(b.Context(), plan)
				require.NoError(b, err)
				require.Zero(b, f.None)
			}
			b.ReportMetric(float64(b.N)*n/b.Elapsed().Seconds(), "trials/s")
		})
	}
}

// chances are spreads of what the demo question varies: the value, the overrun and a delay
// smooth, a slow sale one of a few cases, the delay tied to the overrun.
func chances(b testing.TB) ([]odds.Spread, *odds.Ties) {
	spread := func(s odds.Spread, err error) odds.Spread {
		require.NoError(b, err)
		return s
	}
	spreads := []odds.Spread{
		spread(odds.PERT(odds.OneInTen, 338_000, 359_000, 372_000)), spread(odds.PERT(odds.OneInTen, 0.05, 0.15, 0.4)),
		spread(odds.PERT(odds.AtEnds, 0, 0.5, 3)), spread(odds.Discrete(odds.Case{Weight: 5}, odds.Case{Value: 1, Weight: 3}, odds.Case{Value: 3, Weight: 1})),
	}
	ties, err := odds.Tie(4, []odds.Rank{{A: 1, B: 2, Rho: 0.5}})
	require.NoError(b, err)
	return spreads, ties
}

// BenchmarkAsk prepares the question and makes its code for one length of hold.
func BenchmarkAsk(b *testing.B) {
	m := scenario(b, juniper)
	axes, want := stresses(m), all(m, "profit", "cash_needed", "hold_months")
	b.Run("ask", func(b *testing.B) {
		for b.Loop() {
			_, err := fast.Ask(m, axes, want)
			require.NoError(b, err)
		}
	})
	b.Run("ask and a list", func(b *testing.B) {
		for b.Loop() {
			q, err := fast.Ask(m, axes, want)
			require.NoError(b, err)
			_, err = q.Size(9)
			require.NoError(b, err)
		}
	})
}
