package report

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// A pack that is a unit of area or volume has no plural of its own.
func TestUnitsOfAreaHaveNoPlural(t *testing.T) {
	for word, want := range map[string]string{"sq ft": "sq ft", "cu yd": "cu yd", "box": "boxes", "day": "days", "ft": "ft", "gal": "gal", "lb": "lb"} {
		require.Equal(t, want, plural(word, decimal.NewFromInt(583)), word)
	}
}
