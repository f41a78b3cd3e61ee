package slope_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/slope"
)

// BenchmarkOf finds the slope of profit for every number that a deal gives: the demo deal,
// and a house of many rooms.
func BenchmarkOf(b *testing.B) {
	for _, name := range []string{"juniper-lane", "walnut-row"} {
		b.Run(name, func(b *testing.B) {
			text, err := os.ReadFile("../../scenarios/" + name + ".yaml")
			require.NoError(b, err)
			d, problems := deal.Read(name, text)
			require.NotNil(b, d, problems)
			all, profit := inputs(d.Model), []*model.Cell{d.Model.Find(d.Model.Root, "profit")}
			for b.Loop() {
				_, err := slope.Of(d.Model, all, profit)
				require.NoError(b, err)
			}
			b.ReportMetric(float64(len(all)), "inputs")
		})
	}
}
