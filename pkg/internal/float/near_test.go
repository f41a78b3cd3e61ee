package float_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/float"
)

// The library's own way, by a quotient of whole numbers, rounds to the nearest too.
func TestNearIsTheNearestFloat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := decimal.New(rapid.Int64().Draw(t, "digits"), rapid.Int32Range(-40, 20).Draw(t, "places"))
		require.Equal(t, x.InexactFloat64(), float.Near(x), "%s", x)
		long := formula.Divide(x, decimal.NewFromInt(rapid.Int64Range(1, 1e6).Draw(t, "parts")))
		require.Equal(t, long.InexactFloat64(), float.Near(long), "%s", long)
	})
	require.Zero(t, float.Near(decimal.Decimal{}))
}
