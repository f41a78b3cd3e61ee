package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// More doors than any room has are doubted, but not those of passages, of closets along a wall, of
// several rooms that are entered as one, or of walls that they are wider than, which is told.
func TestMoreDoorsThanARoomHasAreDoubted(t *testing.T) {
	for room, want := range map[string]string{
		"den: {size: 20' x 18', doors: 20":                                                                        "den has 20 doors, many for one room",
		"bedroom: {size: 12' x 11', doors: 10":                                                                    "bedroom has 10 doors, many for one room",
		"bedroom: {size: 12' x 11', doors: [10, 2 of 2' x 6'8\"]":                                                 "bedroom has 12 doors, many for one room",
		"kitchen: {size: 14' x 12', doors: [24 of 1'6\" x 2'6\"]":                                                 "kitchen has 24 doors, many for one room", // of its cabinets
		"all of it: {size: 40' x 28', doors: 60 of 2' x 6'8\"":                                                    "all of it has 60 doors, many for one room",
		"upper rooms: {size: [20' x 15', 20' x 15' sharing 20'], doors: 22":                                       "upper rooms has 22 doors, many for one room",
		"entry hall: {size: [16' x 10', 10' x 8' sharing 8'], doors: 20":                                          "entry hall has 20 doors, many for one room",
		"bedroom: {size: 12' x 11', doors: 9":                                                                     "",
		"bedroom: {size: 16' x 14', closets: 14' x 2', doors: [2'8\" x 6'8\", 2'4\" x 6'8\", 6 of 1'6\" x 6'8\"]": "",
		"bedroom: {size: 12' x 11', doors: 10, windows: 10":                                                       "", // wider than its walls
		"hall: {size: 4' x 30', doors: 12":                                                                        "",
		"landing: {size: 8' x 10', doors: 11":                                                                     "",
		"all of it: {size: 40' x 28', doors: 24":                                                                  "",
		"upper rooms: {size: 24' x 18', doors: 11":                                                                "",
		"three bedrooms: {size: 30' x 12', doors: 10":                                                             "",
		"den: {size: 20' x 18', doors: 2, doorways: 2, windows: 3":                                                "",
	} {
		told := toldOf(t, "many-in-room", "  "+room+", work: {paint walls: hired}}\n", "")
		if want == "" {
			require.Empty(t, told, room)
			continue
		}
		require.Equal(t, []string{want}, told, room)
	}
	require.Len(t, toldOf(t, "openings-wide", "  bedroom: {size: 12' x 11', doors: 10, windows: 10, work: {paint walls: hired}}\n", ""), 1)
}
