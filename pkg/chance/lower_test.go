package chance

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Where it does not hold at the price that the maximum offers tell, the highest lower one
// at which it does is found, or that there is none.
func TestALowerPriceIsFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		price := float64(rapid.IntRange(0, 500_000).Draw(t, "price"))
		limit := float64(rapid.IntRange(-1, int(price)).Draw(t, "limit"))
		best, tries := -1.0, 0
		require.NoError(t, lower(price, func(x float64) (bool, error) {
			if tries++; x <= limit {
				best = x
			}
			return x <= limit, nil
		}))
		require.Equal(t, limit, best)
		require.Less(t, tries, 42, "20 steps down, 20 back")
	})
}
