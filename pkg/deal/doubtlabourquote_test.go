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

// A quote for the labour of hanging wall board that has the finishing in it, which is hired besides, is told from
// half of that over and 1.5 times its own on. By the starter book 416 sq ft take $395 to hang and $478 to finish.
func TestAQuoteForTheLabourThatHoldsWhatComesAlong(t *testing.T) {
	const more = "covers: labour, holds more: yes, from: Fern}, finish wall board: {quote: $0, covers: labour, from: Fern"
	for detail, want := range map[string]int{
		"quote: $900, covers: labour": 1, "quote: $1355, covers: labour": 1, "quote: $780, covers: labour": 0,
		"quote: $900, covers: labour, holds more: no": 0, "quote: $900, " + more: 0,
		"quote: $900, covers: labour}, finish wall board: {by: own hands": 0,
	} {
		told := toldOf(t, "quote-holds-other", "  den: {size: 14' x 12', ceiling: 8 ft, work: {hang wall board: {"+detail+"}}}\n", "")
		require.Len(t, told, want, detail)
		if want > 0 {
			require.Contains(t, told[0], "besides: finish wall board")
		}
	}
}
