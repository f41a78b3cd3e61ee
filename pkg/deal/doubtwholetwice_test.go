package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A line of all of the work, its materials, its labour or its sales tax is told beside rooms that
// price it; not one of something else, a share of the work, what is said to be apart, or a line beside
// which the rooms hold little.
func TestALineOfTheWholeBesideRooms(t *testing.T) {
	const rooms = "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 14' x 2', sink: 1}, work: {kitchen cabinets: hired, stone counter: hired, paint walls: hired}}\n"
	for line, want := range map[string]int{
		"trade: general contractor, work: renovation":       1,
		"trade: renovation, work: all rooms":                1,
		"trade: general, work: whole renovation":            1,
		"trade: GC, work: labor & materials":                1,
		"work: whole-house remodel":                         1,
		"trade: general contractor, work: supervision":      0,
		"trade: renovation, work: cellar shelves":           0,
		"trade: general, work: final cleaning":              0,
		"trade: renovation, work: all rooms, apart: yes":    0,
		"trade: general contractor, work: renovation, x: $": 0,
	} {
		amount := "$18k"
		if line[len(line)-1] == '$' { // next to nothing in the rooms
			line, amount = line[:len(line)-len(", x: $")], "$180k"
		}
		require.Len(t, toldOf(t, "rooms-twice", rooms, "renovation: {lines: [{"+line+", amount: "+amount+"}]}\n"), want, line+amount)
	}
	for line, want := range map[string]int{
		"contractor: $18k": 1, "renovation budget: $18k": 1, "materials: $6,000": 1, "own labour: $6,000": 1, "my wages: $2,000/month": 1, "labor: $900": 1,
		"materials from the big store: $6,000": 1, "supplies from the store: $6,000": 1, "lumber yard order: $6,000": 1, "lumberyard: $6,000": 1,
		"lumber: $900": 0, "store credit: $600": 0, "cleaning supplies from the store: $90": 0,
		"contractor: 12%": 0, "general conditions: $4,000": 0, "builder's permit review: $240": 0, "final cleaning crew: $380": 0,
		"blades and consumables: $260": 0, "general: $900": 0, "house cleaning: $400": 0, "project manager: $4,000": 0, "contractor's fee: $3,000": 0,
		"sales tax: {amount: 6.25%, of: works cost}": 1, "sales tax: $700": 1, "transfer tax: $700": 0,
	} {
		require.Len(t, toldOf(t, "rooms-twice", rooms, "local prices: {sales tax: 6.25%}\nrenovation: {general: {"+line+"}}\n"), want, line)
	}
	require.Empty(t, toldOf(t, "rooms-twice", rooms, "renovation: {general: {sales tax: $700}}\n"))
}
