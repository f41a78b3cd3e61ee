package fast_test

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/fast"
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
	b.Run("code", func(b *testing.B) {
		q, err := fast.Ask(m, axes, want)
		require.NoError(b, err)
		for i := 0; b.Loop(); i++ {
			_, err := q.Size(9)
			require.NoError(b, err)
		}
	})
}
