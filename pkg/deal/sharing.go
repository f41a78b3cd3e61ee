package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// rectanglesForWalls is the way out where a walk around the walls says too little.
const rectanglesForWalls = "give the room its rectangles in place of walls, and what they share, e.g.   size: [14' x 11', 4' x 6' sharing 4']"

// sharing refuses a joint longer than the sides that can lie along it, and doubts
// rectangles of one room that share nothing: their walls would be counted as if they
// stood apart.
func (r *reader) sharing(room *model.Member) {
	floors := rectangles(room)
	r.longJoints(room, closetsOf(room))
	if g := r.got[r.roomPaths[room]+"size"]; len(floors) < 2 || g != nil && !g.ok || r.longJoints(room, floors) { // of which is told
		return
	}
	if !slices.ContainsFunc(floors, func(m *model.Member) bool { return m.Given.Of("shared").Number.IsPositive() }) {
		r.say("nothing-shared", floors[1].Pos, "%s has %d rectangles that share nothing, so each counts with walls all around", room.Label, len(floors))("write what they share, e.g.   size: [12' x 13' 6\", 5' x 4' 2\" sharing 5']   , or make two rooms of them")
	}
}

// longJoints refuses a joint that is longer than what can lie along the other rectangles, and reports
// whether there is one.
func (r *reader) longJoints(room *model.Member, floors []*model.Member) bool {
	shared := decimal.Zero
	for i, floor := range floors {
		v := floor.Given.Of("shared")
		most := joints(floors, i)
		if len(floors) == 2 { // one joint, however often it is stated
			most = most.Sub(shared)
		}
		if shared = shared.Add(v.Number); !v.Number.Round(9).GreaterThan(most.Round(9)) {
			continue
		}
		if most.IsPositive() {
			r.say("shared-too-long", v.Pos, "%s shares %s, but at most %s can lie along another rectangle of %s", floor.Label, diag.Quote(v.Text), lengthText(most, v.Text), room.Label)("write how much of the two touches; it is no longer than the shorter of the sides that meet")
			return true
		}
		r.say("shared-too-long", v.Pos, "%s shares %s, but the joint with the other rectangle of %s is stated already", floor.Label, diag.Quote(v.Text), room.Label)("state what two rectangles share once, behind one of them")
		return true
	}
	return false
}

// lengthText is a length as the file writes another: in metres where that is metric.
func lengthText(feet decimal.Decimal, like string) string {
	side, err := quantity.ParseSize(like + " x " + like)
	length, odd := quantity.ParseLength(feet.Round(4).String() + " ft")
	if err != nil || odd != nil || !side.First.Metric {
		return feetText(feet)
	}
	return length.Metres().Round(2).String() + " m"
}

// joints is the longest that a rectangle can lie along the others: for each, the
// shorter of the longest sides of both.
func joints(floors []*model.Member, i int) (sum decimal.Decimal) {
	for j, other := range floors {
		if j != i {
			sum = sum.Add(decimal.Min(longSide(floors[i]), longSide(other)))
		}
	}
	return sum
}

func longSide(floor *model.Member) decimal.Decimal {
	return decimal.Max(floor.Given.Of("length").Number, floor.Given.Of("width").Number)
}
