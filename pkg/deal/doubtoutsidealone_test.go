package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Where the outside stays as it is, since the scope says so, what comes along and goes by the outside is
// advised where the work is that brings it, which ends the doubt; where the outside has no such option
// only that is told, and nothing where the option taken has the work.
func TestWorkOutsideIsAdvisedWhereTheScopeTakesIt(t *testing.T) {
	const house = walked + `rooms:
  den: {size: 12' x 14', options: {cosmetic: {work: {paint walls: hired}}}}
  attic: {size: 12' x 14', options: {cosmetic: {work: {ATTIC}}}}
whole house: {work: {HOUSE}}
outside: {roof: [{size: 38' x 26', pitch: 5/12, overhang: 1'}], options: {light: {work: {gutters: hired}}, full: {work: {shingle roof gable: hired}}}}
scope: SCOPE
`
	const onHouse, inAttic = "attic blown: {by: hired, count: 900 sq ft}", "attic blown: hired"
	const vents = "rafter vents: {by: hired, count: 80 ft}" // 38 ft and the overhang twice, at both eaves
	for _, c := range []struct{ scope, attic, house, hint, codes string }{
		{"{all rooms: cosmetic, outside: as it is}", "paint walls: hired", onHouse, "whole house: {work: {" + vents + "}}", "outside-alone"},
		{"{all rooms: cosmetic, outside: as it is}", "paint walls: hired", onHouse + ", " + vents, "", ""},
		{"{all rooms: cosmetic, outside: as it is}", inAttic, "final cleaning: hired", "rooms: {attic: {options: {cosmetic: {work: {" + vents + "}}}}}", "outside-alone"},
		{"{all rooms: cosmetic, outside: as it is}", inAttic + ", " + vents, "final cleaning: hired", "", ""},
		{"{all rooms: cosmetic, outside: light}", "paint walls: hired", onHouse, "outside: {options: {light: {work: {rafter vents: hired}}}}", "outside-alone"},
		{"{all rooms: cosmetic, outside: full}", "paint walls: hired", onHouse, "", ""},
		{"cosmetic", "paint walls: hired", onHouse, "say   scope: {all rooms: cosmetic, outside: light}", "option-missing"},
	} {
		text := strings.NewReplacer("ATTIC", c.attic, "HOUSE", c.house, "SCOPE", c.scope).Replace(house)
		_, found := deal.Read("house.yaml", []byte(text))
		require.False(t, found.HasErrors(), "%v", found)
		of := slices.DeleteFunc(slices.Clone(found), func(d diag.Diag) bool { return d.Code != "outside-alone" && d.Code != "option-missing" })
		require.Equal(t, strings.Fields(c.codes), append([]string{}, codesIn(of)...), "%s, %s: %v", c.scope, c.attic, of)
		if len(of) > 0 {
			require.Contains(t, of[0].Hint, c.hint)
		}
	}
}
