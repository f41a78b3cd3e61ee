package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A line is doubted beside work of its trade in rooms with the names and sum of that work; not
// where that is small beside the line, so that the line is plainly other work, nor where the
// file says that it is apart.
func TestALineIsDoubtedBesideRoomsWithWhatTheyHold(t *testing.T) {
	for line, says := range map[string]string{
		"trade: electrical, work: new panel, amount: $4.3k":            "",
		"trade: electrical, work: kitchen outlets, amount: $700":       `"electrical: kitchen outlets" is of a trade, or of a room, that rooms price too: protected outlet`,
		"trade: electrical, work: outlets, amount: $700, apart: yes":   "",
		"trade: electrical, work: outlets, amount: $700, apart: no":    "protected outlet",
		"trade: electrical, work: door bell, amount: $120":             "",
		"trade: kitchen, work: spice rack, amount: $70":                "",
		"trade: handyman, work: stone counter, amount: $2.4k":          "stone counter",
		"trade: handyman, work: new stone counter, amount: $2.4k":      "stone counter",
		"trade: handyman, work: paint, amount: $1k":                    "paint",
		"trade: handyman, work: garden bench, amount: $2.4k":           "",
		"trade: kitchen, work: all of it, amount: $9k":                 " more, together $",
		"trade: kitchen, work: cellar shelves, amount: $9k, apart: on": "",
	} {
		_, found := deal.Read("a.yaml", []byte(walked+"renovation: {lines: [{"+line+"}]}\nrooms: {kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 10' x 2', sink: 1}, work: {stone counter: hired, paint walls: hired}}}\n"))
		require.False(t, found.HasErrors(), "%s: %v", line, found)
		var got []string
		for _, d := range found {
			if d.Code == "trade-twice" {
				got = append(got, d.Message)
			}
		}
		if says == "" {
			require.Empty(t, got, line)
			continue
		}
		require.Contains(t, strings.Join(got, "; "), says, line)
	}
}
