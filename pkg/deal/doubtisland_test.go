package deal_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// islanded is a kitchen with 15 ft of base cabinets and an island of 5 ft, whichever side comes first.
func islanded(work string) string {
	return "  kitchen: {size: 14' x 16', doors: 1, fixed: {base cabinets: 15' x 2', island: 3' x 5', sink: 1}, work: {laminate counter: hired, " + work + "}}\n"
}

// New cabinets bring those of an island along by its length, and a quote for them holds those too.
func TestNewCabinetsBringThoseOfAnIsland(t *testing.T) {
	const stock, better = "island cabinets", "better island cabinets"
	for work, want := range map[string]string{
		"kitchen cabinets: hired":                                stock,
		"better kitchen cabinets: hired":                         better,
		"better kitchen cabinets: hired, island cabinets: hired": stock,
		"kitchen cabinets: {quote: $8500}":                       "",
	} {
		got := quantities(t, walked+"rooms:\n"+islanded(work))
		for _, name := range []string{stock, better} {
			feet, is := got[name]
			require.Equal(t, want == name, is, "%s: %s", work, name)
			require.True(t, !is || feet.Equal(decimal.NewFromInt(5)), "%s: %s", work, feet)
		}
	}
}

// Paint, doors and pulls of the cabinets go by those along walls: an island is told, but where a count
// says how much is done.
func TestWorkThatLeavesAnIslandOut(t *testing.T) {
	for work, want := range map[string]int{
		"paint cabinets: hired": 1, "cabinets refaced: hired, cabinet pulls: hired": 1,
		"paint cabinets: {by: hired, count: 20 ft}": 0, "paint cabinets: {by: hired, count: 15 ft}": 0, "paint cabinets: {by: hired, part: 100%}": 0,
		"paint cabinets: {quote: $900}": 0, "kitchen cabinets: hired": 0, "kitchen cabinets: {quote: $8500}": 0, "paint walls: hired": 0,
	} {
		require.Len(t, toldOf(t, "island-uncounted", islanded(work), ""), want, work)
	}
	require.Empty(t, toldOf(t, "island-uncounted", "  kitchen: {size: 14' x 16', fixed: {base cabinets: 15' x 2'}, work: {paint cabinets: hired}}\n", ""))
}

// A count may have the island in it, but where that has work of its own.
func TestACountWithTheIslandInIt(t *testing.T) {
	for work, want := range map[string]int{
		"paint cabinets: {by: hired, count: 20 ft}": 0, "paint cabinets: {by: hired, count: 22 ft}": 1,
		"kitchen cabinets: {by: hired, count: 20 ft}": 1, "kitchen cabinets: {quote: $8500, count: 20 ft}": 0,
	} {
		require.Len(t, toldOf(t, "count-large", islanded(work), ""), want, work)
	}
}
