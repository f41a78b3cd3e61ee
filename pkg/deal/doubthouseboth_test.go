package deal_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Circuits that come along in rooms are doubted beside a rewire of the whole house, but for those
// that it leaves to the rooms, that are named, or that are for heating, which it does not know of.
func TestCircuitsBesideARewireAreDoubted(t *testing.T) {
	const rewire = "whole house: {work: {rewire: hired}}\n"
	const fitted = "dishwasher fitted: hired, microwave over range: hired"
	for _, c := range []struct{ year, work, house, says, hint string }{
		{"1962", fitted, rewire, "circuit comes along besides in kitchen (2)", "write   rooms: {kitchen: {without: [circuit]}}   ; else name it there, as   circuit: {by: hired, count: 2}"},
		{"1962", fitted + "}, without: [range hood duct], layers: [carpet], fixed: {sink: 1", rewire, "in kitchen (2)", "rooms: {kitchen: {without: [range hood duct, circuit]}}   "},
		{"1962", fitted + ", mini-split: {by: hired, count: 3}", rewire, "in kitchen (2)", "rooms: {kitchen: {work: {circuit: {by: hired, count: 3}}}}   ; else name it there, as   circuit: {by: hired, count: 5}"},
		{"1962", fitted, "whole house: {options: {full: {work: {rewire: hired}}}}\n", "in kitchen (2)", "beside the other options of the whole house too"},
		{"1962", fitted + "}, without: [circuit], layers: [carpet], fixed: {sink: 1", rewire, "", ""},
		{"1962", fitted + ", circuit: {by: hired, count: 2}", rewire, "", ""},
		{"1962", "mini-split: {by: hired, count: 3}", rewire, "", ""},
		{"2001", fitted, rewire, "", ""},
		{"1962", fitted, "", "", ""},
		{"1962", fitted, "whole house: {work: {rewire: {by: hired, part: 60%}}}\n", "", ""},
		{"1962", fitted, "whole house: {work: {rewire: {by: hired, count: 300 sq ft}}}\n", "", ""},
	} {
		room := "rooms: {kitchen: {size: 12' x 13', doors: 1, work: {" + c.work + "}}}\n"
		_, found := deal.Read("a.yaml", []byte(minimal+"house: {year built: "+c.year+"}\n"+room+c.house))
		require.False(t, found.HasErrors(), "%s: %v", c.work, found)
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "done-twice" })
		require.Equal(t, c.says != "", i >= 0, "%s %s: %v", c.work, c.house, found)
		if i >= 0 {
			require.Contains(t, found[i].Message, c.says)
			require.Contains(t, found[i].Hint, c.hint)
		}
	}
}

// Rooms that are only counted can leave nothing out, so nothing is said of them.
func TestRoomsThatAreCountedAreNotAskedForTheirCircuits(t *testing.T) {
	for _, work := range []string{"rewire: hired", "circuit: {quote: $900, count: 2}"} {
		_, found := deal.Read("a.yaml", []byte(minimal+"house: {year built: 1962}\nscope: full gut\nquick: {kitchens: 1}\nwhole house: {options: {full gut: {work: {"+work+"}}}}\n"))
		require.False(t, found.HasErrors(), "%v", found)
		require.NotContains(t, codesIn(found), "done-twice")
		require.NotContains(t, codesIn(found), "named-once")
	}
}
