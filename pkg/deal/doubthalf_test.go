package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A roofer's quote for all of a roof is held against all that it is taken to hold: taking off the old
// shingles, underlayment and flashing too, whose labour comes to more than that of the shingles alone.
func TestAQuoteIsHeldAgainstAllThatItHolds(t *testing.T) {
	const den = "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	roof := func(work string) string {
		return "outside: {roof: [{size: 48' x 28', pitch: 4/12, overhang: 18\"}], work: {shingle roof gable: " + work + "}}\n"
	}
	for work, want := range map[string]int{
		"$7,900":                           1,
		"{quote: $7,900, covers: all}":     0,
		"{quote: $7,900, covers: labour}":  0,
		"{quote: $7,900, holds more: yes}": 0,
		"$11,500":                          0,
	} {
		told := toldOf(t, "quote-half", den, roof(work))
		require.Len(t, told, want, "%s: %v", work, told)
		if want > 0 {
			require.Contains(t, told[0], "all that it is taken to hold")
		}
	}
}
