package chance_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/chance"
)

// BenchmarkOdds works out the odds of the demo deal with all outputs, the maximum offer of
// each trial and the count at the safe offer included.
func BenchmarkOdds(b *testing.B) {
	d := juniper(b)
	for _, workers := range []int{1, 2} {
		for _, trials := range []int{chance.UsualTrials, 1_000_000} {
			b.Run(fmt.Sprintf("workers %d, trials %d", workers, trials), func(b *testing.B) {
				for b.Loop() {
					o := ask(b, d, chance.Options{Trials: trials, Seed: 1, Workers: workers})
					require.True(b, o.Safe.Found)
				}
				b.ReportMetric(float64(b.N*trials)/b.Elapsed().Seconds(), "trials/s")
			})
		}
	}
}
