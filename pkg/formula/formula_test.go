package formula

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

func TestTableIsInOrderOfCodes(t *testing.T) {
	for i, o := range Table {
		require.Equal(t, Code(i), o.Code, o.Name)
		require.NotEmpty(t, o.Words, o.Name)
		require.NotNil(t, o.Unit, o.Name)
		if o.Binds > 0 {
			o.Least, o.Most = 2, 2
		}
	}
}

func TestRoundingIsNineThenTwoHalfAwayFromZero(t *testing.T) {
	for in, want := range map[string]string{
		"0.005": "0.01", "-0.005": "-0.01", "1.00499999999": "1.01", "1.0049999": "1", "2.675": "2.68",
	} { // by hand: the first rounding to 9 decimals lifts 1.00499999999 to 1.005
		got, err := exactCents([]decimal.Decimal{decimal.RequireFromString(in)})
		require.NoError(t, err)
		require.True(t, got.Equal(decimal.RequireFromString(want)), "%s: %s", in, got)
	}
}
