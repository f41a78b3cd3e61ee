package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A quote for a whole bath holds all that its tub brings, also what comes only through other
// names left out; what none of them would bring is doubted still.
func TestWhatIsLeftOutMayComeThroughOthersLeftOut(t *testing.T) {
	const house = walked + `house: {year built: 1968}
rooms:
  bath:
    size: 8' x 5'
    doors: 1
    layers: [vinyl]
    fixed: {tub: 5' x 2'6", shower: 3' x 3', toilet: 1, vanity: 2' x 1'6"}
    work: {%s: {quote: $6,500, holds more: yes}}
    without: [%s]
`
	doubts := func(work string, without ...string) (names []string) {
		_, found := deal.Read("house.yaml", fmt.Appendf(nil, house, work, strings.Join(without, ", ")))
		require.False(t, found.HasErrors(), "%v", found)
		for _, x := range found {
			if x.Code == "without-unneeded" {
				names = append(names, x.Message)
			}
		}
		return names
	}
	deep := 0
	for _, work := range []string{"tub", "vanity", "toilet", "shower base"} {
		var all []string
		d, found := deal.Read("house.yaml", fmt.Appendf(nil, house, work, ""))
		require.False(t, found.HasErrors(), "%v", found)
		for _, w := range d.Work {
			if w.By != "" {
				all = append(all, w.Item.Name)
				if w.By != work {
					deep++
				}
			}
		}
		require.Empty(t, doubts(work, all...), work)
		require.Len(t, doubts(work, append(all, "tile transition")...), 1, work)
		left, _ := deal.Read("house.yaml", fmt.Appendf(nil, house, work, strings.Join(all, ", ")))
		require.Equal(t, 1, len(left.Work), work)
	}
	require.Greater(t, deep, 10)
	require.Empty(t, doubts("tub", "tub surround tile", "waterproofing membrane"), "the tile would bring the board, and that the membrane")
	require.Len(t, doubts("toilet", "waterproofing membrane"), 1, "nothing left out would bring it")
}
