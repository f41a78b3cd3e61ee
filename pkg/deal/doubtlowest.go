package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

// overEnclosed is from how many times what the outside walls enclose on a floor is doubted; for tapes.
var overEnclosed = decimal.New(11, -1)

// doubtLowest doubts work by what lies over the ground where the levels of a house are not alike: one level of the
// finished floor is taken for it.
func (r *reader) doubtLowest() {
	for _, w := range r.chosenWorks() {
		if w.item.Measure != "house ground floor" || w.by != "" || !w.stated().isWhole() {
			continue
		}
		ground, _ := r.worked(r.deal.Root, "house_ground_floor")
		if says, most := r.overGround(ground); says != "" {
			hint := "count what lies over the ground there, as   %s: {by: %s, count: %s}"
			if r.good("house.levels") == nil {
				hint += "   , and say   levels: 2   under   house   if it has two"
			}
			r.say("lowest-floor", w.at, "%s goes by one level of the finished floor, %s, and %s", diag.Quote(w.label), sqFeet(ground), says)(hint, w.label, w.doer(), sqFeet(most))
		}
		return
	}
}

// overGround says why one level of the finished floor is not what lies over the ground, and how much does at
// most; "" where nothing tells.
func (r *reader) overGround(ground decimal.Decimal) (says string, most decimal.Decimal) {
	var attics []string
	for _, room := range r.deal.Root.In("inside") {
		x, _ := r.worked(room, "floor_area")
		switch {
		case !r.lives(room):
		case underRoof(room):
			attics = append(attics, room.Label)
		default:
			most = most.Add(x)
		}
	}
	levels, _ := r.worked(r.deal.Root, "house_levels")
	if attics != nil && levels.GreaterThan(one) {
		levels = levels.Sub(one) // below the roof
	}
	most, enclosed := most.DivRound(levels, 0), r.enclosed()
	if enclosed.IsPositive() {
		most = decimal.Min(most, enclosed)
	}
	switch {
	case attics != nil && most.IsPositive():
		return "that counts what lies under the roof: " + strings.Join(attics, ", "), most
	case enclosed.IsPositive() && ground.GreaterThan(enclosed.Mul(overEnclosed)):
		return "the outside walls enclose " + sqFeet(enclosed) + " at most", most
	}
	return "", most
}
