package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A room with a cut list, waste divided, and a delivery that its one option calls for.
const denInTile = `purchase: {price: $148k}
value: {after-repair value: $214k}
time: {marketing: 4 weeks, escrow: 1 month}
local prices: {waste: divided}
rooms: {den: {size: 12' x 14', doors: 1, work: {baseboard: hired, tile floor: {by: hired, waste: 12%}}}}
`

// What no figure follows, and what is of a search, is locked and has no shade: work that is called
// for either way, how many sticks of which length a cut list takes.
func TestWhatNothingFollowsIsLocked(t *testing.T) {
	b, err := made(answered(t, denInTile), Options{})
	require.NoError(t, err)
	roles := map[string]map[role]int{}
	for _, c := range b.model.Cells {
		if at := b.places[c.Index]; at.grid != nil && c.Given != nil {
			if roles[c.Line.ID()] == nil {
				roles[c.Line.ID()] = map[role]int{}
			}
			roles[c.Line.ID()][at.grid.rows[at.row-1][at.col-1].look.role]++
		}
	}
	for _, line := range []string{"item.called_for", "stock.sticks", "stock.stick_length"} {
		require.Positive(t, roles[line][result], line)
		require.Len(t, roles[line], 1, line)
	}
	require.Positive(t, roles["stock.stick_price"][input])
}
