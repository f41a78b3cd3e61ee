package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// What people write for something else is told with the form that is read.
func TestHintsNameTheFormThatIsRead(t *testing.T) {
	for _, c := range []struct{ old, add, code, hint string }{
		{"", "\n    fixed: {stairs: 13}", "unknown-key", "beside   fixed   , as   stairs: "},
		{"", "\n    fixed: {door: 3' x 6'8\"}", "unknown-key", "beside   fixed   , as   doors: "},
		{"", "\n    adds: $4k", "unknown-key", "options: {fresh: {adds: $4k, work: {...}}}"},
		{"", "\n    light: {adds: $4k, work: {paint walls: hired}}", "unknown-key", "options: {light: {adds: $5k, work: {...}}}"},
		{"", "\n    height: 8'", "unknown-key", `did you mean "ceiling"?`},
		{"", "\n    length: 8'", "unknown-key", "size: 8' x 5'"},
		{"", "\n    width: 5'", "unknown-key", "size: 8' x 5'"},
		{"", "\n    dimensions: 8' x 5'", "unknown-key", "size: 8' x 5'"},
		{denSize, `size: 12" x 10"`, "too-small", "12' x 10'"},
		{denSize, denSize + "\n    fixed: {toilet: yes}", "bad-size", "toilet: 1"},
		{denSize, denSize + `
    doors: 1 x 2'6" x 6'8"`, "bad-openings", `1 of 2'6" x 6'8"`},
		{denSize, denSize + "\n    ceiling: 8' sloping to 5'", "bad-length", "5' to 9' both sides"},
		{denSize, denSize + "\n    ceiling: 4' 6\" - 8'", "bad-length", "5' to 9' both sides"},
		{denSize, denSize + "\n    ceiling: sloped", "bad-length", "5' to 9' both sides"},
		{denSize, denSize + "\n    ceiling: 8' at ridge", "bad-length", "5' to 9' both sides"},
		{denSize, denSize + "\n    fixed: {base cabinets: [6' x 2', 4' x 2']}", "want-value", "base cabinets: 6' x 2'   and   second base cabinets: 4' x 2'"},
		{denSize, denSize + "\n    ceiling: 6' 4\"\n    doors: 1", "opening-over-ceiling", `doors: 1 of 2'6" x 6'`},
		{denSize, denSize + "\n    ceiling: 5' 4\"\n    doors: 2", "opening-over-ceiling", `doors: 2 of 2'6" x 5'`},
		{"hired}", "{hired: $45/hour}}", "rate-unit", "by the hour: yes   at the work, and   labour: {trades: {paint: {rate: $45.00/hour}}}"},
		{"hired}", "{hired: $14 per sq yd}}", "rate-unit", "hired: $1.56 per sq ft"},
		{"hired}", "{by: own hands, hours: 3 days}}", "bad-rate", "hours: 24"},
		{denSize, denSize + "\n    windows: 13' x 4'", "opening-over-wall", "check how wide it is, the first of the two"},
		{denSize, "size: 4 m x 3 m\n    windows: 1 m x 2.6 m", "opening-over-ceiling", "write across first and up second: 2.6 m x 1 m"},
		{denSize, denSize + "\n    doors: 6' 8\" x 2' 4\"", "door-wide", "write across first and up second: 2' 4\" x 6' 8\""},
		{"hired}", "hired, dryvall: hired}", "unknown-item", "ledgerboard prices drywall"},
		{"hired}", "hired, tile floor: {product: porcelain tile}}", "unknown-product", "porcelain floor tile"},
		{"hired}", "hired, light fixture: {cnt: 3}}", "unknown-key", `did you mean "count"?`},
		{"hired}", "hired, light fixture: {cost: $300}}", "unknown-key", `did you mean "quote"?`},
		{denSize, denSize + "\n    fixtures: {toilet: 1}", "unknown-key", `did you mean "fixed"?`},
		{"rooms:", "outside: {around: 40' x 28'}\nrooms:", "bad-length", "136'"},
		{"rooms:", "outside: {around: 136', work: {paint walls: hired}}\nrooms:", "measure-not-here", "put it in its room"},
		{"hired}", "{by: hired, without: [mask room]}}", "unknown-key", "work: {...}, without: [mask room]"},
		{"hired}", "hired, without: mask room}", "unknown-key", "work: {...}, without: [mask room]"},
		{"paint walls: hired", "paint walls:own hands", "unknown-key", "write   paint walls: own hands"},
		{"rooms:", "local prices: {labour factor: 1.04}\nrooms:", "bad-percent", "a percent sign: 104%"},
		{"rooms:", "scope: as is\nrooms:", "unknown-option", `did you mean "as it is"?`},
		{denSize, "walls: [east 12', north-east 4', north 7', west 15', south 10']", "bad-walk", "north 1' 6\", east 3', north 1' 6\""},
		{"rooms:", "sales tax: 6%\nrooms:", "unknown-key", "it belongs under local prices"},
		{"rooms:", "labour: {trades: {tiling: {rate: $40/hour}}}\nrooms:", "unknown-trade", `did you mean "tile"?`},
		{"rooms:", "labour: {trades: {heating: {rate: $40/hour}}}\nrooms:", "unknown-trade", `did you mean "heating and cooling"?`},
		{"hired}", "hired, adds: $3,000}", "unknown-key", "write   work: {...}, adds: $3,000"},
		{"hired}", "{labour: $200}}", "unknown-key", "quote: $200, covers: labour"},
		{"hired}", "{by: hired, rate: $40/hour}}", "unknown-key", "labour: {trades: {paint: {rate: $40/hour}}}"},
		{"hired}", "{by: hired, materials: $300}}", "unknown-key", "allowance: $300"},
		{"hired}", "hired, tile floor: $9.50 per sq ft}", "bad-choice", "write   tile floor: {by: hired, hired: $9.50 per sq ft}"},
		{denSize, denSize + "\n    by: hired", "unknown-key", "work: {paint walls: hired}"},
		{denSize, denSize + "\n    layers: [linoleum]", "unknown-layer", `did you mean "vinyl"?`},
		{"paint walls", "cabinets", "unknown-item", "these? kitchen cabinets, "},
		{"paint walls", "drywall", "unknown-item", "these? hang wall board, "},
		{"paint walls", "windows", "unknown-item", "these? replacement window, new window, "},
		{"paint walls", "plaster repair", "unknown-item", "fasten loose plaster"},
		{"paint walls", "paint bedroom", "unknown-item", "these? paint walls, "},
		{"paint walls", "ceramic tile floor", "unknown-item", "these? tile floor, "},
		{"paint walls", "rewiring", "unknown-item", "these? rewire, "},
		{"paint walls", "closet shelving", "unknown-item", `did you mean "closet rod and shelf"?`},
		{"rooms:", "seen: {sewer line: $4800}\nrooms:", "bad-choice", "{likely: $4800}"},
	} {
		old := c.old
		if old == "" {
			old = denSize
			c.add = denSize + c.add
		}
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, old, c.add, 1)))
		require.Contains(t, codesIn(found), c.code, c.add)
		require.Contains(t, found[slices.Index(codesIn(found), c.code)].Hint, c.hint, c.add)
	}
}

