package answer

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// On either side of what a search found, what it watched has another sign.
func TestSidesAreOnEitherSide(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	found, rates := 0, 0
	for _, path := range files {
		a, err := Of(scenario(t, path), nil)
		require.NoError(t, err)
		for name := range breakEvenSides {
			_, at, beyond, ok, err := a.BreakEvenSides(name)
			require.NoError(t, err)
			if ok {
				found++
				require.False(t, at.Value.IsNegative(), "%s: %s", path, name)
				require.True(t, beyond.Value.IsNegative(), "%s: %s", path, name)
			}
		}
		if below, above, ok := a.IRRSides(); ok {
			rates++
			require.True(t, below.Value.Mul(above.Value).IsNegative(), path)
		}
	}
	require.Greater(t, found, 12)
	require.Greater(t, rates, 3)
	_, _, _, ok, err := (&Answer{}).BreakEvenSides("max_offer")
	require.NoError(t, err)
	require.False(t, ok)
}
