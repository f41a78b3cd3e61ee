package best_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/best"
)

// A hold of well over a year with a loan that pays for the work and for what holding costs
// makes hundreds of roundings and caps, whose errors have to cancel before bounds tell
// anything. The deal is invented.
func TestLongHoldsAreProved(t *testing.T) {
	text := strings.NewReplacer(
		"own hours a week: 40, together: overlapping", "own hours a week: 10, together: side by side",
		"holding: {property tax: $4,380/year, utilities: $265/month}", "holding: {property tax: $4,380/year, builder's risk insurance: {amount: $2,150/year, premium paid ahead: 12 months, insurer keeps at least: 25%}, utilities: $265/month, lawn: $80/month}",
	).Replace(large(14, 2))
	h, err := best.New(opened(t, text))
	require.NoError(t, err)
	f, err := h.Find(best.Limits{})
	require.NoError(t, err)
	require.True(t, f.Proved && f.SecondProved)
	require.Less(t, f.Looked, 100_000)
}
