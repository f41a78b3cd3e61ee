package deal_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// What the whole house names is doubted where it comes along in rooms too, but for what other work
// on the whole house takes and what the rooms name or do without.
func TestNamedUnderTheWholeHouseBesideRoomsIsDoubted(t *testing.T) {
	const fitted = "work: {dishwasher fitted: hired, microwave over range: hired}"
	for _, c := range []struct{ room, work, says string }{
		{fitted, "circuit: {quote: \"$1,500\", count: 3}", `"circuit" stands under the whole house (3), and comes along in kitchen (2): all are paid`},
		{fitted, "circuit: {by: hired, count: 2}", `"circuit" stands under the whole house (2), and comes along in kitchen (2): all are paid`},
		{fitted, "old appliance hauled away: {quote: $150, count: 2}", `"old appliance hauled away" stands under the whole house (2), and comes along in kitchen (2): all are paid`},
		{fitted, "heat pump: hired, circuit: {by: hired, count: 3}", `"circuit" stands under the whole house (3), and comes along in kitchen (2): all are paid`},
		{fitted + ", without: [circuit]", "circuit: {by: hired, count: 2}", ""},
		{"work: {dishwasher fitted: hired, circuit: {by: hired, count: 1}}", "circuit: {by: hired, count: 2}", ""},
		{fitted, "heat pump: hired, circuit: {by: hired, count: 1}", ""},
		{fitted, "heat pump: hired", ""},
		{"work: {paint walls: hired}", "circuit: {by: hired, count: 2}", ""},
		{fitted, "electrical permit: {quote: $90}", ""},
	} {
		_, found := deal.Read("a.yaml", []byte(minimal+"house: {year built: 1962}\nrooms: {kitchen: {size: 12' x 13', "+c.room+"}}\nwhole house: {work: {"+c.work+"}}\n"))
		require.False(t, found.HasErrors(), "%s: %v", c.work, found)
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "named-once" })
		require.Equal(t, c.says != "", i >= 0, "%s %s: %v", c.room, c.work, found)
		if i >= 0 {
			require.Equal(t, c.says, found[i].Message)
			require.Contains(t, found[i].Hint, "if those are the same, write   rooms: {kitchen: {without: [")
		}
	}
}
