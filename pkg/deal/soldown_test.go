package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

const ownLines = unvalued + "house: {living area: 1480 sq ft, has: [pool]}\ncomps:\n  own lines: {pool: $12,000}\n"

// Own lines can be told of the sales of a table as of one that is written out.
func TestOwnLinesOfSalesInATable(t *testing.T) {
	value := func(text string) string {
		d, found := deal.Read("a.yaml", []byte(ownLines+text))
		require.NotNil(t, d, "%v", found)
		for _, f := range found {
			require.NotContains(t, []string{"columns-unread", "doubtful-cell", "bad-cell"}, f.Code, f.Message)
		}
		x, ok := d.ValueRange()
		require.True(t, ok)
		return x.Likely.String()
	}
	typed := value("  sold:\n    1 Elm St: {sold: 2025-11-14, price: $341k, living area: 1480, has: [pool]}\n    2 Elm St: {sold: 2025-10-14, price: $331k, living area: 1480}\n    3 Elm St: {sold: 2025-10-15, price: $335k, living area: 1480, has: pool}\n")
	table := func(head, yes, no string) string {
		return "  table: |\n    address,sold,price,sq ft," + head + "\n    1 Elm St,2025-11-14,341000,1480," + yes + "\n    2 Elm St,2025-10-14,331000,1480," + no + "\n    3 Elm St,2025-10-15,335000,1480," + yes + "\n"
	}
	require.Equal(t, typed, value(table("has", "pool", "")))
	require.Equal(t, typed, value(table("pool", "yes", "no")))
	require.Equal(t, typed, value("  columns: {has: Extras}\n"+table("Extras", "pool", "")))
	require.Equal(t, typed, value("  columns: {pool: Swims}\n"+table("Swims", "x", "")))
	_, found := deal.Read("a.yaml", []byte(ownLines+"  columns: {shed: Shed}\n"+table("Shed", "x", "")))
	require.Equal(t, "unknown-field", found[0].Code)
	require.True(t, strings.HasSuffix(found[0].Hint, "has; or an own line"), found[0].Hint)
}

// What a sale that is written out leaves unsaid is taken from its row in a table.
func TestAWrittenSaleKeepsWhatItsRowSays(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(ownLines+"  sold:\n    14 Elm St: {sold: 2025-11-14, price: $341k, baths: 1, has: [pool]}\n"+
		"  table: |\n    address,sold,price,sq ft,baths,beds,built,seller credit\n    14 Elm Street,2025-11-14,341000,1520,2,3,1961,4000\n    2 Elm St,2025-10-14,331000,1480,2,3,1958,0\n"))
	require.NotNil(t, d, "%v", found)
	n := 0
	for _, row := range d.Comps.Value.Rows {
		if row.Label == "14 Elm St" {
			n++
			require.InDelta(t, 1520, row.Area.Value, 0)
			require.InDelta(t, 3, row.Bedrooms.Value, 0)
			require.InDelta(t, 1961, row.Built.Value, 0)
			require.InDelta(t, 1, row.FullBaths.Value, 0)
			require.Equal(t, "4000", row.Concessions.String())
			require.Equal(t, []string{"pool"}, row.Has)
		}
	}
	require.Equal(t, 1, n)
	for _, f := range found {
		if f.Code == "doubtful-sale" {
			require.Equal(t, "14 Elm Street: the same sale stands in the list already, and differs in baths; what line 7 leaves unsaid of it is taken from this row", f.Message)
			return
		}
	}
	t.Fatal("the second row is told", found)
}

// The hint on columns that are not read shows one that may hold something, and where one may hold
// what no sale says, that is looked at first.
func TestUnreadColumnsAreLookedAtFirst(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1480 sq ft, condition: good, baths: 2}\ncomps:\n"+
		"  table: |\n    address,sold,price,Agent,Bath info\n    14 Elm Street,2025-11-14,341000,Jo,2\n    2 Elm St,2025-10-14,331000,Al,2\n    3 Elm St,2025-10-15,331000,Al,2\n"))
	hints := map[string]string{}
	for _, f := range found {
		hints[f.Code] = f.Hint
	}
	require.Contains(t, hints["columns-unread"], `columns: {baths: "Bath info"}`)
	require.Contains(t, hints["comps-not-told"], `columns: {baths: "Bath info"}`)
	_, found = deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1480 sq ft, condition: good}\ncomps:\n"+
		"  table: |\n    address,sold,price,Agent,Info\n    14 Elm Street,2025-11-14,341000,Jo,2\n    2 Elm St,2025-10-14,331000,Al,2\n"))
	for _, f := range found {
		hints[f.Code] = f.Hint
	}
	require.Equal(t, "see whether a column that is not read holds it (Agent, Info); if none does, add it to the sales, where you know it", hints["comps-not-told"])
}
