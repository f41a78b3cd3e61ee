package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Doors that a passage and the rooms beside it both name are doubted where the same work is done
// to both; not where the passage tells its doorways apart, has closets for its doors, or far fewer
// doors than there are rooms.
func TestDoorsNamedInBothRoomsAreDoubted(t *testing.T) {
	const doubted = "hall has 3 doors, about as many as the rooms that doors lead to, which have 3 of their own: paint doors is done to both"
	for _, c := range []struct{ hall, work, says string }{
		{"hall: {size: 4' x 14', doors: 3", "paint doors", doubted},
		{"hall: {size: 4' x 14', doors: 3, doorways: 0", "paint doors", ""},
		{"hall: {size: 4' x 14', doorways: 3", "paint walls", ""},
		{"hall: {size: 4' x 14', doors: 1, doorways: 2", "paint doors", ""},
		{"hall: {size: 4' x 14', doors: 3", "paint walls", ""},
		{"hall: {size: 4' x 14', doors: 3, closets: [3' x 2', 3' x 2']", "paint doors", ""},
		{"hall: {size: 4' x 14', doors: 1", "paint doors", ""},
		{"hall: {size: 4' x 14', doors: 8", "paint doors", ""},
		{"upper landing: {size: 4' x 14', doors: [2 of 2'6\" x 6'8\", 2'4\" x 6'8\"]", "paint doors", strings.Replace(doubted, "hall", "upper landing", 1)},
		{"den: {size: 14' x 14', doors: 3", "paint doors", ""},
	} {
		rooms := "rooms:\n  " + c.hall + ", work: {" + c.work + ": hired}}\n"
		for _, name := range []string{"bedroom", "second bedroom", "bath"} {
			rooms += "  " + name + ": {size: 10' x 12', doors: 1, work: {paint doors: hired}}\n"
		}
		_, found := deal.Read("house.yaml", []byte(walked+rooms))
		require.False(t, found.HasErrors(), "%v", found)
		var got []string
		for _, d := range found {
			if d.Code == "doors-twice" {
				got = append(got, d.Message)
				require.Contains(t, d.Hint, "doorways: 3")
			}
		}
		require.Equal(t, c.says, strings.Join(got, "; "), c.hall)
	}
}

// The doors of a hall that is only counted are nobody's slip, whichever scope is taken; those of a
// measured hall beside counted rooms are named in the file.
func TestDoorsOfACountedHallAreLetBe(t *testing.T) {
	const doors = "size: 12' x 11', doors: 2, work: {trim door bottoms: hired}}\n"
	for rooms, want := range map[string]int{
		"quick: {halls: 1}\nrooms:\n  bedroom: {" + doors + "  study: {" + doors:                                                                       0,
		"quick: {halls: 2}\nrooms:\n  bedroom: {" + doors + "  study: {" + doors:                                                                       0,
		"quick: {halls: 2}\nrooms:\n  hall: {size: 4' x 14', doors: 4, work: {trim door bottoms: hired}}\n  bedroom: {" + doors + "  study: {" + doors: 1,
	} {
		for _, scope := range []string{"cosmetic", "full gut"} {
			_, found := deal.Read("house.yaml", []byte(walked+rooms), deal.Set{Path: "scope", Value: scope})
			require.False(t, found.HasErrors(), "%v", found)
			got := 0
			for _, d := range found {
				if d.Code == "doors-twice" {
					require.Equal(t, "house.yaml", d.Pos.File)
					got++
				}
			}
			require.Equal(t, want, got, "%s: %s", scope, rooms)
		}
	}
}
