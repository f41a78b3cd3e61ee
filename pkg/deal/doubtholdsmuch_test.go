package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A quote that holds more is held against the after-repair value, here $260,000, and the work that it may stand for: of its
// place, of places where the same is named as held, or of the house.
func TestAQuoteThatHoldsMoreHasABound(t *testing.T) {
	const kitchen = "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 12' x 2', sink: 1}, work: {kitchen cabinets: {WORK, holds more: yes}}, without: []}\n"
	const bath = "  bath: {size: 8' x 5', doors: 1, fixed: {tub: 5' x 2'6\", toilet: 1}, work: {tub: {WORK, holds more: yes}}, without: []}\n"
	const bed = "  bedroom: {size: 12' x 13', work: {carpet: {WORK, holds more: yes}}}\n"
	const carpet, paint = "  den: {size: 16' x 13', work: {carpet: hired}}\n", "  den: {size: 16' x 13', work: {paint walls: own hands}}\n"
	for _, x := range []struct {
		rooms, work, more string
		want              int
	}{
		{kitchen + carpet, "quote: $94,000", "", 1},
		{kitchen + carpet, "quote: $62,000", "", 0},
		{kitchen + carpet, "quote: $94,000, note: whole house", "", 0},
		{kitchen + carpet, "quote: $94,000, note: kitchen and 3 rooms", "", 0},
		{kitchen + carpet, "quote: $940,000, note: general contractor", "", 1},
		{kitchen + paint, "quote: $120,000", "", 0}, // of a general contractor, beside own hands
		{kitchen, "quote: $120,000", "", 0},
		{kitchen, "quote: $940,000", "", 1},
		{kitchen + "  den: {size: 16' x 13', work: {carpet: {quote: $0, from: Elm}, paint walls: hired}}\n", "quote: $120,000, from: Elm", "", 0},
		{bath + carpet, "quote: $89,000", "", 1},
		{bath, "quote: $89,000", "", 1},
		{bath, "quote: $34,000", "", 0},
		{bath, "quote: $89,000, note: whole house", "", 0},
		{bed + "  den: {size: 16' x 13', work: {carpet: {quote: $0, from: Elm}}}\n", "quote: $145,000, from: Elm", "", 1},
		{bed + "  den: {size: 16' x 13', work: {carpet: {quote: $0, from: Elm}}}\n", "quote: $14,500, from: Elm", "", 0},
		{carpet, "", "whole house: {work: {heat pump: {quote: $98,000, holds more: yes}}}\n", 1},
		{paint, "", "whole house: {work: {final cleaning: {quote: $98,000, holds more: yes}}}\n", 0},
		{carpet, "", "outside: {around: 140 ft, siding: 1200 sq ft, work: {outside wall paint: {quote: $64,000, holds more: yes}}}\n", 0},
		{carpet, "", "outside: {around: 140 ft, siding: 1200 sq ft, work: {outside wall paint: {quote: $112,000, holds more: yes}}}\n", 1},
	} {
		told := toldOf(t, "quote-far", strings.Replace(x.rooms, "WORK", x.work, 1), x.more)
		require.Len(t, told, x.want, "%s %s %s: %v", x.rooms, x.work, x.more, told)
	}
}
