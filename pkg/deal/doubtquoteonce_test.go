package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The same quote in two rooms is asked about, unless it says whether it holds more. As much work in
// each at about the price of one is asked for each: a toilet comes to $433 with its goods, two to $866.
func TestOneQuoteInTwoRooms(t *testing.T) {
	rooms := func(large, small string) string {
		return "  den: {size: 12' x 13', work: {carpet: " + large + "}}\n  nook: {size: 9' x 10', work: {carpet: " + small + "}}\n"
	}
	const fern = "{quote: $1,250, from: Fern Carpets, dated: 2026-10-10}"
	for _, c := range []struct {
		rooms string
		want  int
	}{
		{rooms(fern, fern), 1},
		{rooms("$1,250", "$1,250"), 1},
		{rooms(fern, "$1,250"), 0},
		{rooms(fern, "{quote: $1,250, from: Oak Carpets, dated: 2026-10-10}"), 0},
		{rooms(fern, "{quote: $1,250, from: Fern Carpets, dated: 2026-10-11}"), 0},
		{rooms(fern, "{quote: $1,150, from: Fern Carpets, dated: 2026-10-10}"), 0},
		{rooms("{quote: $900, holds more: no}", "{quote: $900, holds more: no}"), 0},
		{rooms("{quote: $1,250, from: Fern Carpets, holds more: yes}", "{quote: $0, from: fern carpets}"), 0},
		{"  bath: {size: 5' x 8', fixed: {toilet: 1}, work: {toilet: $450}}\n  powder room: {size: 4' x 6', fixed: {toilet: 1}, work: {toilet: $450}}\n", 0},
		{"  bath: {size: 5' x 8', fixed: {toilet: 1}, work: {toilet: $850}}\n  powder room: {size: 4' x 6', fixed: {toilet: 1}, work: {toilet: $850}}\n", 1},
	} {
		require.Len(t, toldOf(t, "quote-twice", c.rooms, ""), c.want, c.rooms)
	}
}

// A quote of nothing is settled by one of the same trade that holds more, and settles what that holds.
func TestAQuoteOfNothingBesideOneThatHoldsIt(t *testing.T) {
	rooms := func(large, small string) string {
		return "  den: {size: 12' x 13', work: {carpet: {" + large + "}, paint walls: hired}}\n  nook: {size: 9' x 10', work: {carpet: {" + small + "}}}\n"
	}
	for _, c := range []struct {
		rooms     string
		far, more int
	}{
		{rooms("quote: $1,950, from: Fern, holds more: yes", "quote: $0, from: Fern"), 0, 0},
		{rooms("quote: $1,950, from: Fern, holds more: yes", "quote: $0, from: Oak"), 1, 1},
		{rooms("quote: $1,950, from: Fern, holds more: yes", "quote: $0"), 1, 1},
		{rooms("quote: $1,950, from: Fern", "quote: $0, from: Fern"), 1, 0},
	} {
		require.Len(t, toldOf(t, "quote-far", c.rooms, ""), c.far, c.rooms)
		require.Len(t, toldOf(t, "quote-beside", c.rooms, ""), c.more, c.rooms)
	}
}

// A quote of nothing is settled by a note that the work is a gift; one of some dollars is not.
func TestAQuoteOfNothingForAGift(t *testing.T) {
	for quote, want := range map[string]int{
		"quote: $0, from: Ted":                             1,
		"quote: $0, from: Ted, note: after work":           1,
		"quote: $0, from: Ted, note: a gift":               0,
		"quote: $0, covers: labour, note: done as a favor": 0,
		"quote: $0, note: 'no charge, a gift'":             0,
		"quote: $0, note: paint given by Ted":              0,
		"quote: $0, note: not a gift":                      1,
		"quote: $0, note: \"it isn't free\"":               1,
		"quote: $0, note: price not given yet":             1,
		"quote: $6, note: gift":                            1,
	} {
		require.Len(t, toldOf(t, "quote-far", "  den: {size: 12' x 13', work: {carpet: {"+quote+"}}}\n", ""), want, quote)
	}
}

// One sum of one firm at different work is told as the same work in several rooms is; not where nobody
// is named, the days differ, or   holds more   settles it.
func TestOneQuoteOfAFirmAtSeveralWorks(t *testing.T) {
	bath := func(tub, toilet string) string {
		return "  bath: {size: 8' x 9', fixed: {tub: 5' x 2'6\", toilet: 1}, work: {tub: {" + tub + "}, toilet: {" + toilet + "}}}\n"
	}
	require.Equal(t, []string{`tub (bath), toilet (bath): a quote of $1,800 from "Bay Plumbing" stands at each of them, and is counted in each`},
		toldOf(t, "quote-twice", bath("quote: $1800, from: Bay Plumbing", "quote: $1800, from: bay plumbing"), ""))
	for _, c := range [][2]string{
		{"quote: $1800", "quote: $1800"},
		{"quote: $1800, from: Bay Plumbing", "quote: $1800, from: Elm Tile"},
		{"quote: $1800, from: Bay Plumbing", "quote: $1750, from: Bay Plumbing"},
		{"quote: $1800, from: Bay Plumbing, dated: 2026-09-01", "quote: $1800, from: Bay Plumbing, dated: 2026-09-08"},
		{"quote: $1800, from: Bay Plumbing, holds more: yes", "quote: $0, from: Bay Plumbing"},
		{"quote: $1800, from: Bay Plumbing, holds more: no", "quote: $1800, from: Bay Plumbing, holds more: no"},
	} {
		require.Empty(t, toldOf(t, "quote-twice", bath(c[0], c[1]), ""), c)
	}
}
