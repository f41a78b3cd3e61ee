package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// An own line that the house has moves every sale that does not say whether it has it, so that is
// doubted; one that says so, or another beside it, is believed.
func TestOwnLinesOfWhichSalesSayNothingAreDoubted(t *testing.T) {
	sold := func(has ...string) string {
		out := "  sold:\n"
		for i, h := range has {
			out += "    " + string(rune('1'+i)) + " Elm St: {sold: 2025-11-14, price: $341k, living area: 1480" + h + "}\n"
		}
		return out
	}
	table := func(head string, cells ...string) string {
		out := "  table: |\n    address|sold on|price|sq ft|" + head + "\n"
		for i, c := range cells {
			out += "    " + string(rune('1'+i)) + " Oak St|2025-11-14|341000|1480|" + c + "\n"
		}
		return out
	}
	const none, one = "none of the sales says whether it does, so all count as without, and $", " does not say whether it does, so it counts as without, and $20,000 is added to it: "
	const all = "all 3 sales have \"pool\", and the house does not say whether it does, so it counts as without, and $20,000 is taken off each sale"
	for _, c := range []struct{ house, sales, says, hint string }{
		{"has: [pool]", sold("", "", ""), none + "20,000 is added to each", "add   has: [pool]   to the sales that do, or   has: []   to one that does not"},
		{"has: [pool, rail line]", sold("", "", ""), none + "8,000 is added to each", "add   has: [pool]"},
		{"has: [rail line]", sold("", "", ""), none + "12,000 is taken off each", "add   has: [rail line]"},
		{"has: [pool]", sold(", has: []", "", ""), "", ""},
		{"has: [pool]", sold(", has: none", "", ""), "", ""},
		{"has: [pool]", sold(", has: [rail line]", "", ""), "", ""},
		{"has: [shed]", sold("", "", ""), "", ""}, // worth nothing
		{"has: []", sold("", "", ""), "", ""},
		{"has: [pool]", table("beds", "3", "3", "3"), none, "add to the table   a column   pool   with yes or no"},
		{"has: [pool]", table("pool kind", "in ground", "", ""), none, `look whether a column that is not read tells it, and say so, e.g.   columns: {pool: "pool kind"}`},
		{"has: [pool]", table("pool", "", "n/a", ""), none, ""},
		{"has: [pool]", table("pool", "", "no", ""), "", ""},
		{"has: [pool]", table("pool", "", "y", ""), "", ""},
		{"has: [pool]", table("has", "", "", ""), none, ""},
		{"has: [pool]", table("has", "rail line", "", ""), "", ""},
		{"has: [pool]", table("has", "none", "", ""), "", ""},
		{"has: [pool]", table("pool", "", "y", "") + sold(""), "", ""}, // under a third of the weight
		{"has: [pool]", table("pool", "y") + sold(""), one, "add   has: [pool]"},
		{"has: [pool]", table("beds", "3") + sold(", has: [pool]"), one, "add to the table"},
		{"baths: 2", sold(", has: [pool]", ", has: [pool]", ", has: [pool]"), all, "add under house   has: [pool]   if it does, and   has: []   if it does not"},
		{"has: none", sold(", has: [pool]", ", has: [pool]", ", has: [pool]"), "", ""},
		{"has: [rail line]", sold(", has: [pool]", ", has: [pool]", ", has: [pool]"), "", ""},
		{"baths: 2", sold(", has: [pool]", ", has: [pool]", ""), "", ""}, // some have, some have not
		{"baths: 2", sold(", has: [pool]", ", has: [pool]"), "", ""},     // few, each by itself
	} {
		text := unvalued + "house: {living area: 1480 sq ft, " + c.house + "}\ncomps:\n  amounts: {square foot: $90}\n  own lines: {pool: $20,000, rail line: -$12,000, shed: $0}\n" + c.sales
		d, found := deal.Read("a.yaml", []byte(text))
		require.NotNil(t, d, "%v: %v", c, found)
		toldOnce(t, found, func(f diag.Diag) bool {
			return (f.Code == "comps-not-told" || f.Code == "comps-not-compared") && strings.Contains(f.Message, "count")
		}, c.says, c.hint, c)
	}
}

// A sale that is written out and says nothing of what it has is told by its row in a table.
func TestAWrittenSaleIsToldByItsRow(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(ownLines+"  sold:\n    14 Elm St: {sold: 2025-11-14, price: $341k}\n"+
		"  table: |\n    address,sold,price,sq ft,pool\n    14 Elm Street,2025-11-14,341000,1520,no\n"))
	require.NotNil(t, d, "%v", found)
	require.Equal(t, []string{"pool"}, d.Comps.Value.Rows[0].Told)
	for _, f := range found {
		require.NotEqual(t, "comps-not-told", f.Code, f.Message)
	}
}
