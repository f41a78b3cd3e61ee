package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
)

// Worked by hand: around 12' x 4' go 16 drops of 24 in, each 8 ft and 4 in of trim, so 9 ft with either
// repeat. Of 27 ft, a roll begun 9 in later gives two drops that end at 18'1", and a third would end at
// 27'1"; one begun 1 ft later would end at 27'4".
func TestHalfDropPaperNearTheEndOfARoll(t *testing.T) {
	for _, x := range []struct{ paper, rolls string }{
		{"repeat: 18 in, half drop: yes, roll: 24 in x 27 ft", "7"}, // 8 of 3 a roll, 8 of 2
		{"repeat: 18 in, half drop: yes, roll: 24 in x 28 ft", "6"},
		{"repeat: 18 in, roll: 24 in x 27 ft", "6"},
		{"repeat: 24 in, half drop: yes, roll: 24 in x 27 ft", "8"}, // one roll has two drops of one sort and one of the other
		{"repeat: 24 in, half drop: yes, roll: 24 in x 28 ft", "6"},
		{"repeat: 24 in, half drop: yes, roll: 24 in x 36 ft", "4"}, // two of each sort out of every roll
		{"repeat: 18 in, half drop: yes, roll: 24 in x 9 ft", ""},
	} {
		d, found := booked("products: {vinyl wallpaper: {price: $58, "+x.paper+"}}", "hang wallpaper: hired")
		if x.rolls == "" {
			require.True(t, found.HasErrors(), x.paper)
			require.Equal(t, "roll-too-short", found.Errors()[0].Code)
			continue
		}
		require.False(t, found.HasErrors(), "%s: %v", x.paper, found)
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		rolls := ""
		for _, c := range d.Model.Cells {
			if c.Line.ID() == "drop.rolls" {
				rolls = v.Of(c).String()
			}
		}
		require.Equal(t, x.rolls, rolls, x.paper)
	}
}
