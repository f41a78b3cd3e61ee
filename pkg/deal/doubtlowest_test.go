package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// What lies over the ground is one level of the finished floor, 600 sq ft here; not where a room lies under the roof,
// nor where the walls outside enclose less: 88 ft around is 484 sq ft by a square, and 98 ft 600.
func TestWhatLiesOverTheGroundIsDoubtedWhereLevelsDiffer(t *testing.T) {
	const attic = "  attic room: {size: 18' x 12', ceiling: 4' to 8' both sides}\n"
	for _, c := range []struct {
		attic, house, around, work string
		told                       int
	}{
		{"", "", "98 ft", "crawl vapour barrier: hired", 0},
		{"", "", "98 ft", "crawl floor batts: hired", 0},
		{"", "", "88 ft", "crawl vapour barrier: hired", 1},
		{"", "", "88 ft", "crawl vapour barrier: hired, crawl floor batts: hired", 1}, // once
		{"", "levels: 2", "88 ft", "crawl vapour barrier: hired", 0},
		{attic, "", "98 ft", "crawl vapour barrier: hired", 1},
		{attic, "levels: 2", "98 ft", "crawl vapour barrier: hired", 1},
		{attic, "levels: 2", "98 ft", "crawl vapour barrier: {by: hired, count: 600 sq ft}", 0},
		{attic, "", "98 ft", "final cleaning: hired", 0},
	} {
		house := fmt.Sprintf("house: {year built: 1990, %s}\noutside: {around: %s}\nwhole house: {work: {%s}}\n", c.house, c.around, c.work)
		require.Len(t, toldOf(t, "lowest-floor", "  den: {size: 30' x 20'}\n"+c.attic, house), c.told, "%+v", c)
	}
}
