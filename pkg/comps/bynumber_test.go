package comps

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Whatever stands in front of an address, rows that are one sale are kept to be compared.
func TestRowsOfOneSaleAreCompared(t *testing.T) {
	never := func(int) bool { return false }
	addresses := []string{"12 Elm St", "12, Elm Street", "12 elm st, Oakton", "#5 12 Elm St", "unit 5 12 Elm St", "First Ave 3", "1st Ave 3", "1ST AVE 3", "12-A Elm St", "12 A Elm St", "13 Elm St", "", "Maple Cottage", "  12 Elm St"}
	same := 0
	for _, a := range addresses {
		for _, b := range addresses {
			one, other := &Sold{Label: a}, &Sold{Label: b}
			one.Area, other.Area = Known(1200), Known(1200)
			if !sameSale(one, other) {
				continue
			}
			same++
			rows := byNumber{}
			rows.add(a, 7)
			require.Equal(t, []int{7}, rows.with(b, never), "%q and %q", a, b)
		}
	}
	require.Greater(t, same, len(addresses))
	rows := byNumber{}
	rows.add("12 Elm St", 0)
	rows.add("12 Elm St", 1)
	require.Empty(t, rows.with("13 Elm St", never))
	require.Equal(t, []int{1}, rows.with("12 Elm St", func(i int) bool { return i == 0 }))
}

// BenchmarkOneDay reads a list whose sales are all of one day and price.
func BenchmarkOneDay(b *testing.B) {
	var list strings.Builder
	list.WriteString("address,sold on,price,sq ft\n")
	for i := range 5000 {
		fmt.Fprintf(&list, "%d Elm St,2026-05-01,200000,1200\n", i)
	}
	for b.Loop() {
		l, found := Read(strings.NewReader(list.String()), "sold.csv", Options{})
		require.Empty(b, found)
		require.Equal(b, 5000, l.Len())
	}
}
