package deal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A quote still holds what other work, which brings it too, leaves of it: of the preparing of
// 352 sq ft of walls, at $0.24 by a trade, 264 for the paint that is quoted and 88 for the paper.
func TestAQuoteHoldsTheRestOfWhatOtherWorkBrings(t *testing.T) {
	const den = `
purchase: {price: $160k}
value: {after-repair value: $260k}
time: {marketing: 5 weeks, escrow: 1 month}
rooms: {den: {size: 12' x 10', doors: 1, windows: 1, work: {paint walls: {quote: $420, part: 75%}, WORK}}}
`
	for _, c := range []struct{ work, holds, rest, labour string }{
		{"paint ceiling: own hands", "prepare walls", "", "63.36"},
		{"hang wallpaper: {by: own hands, part: 25%}", "mask room", "prepare walls", "124.96"},
		{"hang wallpaper: {by: hired, part: 25%}", "mask room", "prepare walls", "124.96"},
		{"hang wallpaper: {by: own hands, part: 60%}", "mask room", "prepare walls", "95.39"}, // both are all, 40% of it the quote's
		{"hang wallpaper: own hands", "mask room", "", "61.6"},                                // all the walls are prepared for the paper
	} {
		d, found := Read("house.yaml", []byte(strings.Replace(den, "WORK", c.work, 1)))
		require.False(t, found.HasErrors(), "%v", found)
		r := d.reader
		for _, w := range r.chosenWorks() {
			if w.item.Name != "paint walls" {
				continue
			}
			labour, _ := r.heldByQuote(w)
			require.Equal(t, c.holds, strings.Join(d.Work[w.member].Includes, ", "), c.work)
			require.Equal(t, c.rest, strings.Join(d.Work[w.member].IncludesRest, ", "), c.work)
			require.Equal(t, c.labour, labour.String(), c.work)
		}
	}
}
