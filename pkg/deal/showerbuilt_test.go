package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A new pan under tile takes the old shower out and wants a valve and a door, as a shower base does; not where
// the shower stays, nor over a tub.
func TestANewPanUnderTileBringsWhatAShowerWants(t *testing.T) {
	const shower = "shower: 4' x 3'"
	for _, c := range []struct {
		fixed, work, without string
		built                bool
	}{
		{shower, "tile shower walls: hired", "", true},
		{shower, "tile shower walls: hired, shower pan foam tray: hired", "", true},
		{shower, "tile shower walls: hired, shower base: hired", "", true},
		{shower, "tile shower walls: hired", "shower pan mortar bed, tile shower floor", false},
		{"tub: 5' x 2'6\"", "tile shower walls: hired, tub: hired", "", false},
		{"tub: 5' x 2'6\"", "tile shower walls: hired", "", false},
	} {
		d, found := deal.Read("a.yaml", []byte(walked+"rooms: {bath: {size: 8' x 10', doors: 1, fixed: {toilet: 1, "+c.fixed+"}, work: {"+c.work+"}, without: ["+c.without+"]}}\n"))
		require.False(t, found.HasErrors(), "%v", found)
		count := map[string]int{}
		for _, w := range d.Work {
			count[w.Item.Name]++
		}
		for _, name := range []string{"take out shower", "shower faucet and valve trim", "glass door"} {
			require.Equal(t, map[bool]int{true: 1}[c.built], count[name], "%s: %s", c.work, name)
		}
	}
}
