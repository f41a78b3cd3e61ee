package comps

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What own lines price may stand in a column called has, or each in one of its own.
func TestOwnLinesStandInColumns(t *testing.T) {
	own := Options{Own: []string{"pool", "busy street", "pool and spa"}}
	for _, c := range []struct {
		head, cell string
		has        []string
	}{
		{"has", "pool", []string{"pool"}},
		{"Has", "Pool; Busy-Street", []string{"pool", "busy street"}},
		{"has", "busy street and pool", []string{"busy street", "pool"}},
		{"has", "pool and spa", []string{"pool and spa"}},
		{"has", "none", nil},
		{"pool", "yes", []string{"pool"}},
		{"Pool (Y/N)", "Y", []string{"pool"}},
		{"busy_street", "x", []string{"busy street"}},
		{"Has Pool", "1", []string{"pool"}},
		{"pool", "pool", []string{"pool"}},
		{"pool", "no", nil},
		{"pool", "0", nil},
		{"pool", "", nil},
	} {
		l, found := read(t, "address\tsold on\tprice\t"+c.head+"\n1 Elm St\t2026-03-02\t$300,000\t"+c.cell+"\n", own)
		require.Empty(t, found, c)
		require.Empty(t, l.Unread, c)
		require.Equal(t, c.has, l.Sale(0).Has, c)
	}
	l, found := read(t, "sold;price;extras;Swims\n2026-03-02;$300,000;busy street;yes\n", Options{Own: own.Own, Columns: map[string]string{"has": "extras", "pool": "Swims"}})
	require.Empty(t, found)
	require.ElementsMatch(t, []string{"pool", "busy street"}, l.Sale(0).Has)
}

// A word that no own line prices is doubted once, and what is neither yes nor no counts as no.
func TestUnpricedWordsAreDoubtedOnce(t *testing.T) {
	l, found := read(t, "address,sold,price,has,pool\n1 Elm St,2026-03-02,300000,shed,maybe\n2 Elm St,2026-03-03,300000,shed,yes\n", Options{Own: []string{"pool"}})
	require.Len(t, found, 2)
	require.Equal(t, "1 Elm St: pool: \"maybe\" is neither yes nor no, so it counts as no", found[1].Message)
	require.Equal(t, "1 Elm St: has: no own line says what \"shed\" is worth, so it does not count; and 1 more like it", found[0].Message)
	require.Equal(t, "write what it is worth, e.g.   own lines: {shed: $15,000}   under comps", found[0].Hint)
	require.Empty(t, l.Sale(0).Has)
	_, found = read(t, "address,sold,price,has\n1 Elm St,2026-03-02,300000,pol\n", Options{Own: []string{"pool"}})
	require.Equal(t, "write it as the own line is called: pool", found[0].Hint)
}