// Several areas are told with what they come to.
func TestSeveralAreasAreTold(t *testing.T) {
	for _, deck := range []string{"12' x 14' and 6' x 8'", "[12' x 14', 6' x 8']", "168 sq ft + 48 sq ft"} {
		_, found := deal.Read("a.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', work: {paint walls: hired}}}\noutside:\n  deck: "+deck+"\n  work: {pressure wash: {by: hired, count: 90 sq ft}}\n"))
		require.Len(t, found.Errors(), 1, deck)
		require.Contains(t, found.Errors()[0].Hint, "deck: 216 sq ft", deck)
	}
}

// An amount by time of too many decimals is told as one, and not as an amount that is missing.
func TestAnAmountByTimeOfTooManyDecimals(t *testing.T) {
	_, found := deal.Read("den.yaml", []byte(strings.Replace(den, "rooms:", "holding: {tax: {amount: $1200.125/year, paid ahead: 6 months}}\nrooms:", 1)))
	require.Len(t, found.Errors(), 1)
	require.Equal(t, `amount is "$1200.125/year": "1200.125" has more than 2 decimals`, found.Errors()[0].Message)
}

// Work that belongs outside or to the whole house is written where the file has such work: in the
// option taken of what has options, for beside them it would be refused. Done so, the doubt ends.
func TestHintsPutWorkWhereItMayStand(t *testing.T) {
	const outside = walked + "rooms: {den: {size: 10' x 12', work: {paint walls: hired}}}\nwhole house: {work: {crawl vapour barrier: hired}}\noutside: {around: 128 ft%s}\n"
	const house = walked + "rooms: {den: {size: 10' x 12', work: {rewire: hired}}, hall: {size: 10' x 4', work: {rewire: hired}}}\n%s"
	for _, c := range []struct{ place, given, code, hint string }{
		{outside, "", "outside-alone", "outside: {work: {grading at foundation: hired}}"},
		{outside, ", work: {pressure wash: {by: hired, count: 90 sq ft}}", "outside-alone", "outside: {work: {grading at foundation: hired}}"},
		{outside, ", options: {light: {work: {pressure wash: {by: hired, count: 90 sq ft}}}, full: {}}", "outside-alone", "outside: {options: {light: {work: {grading at foundation: hired}}}}"},
		{"scope: {outside: full}\n" + outside, ", options: {light: {work: {pressure wash: {by: hired, count: 90 sq ft}}}, full: {}}", "outside-alone", "outside: {options: {full: {work: {grading at foundation: hired}}}}"},
		{house, "", "done-twice", "whole house: {work: {rewire: ...}}"},
		{house, "whole house: {options: {all: {work: {final cleaning: hired}}}}\n", "done-twice", "whole house: {options: {all: {work: {rewire: ...}}}}"},
	} {
		_, found := deal.Read("a.yaml", fmt.Appendf(nil, c.place, c.given))
		require.False(t, found.HasErrors(), "%v", found)
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == c.code })
		require.GreaterOrEqual(t, i, 0, "%v", found)
		require.Contains(t, found[i].Hint, c.hint+"   ", c.given)
	}
	_, found := deal.Read("a.yaml", fmt.Appendf(nil, outside, ", options: {light: {work: {grading at foundation: hired, downspouts led away: hired}}}"))
	require.NotContains(t, codesIn(found), "outside-alone")
}

// Rooms to choose from are named once each, however many options they have.
func TestHintsNameARoomOnce(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(strings.Replace(twoOptions, "rooms:", "scope: {attic: gut}\nrooms:", 1)))
	require.Equal(t, "those are: den, office; or write   all rooms", found[slices.Index(codesIn(found), "unknown-room")].Hint)
}
