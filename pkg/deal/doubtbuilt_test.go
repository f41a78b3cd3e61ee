package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A year that is that of the purchase, or that is too late for what is in the house, is asked for. New houses
// that are hardly touched are not.
func TestAHouseBuiltForTheWork(t *testing.T) {
	const built, seen = "year built: 1962", "seen: {wiring: bad}\n"
	work := func(work string) string { return "rooms: {den: {size: 12' x 13', work: {" + work + "}}}\n" }
	for _, c := range []struct {
		year, more string
		want       int
	}{
		{"2026", "", 1},
		{"2025", "", 1},
		{"2024", "", 0},
		{"2024", seen, 1},
		{"2021", seen, 1},
		{"2016", seen, 0},
		{"2022", "seen: {water heater: bad, heating: bad}\n", 0},
		{"2023", work("strip wall plaster: own hands"), 1},
		{"2023", work("paint walls: own hands"), 0},
		{"1926", seen + work("strip wall plaster: own hands"), 0},
	} {
		require.Equal(t, c.want, tellsIn(t, "house-built-lately", built, "year built: "+c.year, "holding:", c.more+"holding:"), "%v", c)
	}
	_, found := deal.Read("a.yaml", []byte("house: {year built: 2026}\n"+strings.Replace(walked, "price: $160k", "price: $240k, date: 2026-03-02", 1)+work("paint walls: own hands")))
	require.NotContains(t, codesIn(found), "house-built-lately", "a room is painted")
}
