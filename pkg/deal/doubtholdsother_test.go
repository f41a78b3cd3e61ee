package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A quote for a whole kitchen at its cabinets is told while the rest of the kitchen is hired besides.
// By the price book the cabinets with what goes along come to $7,158, and the rest to about as much.
func TestAQuoteForAWholeKitchen(t *testing.T) {
	kitchen := func(cabinets, rest string) string {
		return "  kitchen: {size: 14' x 13', fixed: {base cabinets: 22' x 2', wall cabinets: 16' x 1', sink: 1}, work: {kitchen cabinets: " + cabinets + ", " + rest + "}}\n"
	}
	const hired = "stone counter: hired, tile backsplash: hired, resilient plank floor: hired, paint walls: hired"
	for _, x := range []struct {
		cabinets, rest string
		want           int
	}{
		{"$14,900", hired, 1}, {"$19,000", hired, 1}, {"$24,000", hired, 1},
		{"$9,900", hired, 0}, // what a dear cabinetmaker asks
		{"{quote: $14,900, holds more: yes}", hired, 0},
		{"{quote: $14,900, holds more: no}", hired, 0},
		{"{quote: $14,900, covers: all}", hired, 1},
		{"$14,900", "paint walls: hired", 0}, // which is nothing beside it
		{"$11,900", "stone counter: own hands, tile backsplash: own hands, paint walls: own hands", 0},
		{"$14,900", "stone counter: own hands, tile backsplash: own hands, paint walls: own hands", 1},
		{"{quote: $14,900, holds more: no}", "stone counter: own hands, tile backsplash: own hands, paint walls: own hands", 0},
		{"{quote: $14,900, holds more: yes}", "stone counter: own hands, paint walls: own hands", 0},
		{"$14,900", "stone counter: $4,200, tile backsplash: $1,500", 1},
		{"$11,900", "stone counter: $4,200, tile backsplash: $1,500", 0},
		{"$14,900", "stone counter: {quote: $0, from: Fern}, paint walls: own hands", 0}, // paint alone costs little
		{"{quote: $14,900, from: Fern}", "stone counter: {quote: $0, from: Fern}, tile backsplash: hired, resilient plank floor: hired, paint walls: hired", 0},
	} {
		told := toldOf(t, "quote-holds-other", kitchen(x.cabinets, x.rest), "")
		require.Len(t, told, x.want, "%s, %s: %v", x.cabinets, x.rest, told)
		if x.want > 0 {
			require.Contains(t, told[0], "stone counter")
		}
	}
}

// One quote for the same work in several rooms is told at the one that has it, and one for a roof that
// has the siding in it.
func TestAQuoteForOtherRoomsToo(t *testing.T) {
	rooms := func(first, second string) string {
		return "  bed: {size: 14' x 13', work: {carpet: " + first + "}}\n  office: {size: 14' x 13', work: {carpet: " + second + "}}\n"
	}
	for _, x := range []struct {
		first, second string
		want          int
	}{
		{"$2,300", "hired", 1}, {"{quote: $2,300, holds more: yes}", "hired", 0}, {"{quote: $2,300, holds more: no}", "hired", 0},
		{"$1,100", "hired", 0}, {"$2,300", "own hands", 1}, {"$2,300", "$900", 1},
		{"$1,500", "own hands", 0}, {"$1,500", "$900", 0}, {"{quote: $2,300, holds more: no}", "own hands", 0}, {"{quote: $2,300, holds more: no}", "$900", 0},
	} {
		told := toldOf(t, "quote-holds-other", rooms(x.first, x.second), "")
		require.Len(t, told, x.want, "%v", x)
		if x.want > 0 {
			require.Contains(t, told[0], "the same in office is ")
		}
	}
	const den = "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	for roof, want := range map[string]int{"$26,000": 1, "$15,000": 0, "{quote: $26,000, holds more: yes}": 0, "{quote: $15,000, covers: all}": 0} {
		told := toldOf(t, "quote-holds-other", den, "house: {year built: 1988}\noutside: {around: 160 ft, siding: 1600 sq ft, gutters: 120 ft, roof: [{size: 44' x 32', pitch: 6/12, overhang: 1'}], work: {shingle roof gable: "+roof+", vinyl siding: hired, gutters: hired}}\n")
		require.Len(t, told, want, "%s: %v", roof, told)
	}
}
