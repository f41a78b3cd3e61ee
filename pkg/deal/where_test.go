package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// What is done elsewhere takes nothing of what comes along, and what comes along by two ways in one place
// comes once: by hand, of 168 sq ft of floor and the base run of each room.
func TestWhatComesAlongLiesWhereThatLiesWhichBringsIt(t *testing.T) {
	const (
		old  = walked + "house: {year built: 1940}\nrooms: {den: {size: 12' x 14', "
		late = walked + "house: {year built: 2000}\nrooms: {den: {size: 12' x 14', doors: 2'8\" x 6'8\", windows: 2, "
		bath = walked + "house: {year built: 2000}\nrooms: {bath: {size: 8' x 10', doors: 2'8\" x 6'8\", fixed: {toilet: 1}, "
	)
	for _, c := range []struct{ place, work, want string }{
		// 8% of the half under new oak, whatever of the rest is sanded
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 50%}, refinish wood floor: hired", "subfloor repair 6.72"},
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 50%}, refinish wood floor: {part: 75%}", "subfloor repair 6.72"},
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 25%}, resilient plank floor: {part: 25%}, refinish wood floor: {part: 75%}", "subfloor repair 6.72"},
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 50%}, coat wood floor: hired", "subfloor repair 6.72"},
		// a new subfloor under one half, a mended one under the other
		{old, "strip mortar bed floor tile: {part: 50%}, strip sheet vinyl: {part: 50%}, tile floor: hired", "subfloor replacement 84, subfloor repair 6.72"},
		{old, "strip mortar bed floor tile: {part: 25%}, strip sheet vinyl: {part: 75%}, tile floor: hired", "subfloor replacement 42, subfloor repair 10.08"},
		// two layers of one sort, one of them named
		{old + "layers: [vinyl, vinyl], ", "resilient plank floor: {part: 50%}, strip sheet vinyl: {part: 50%}", "strip sheet vinyl 168, subfloor repair 6.72"},
		// carpet that comes up only with the underlayment
		{old + "layers: [carpet], ", "thin plywood underlayment: hired, refinish wood floor: {part: 50%}", "strip carpet 168, subfloor repair 6.72"},
		// 33 1/3 ft of base, half of it tiled and the other half new
		{bath, "hang bath wall board: hired, tile wainscot: {part: 50%}, tile floor: hired, toilet: hired", "baseboard 16.67, strip base 33.33, base off and on 0, paint trim 16.67, caulk base 16.67"},
		{bath, "hang bath wall board: hired, tile wainscot: {part: 25%}, tile floor: hired, toilet: hired", "baseboard 25, strip base 33.33, base off and on 0"},
		// 49 1/3 ft, half of it tiled: the base of the other half is painted once
		{late, "tile base: {part: 50%}, resilient plank floor: hired, replacement window: hired", "base off and on 24.67, paint trim 24.67, paint base 0, caulk base 24.67"},
		{late, "tile base: {part: 50%}, baseboard: {part: 50%}, replacement window: hired", "paint trim 24.67, caulk base 24.67"},
		{late, "tile base: {part: 50%}, baseboard: {part: 50%}, casing: hired", "paint trim 24.67, caulk base 24.67"},
	} {
		of := quantities(t, c.place+"work: {"+c.work+"}}}\n")
		for _, x := range strings.Split(c.want, ", ") {
			i := strings.LastIndex(x, " ")
			require.Equal(t, x[i+1:], of[x[:i]].Round(2).String(), "%s of %s", x[:i], c.work)
		}
	}
}

// However many ways lead to what comes along, it is worked out once: of forty steps of two items each, of which
// each brings both of the next, at half and a quarter of the floor, or five in all.
func TestManyWaysLeadToOneThing(t *testing.T) {
	const steps = 40
	for measure, c := range map[string]struct{ work, want string }{
		"measure: floor, hired: $1 per sq ft":         {"za0: {by: hired, part: 50%}, zb0: {by: hired, part: 25%}", "126"},
		"measure: one, hired: $1 each":                {"za0: {by: hired, count: 3}, zb0: {by: hired, count: 2}", "3"},
		"measure: one, for each: yes, hired: $1 each": {"za0: {by: hired, count: 3}, zb0: {by: hired, count: 2}", "5"},
	} {
		var items strings.Builder
		for i := range steps {
			brings := fmt.Sprintf("[za%d, zb%d]", i+1, i+1)
			if i == steps-1 {
				brings = "none"
			}
			for _, of := range []string{"a", "b"} {
				fmt.Fprintf(&items, "  z%s%d: {trade: z, %s, hours: none, materials: none, brings: %s, source: x}\n", of, i, measure, brings)
			}
		}
		d := ownBook(t, deal.Options{}, items.String(), "rooms: {den: {size: 12' x 14', work: {"+c.work+"}}}\n")
		require.Equal(t, c.want, quantitiesOf(t, d)["zb39"].String(), measure)
	}
}
