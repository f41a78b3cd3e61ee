package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A mend of what is found says how much it is; a count, a part, the one pane of a room and a quote
// without work that comes along settle it, and what goes by the age of the house needs none.
func TestAMendSaysHowMuchItIs(t *testing.T) {
	for work, want := range map[string]int{
		"wood siding repair: hired": 1, "wood siding repair: {by: hired, count: 30 sq ft}": 0, "wood siding repair: {by: hired, part: 5%}": 0, "wood siding repair: {by: hired, part: 100%}": 0,
		"wall sheathing repair: own hands": 1, "masonry repointing: hired": 1, "vinyl siding: hired, wood siding repair: hired": 1, "vinyl siding: hired": 0,
		"masonry repointing: $900": 0, "wood siding repair: $900": 1, "roof deck repair: hired": 0,
	} {
		require.Len(t, toldOf(t, "part-unsaid", "  den: {size: 12' x 10', work: {paint walls: hired}}\n", "outside: {around: 128 ft, roof: [{size: 30' x 24', pitch: 6/12}], work: {"+work+"}}\n"), want, work)
	}
	for work, want := range map[string]int{
		"wall removal: hired": 1, "interior wall: hired": 1, "interior wall: {by: hired, count: 80 sq ft}": 0, "window pane replaced: hired": 1, "paint walls: hired": 0,
	} {
		require.Len(t, toldOf(t, "part-unsaid", "  living room: {size: 16' x 20', windows: 3, work: {"+work+"}}\n", ""), want, work)
	}
	require.Empty(t, toldOf(t, "part-unsaid", "  bath: {size: 6' x 8', windows: 1, work: {window pane replaced: hired}}\n", ""))
}

// Her own book says of her own items that they are done in part.
func TestAMendOfAnOwnBookSaysHowMuchItIs(t *testing.T) {
	for says, want := range map[string]int{"in part: yes, ": 1, "": 0} {
		own := func(string) ([]byte, error) {
			return []byte("items: {panel mend: {" + says + "trade: paint, work: mend panels, measure: walls, hours: none, hired: $4 per sq ft, materials: none, brings: none, source: mine}}"), nil
		}
		_, found := deal.ReadWith(deal.Options{Open: own}, "den.yaml", []byte("own book: mine.yaml\n"+walked+"rooms: {den: {size: 12' x 10', work: {panel mend: hired}}}\n"))
		require.False(t, found.HasErrors(), "%v", found)
		n := 0
		for _, d := range found {
			if d.Code == "part-unsaid" {
				n++
			}
		}
		require.Equal(t, want, n)
	}
}
