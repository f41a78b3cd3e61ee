package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/quantity"
)

func TestPlural(t *testing.T) {
	for word, want := range map[string]string{"box": "boxes", "bag": "bags", "batch": "batches", "tray": "trays", "caddy": "caddies", "brush": "brushes", "each": "each"} {
		require.Equal(t, want, quantity.Plural(word))
	}
	require.Equal(t, "hours", quantity.Unit("hour").Several())
	require.Equal(t, "sq ft", quantity.Unit("sq ft").Several())
	require.Equal(t, "roll", quantity.Unit("roll").Several())
}
