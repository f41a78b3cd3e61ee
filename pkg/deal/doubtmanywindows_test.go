package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Windows of a room are held against those that are listed outside, and else against what any room has; a
// room of glass, several rooms entered as one and a basement beside what is listed are let be.
func TestMoreWindowsThanThereAreOutsideAreDoubted(t *testing.T) {
	const rest = "  kitchen: {size: 14' x 12', windows: 3, work: {paint walls: hired}}\n  living room: {size: 18' x 14', windows: 6, work: {paint walls: hired}}\n"
	for _, c := range []struct{ room, outside, want string }{
		{"den: {size: 20' x 18', windows: 20", "windows: 10", "den has 20 windows, and outside there are 10 in all"},
		{"bedroom: {size: 12' x 11', windows: 10", "windows: 9", "bedroom has 10 windows, and outside there are 9 in all"},
		{"bedroom: {size: 12' x 11', windows: 10", "windows: 11", "bedroom has 10 windows and the rooms together 19, and outside there are 11 in all"},
		{"sunroom: {size: 20' x 14', windows: [20 of 2' x 4']", "windows: 12", "sunroom has 20 windows, and outside there are 12 in all"},
		{"den: {size: 20' x 18', windows: 20", "", "den has 20 windows, many for one room"},
		{"den: {size: 20' x 18', windows: 20", "doors: 2", "den has 20 windows, many for one room"},
		{"den: {size: 20' x 18', windows: 20", "windows: 32", ""}, // so many are there
		{"bedroom: {size: 12' x 11', windows: 10", "windows: 17", ""},
		{"bedroom: {size: 12' x 11', windows: 2", "windows: 1", ""}, // the one that is replaced
		{"family room: {size: 16' x 12', windows: [12 of 2'8\" x 4']", "", ""},
		{"family room: {size: 16' x 12', windows: [12 of 2'8\" x 4']", "windows: 21", ""},
		{"sunroom: {size: 20' x 14', windows: [22 of 2' x 4']", "", ""},
		{"sunroom: {size: 20' x 14', windows: [14 of 2' x 4']", "windows: 16", ""}, // several in one frame
		{"upper rooms: {size: 30' x 24', windows: 14", "windows: 13", ""},
		{"upper rooms: {size: 30' x 24', windows: 20", "", ""},
	} {
		told := toldOf(t, "many-in-room", "  "+c.room+", work: {paint walls: hired}}\n"+rest, "outside: {around: 130 ft, "+c.outside+"}\n")
		if c.want == "" {
			require.Empty(t, told, "%s, %s", c.room, c.outside)
			continue
		}
		require.Equal(t, []string{c.want}, told, c.room)
	}
}

// What is only counted has the windows of a guess, which are no slip of the file.
func TestWindowsOfCountedRoomsAreNotHeldAgainstTheHouse(t *testing.T) {
	require.Empty(t, toldOf(t, "many-in-room", "  family room: {size: 16' x 12', windows: [12 of 2'8\" x 4'], work: {paint walls: hired}}\n", "quick: {bedrooms: 4}\noutside: {around: 130 ft, windows: 13}\n"))
}
