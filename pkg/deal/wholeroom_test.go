package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A line that names a room of the file, or the deck, as a whole is told beside what rooms price there,
// under lines and as a general line; not one of a smaller thing, or what is said to be apart.
func TestALineOfAWholeRoom(t *testing.T) {
	const rooms = `  main bath: {size: 9' x 6', doors: 1, fixed: {tub: 5' x 2' 6", vanity: 3' x 1' 9", toilet: 1}, work: {tub: hired, toilet: hired, vanity: hired, tile floor: hired, paint bath walls: hired}}
  loft room: {size: 18' x 13', doors: 1, work: {carpet: hired, paint walls: hired}}
  hall: {size: 4' x 15', work: {paint walls: hired, paint ceiling: hired}}
`
	const outside = "outside: {around: 134 ft, deck: 12' x 14', work: {deck boards: own hands}}\n"
	for line, want := range map[string]int{
		"bath": 1, "baths": 1, "bathroom": 1, "main bath": 1, "bath remodel": 1, "new bath": 1, "bath renovation": 1, "bath gut": 1, "full bath remodel": 1,
		"loft": 1, "loft room refresh": 1, "deck": 1, "deck rebuild": 1, "new deck": 1,
		"bath accessories": 0, "bath permit": 0, "tub refinish in bath": 0, "bath fan vent": 0, "main": 0, "deck permit": 0, "deck furniture": 0, "room": 0,
		"garage": 0, "hall": 0, // of which the rooms hold little beside it
	} {
		require.Len(t, toldOf(t, "trade-twice", rooms, outside+"renovation: {general: {"+line+": $9,000}}\n"), want, "general: %s", line)
		if line == "deck furniture" || line == "main" || line == "room" { // lines of a trade are told by any of its words
			continue
		}
		require.Len(t, toldOf(t, "trade-twice", rooms, outside+"renovation: {lines: [{work: "+line+", amount: $9,000}]}\n"), want, "line: %s", line)
		require.Empty(t, toldOf(t, "trade-twice", rooms, outside+"renovation: {lines: [{work: "+line+", amount: $9,000, apart: yes}]}\n"), "apart: %s", line)
	}
	told := toldOf(t, "trade-twice", rooms+"  loft: {size: 9' x 9', work: {resilient plank floor: hired}}\n", "renovation: {general: {loft: $900}}\n")
	require.Len(t, told, 1)
	require.Contains(t, told[0], "resilient plank floor")
	require.NotContains(t, told[0], "carpet") // which is the loft room's
}
