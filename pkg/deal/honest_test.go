package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Honest plans that look like slips at first: none of the codes is told.
func TestHonestPlansThatLookLikeSlips(t *testing.T) {
	const cabinets = "  kitchen: {kind: kitchen, size: 14' x 12', fixed: {base cabinets: 12' x 2', wall cabinets: 10' x 1', sink: 1}, work: {kitchen cabinets: {by: own hands, allowance: $1200, holds more: yes%s}, paint cabinets: own hands}}\n"
	const roof = "outside: {roof: [{size: 48' x 28', pitch: 5/12}, {size: 14' x 12', pitch: 1/12}], work: {shingle roof gable: {by: hired, part: 90%}, flat roof: {by: hired, part: 10%}}}\n"
	for _, c := range []struct {
		code, rooms, more string
		want              int
	}{
		{"door-wide", "  garage: {kind: other, size: 22' x 20', doors: [9' x 7', 16' x 7', 7' x 6'8\"], work: {paint walls: hired}}\n", "", 0},
		{"done-twice", fmt.Sprintf(cabinets, ", note: used"), "", 0},
		{"done-twice", fmt.Sprintf(cabinets, ""), "", 1},
		{"roof-flat", "  den: {size: 12' x 13', work: {paint walls: hired}}\n", roof, 0},
	} {
		require.Len(t, toldOf(t, c.code, c.rooms, c.more), c.want, c.rooms+c.more)
	}
	_, found := deal.Read("a.yaml", []byte(walked+"rooms: {den: {size: 12' x 13', doors: 6'8\" x 2'4\", work: {paint walls: hired}}}\n"))
	require.Contains(t, codesIn(found), "door-wide")
}
