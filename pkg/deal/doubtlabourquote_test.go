package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A quote for the labour of a roof that is rather for all of it is told, though most of that is in the
// work that comes along; not one for about the labour, nor what the file says in so many words.
func TestAQuoteForTheLabourThatIsForAll(t *testing.T) {
	for detail, want := range map[string]int{
		"quote: $13400, covers: labour": 1, "quote: $13400, covers: all": 0, "quote: $13400": 0,
		"quote: $4900, covers: labour": 0, "quote: $13400, covers: labour, holds more: yes": 0,
	} {
		require.Len(t, toldOf(t, "quote-half", "  den: {size: 12' x 10', work: {paint walls: hired}}\n",
			"outside: {around: 150 ft, roof: [{size: 44' x 32', pitch: 6/12, overhang: 1'}], work: {shingle roof gable: {"+detail+"}}}\n"), want, detail)
	}
	require.Empty(t, toldOf(t, "quote-half", "  hall: {size: 12' x 5', work: {baseboard: {quote: $500, covers: labour}}}\n", ""), "a trade that comes for little charges for coming")
}
