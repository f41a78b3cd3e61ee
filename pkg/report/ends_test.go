package report

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Both ends of the range are read in full, however close the bars are.
func TestEndsOfTheRangeAreReadInFull(t *testing.T) {
	var c compsPage
	require.Equal(t, []string{"$225,740", "  $267,723"}, c.ends(mark{0, "$225,740"}, mark{2, "$267,723"}))
	require.Equal(t, []string{"$225,740", "        $267,723"}, c.ends(mark{0, "$225,740"}, mark{8, "$267,723"}))
	require.Equal(t, []string{"$225,740 $267,723"}, c.ends(mark{0, "$225,740"}, mark{9, "$267,723"}))
	require.Len(t, c.ends(mark{60, "$225,740"}, mark{75, "$267,723"}), 2, "the high one stands before its place")
}
