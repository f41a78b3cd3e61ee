package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// Work by a measure of the outside that an attic or the whole house counts is told where the outside has as much
// of it: not where either is a part, or another building's. The house is invented.
func TestWorkOfTheOutsideThatARoomCountsToo(t *testing.T) {
	const (
		roof  = "outside: {roof: [{size: 26' x 24', pitch: 6/12, overhang: 1'}], around: 100 ft, work: {shingle roof gable: hired}%s}\n" // eaves of 56 ft
		attic = "  attic: {size: 24' x 26', ceiling: 0.5' to 7' both sides, living area: no, work: {attic blown: hired, %s}}\n"
		vents = "rafter vents: {by: hired, count: 52 ft}"
		den   = "  den: {size: 12' x 10', work: {paint walls: hired}}\n"
		fence = "outside: {fence: 120 ft, work: {%s}}\n"
	)
	for _, c := range []struct {
		rooms, keys string
		told        int
	}{
		{fmt.Sprintf(attic, vents), fmt.Sprintf(roof, ""), 1},
		{fmt.Sprintf(attic, vents), fmt.Sprintf(roof, ", without: [rafter vents]"), 0},
		{fmt.Sprintf(attic, "fan duct: hired"), fmt.Sprintf(roof, ""), 0},
		{fmt.Sprintf(attic, "rafter vents: {by: hired, count: 20 ft}"), fmt.Sprintf(roof, ""), 0},
		{fmt.Sprintf(attic, "rafter vents: {quote: $0, from: the roofer, count: 52 ft}"), fmt.Sprintf(roof, ""), 0},
		{fmt.Sprintf(attic, vents), fmt.Sprintf("outside: {roof: [{size: 26' x 24', pitch: 6/12, overhang: 1'}], around: 100 ft, work: {%s}}\n", "rafter vents: hired"), 1},
		{fmt.Sprintf(attic, vents), fmt.Sprintf("outside: {roof: [{size: 26' x 24', pitch: 6/12, overhang: 1'}], around: 100 ft, work: {%s}}\n", "rafter vents: {by: hired, part: 50%}"), 0},
		{fmt.Sprintf(attic, vents), "", 0},
		{den, fmt.Sprintf(fence, "wood fence: hired") + "whole house: {work: {wood fence: {by: hired, count: 120 ft}}}\n", 1},
		{den, fmt.Sprintf(fence, "wood fence: hired") + "whole house: {work: {wood fence: {by: hired, count: 40 ft}}}\n", 0},
		{"  detached garage: {size: 20' x 22', work: {gutters: {by: hired, count: 40 ft}}}\n", "outside: {roof: [{size: 26' x 24', pitch: 6/12}], around: 100 ft, gutters: 52 ft, work: {gutters: hired}}\n", 0},
	} {
		require.Len(t, toldOf(t, "done-twice", c.rooms, c.keys), c.told, "%s%s", c.rooms, c.keys)
	}
}
