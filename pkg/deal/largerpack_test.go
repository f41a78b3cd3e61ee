package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Shingles at $43 a bundle go three bundles to a square: what a square costs is asked about.
func TestAPriceOfASquareForABundle(t *testing.T) {
	for price, want := range map[string]int{"$129": 1, "$115": 1, "$62": 0, "$105": 0, "$160": 0} {
		told := toldOf(t, "price-far", "  den: {size: 12' x 10', work: {paint walls: own hands}}\n", "outside: {roof: [{size: 48' x 28', pitch: 4/12, overhang: 18\"}], work: {shingle roof gable: {by: hired, price: "+price+"}}}\n")
		require.Len(t, told, want, price)
		if want > 0 {
			require.Contains(t, told[0], "about what a square of 3 bundles costs")
		}
	}
}
