package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
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
	attics, levels := r.underRoofs()
	for _, room := range r.deal.Root.In("inside") {
		if x, _ := r.worked(room, "floor_area"); r.lives(room) && !underRoof(room) {
			most = most.Add(x)
		}
	}
	most = most.DivRound(levels, 0)
	enclosed := r.enclosed()
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

// underRoofs are the rooms under the roof that count as living area, and the levels below them.
func (r *reader) underRoofs() (names []string, levels decimal.Decimal) {
	for _, room := range r.deal.Root.In("inside") {
		if r.lives(room) && underRoof(room) {
			names = append(names, room.Label)
		}
	}
	levels, _ = r.worked(r.deal.Root, "house_levels")
	if names != nil && levels.GreaterThan(one) {
		levels = levels.Sub(one)
	}
	return names, levels
}

// lives reports whether a room counts as living area.
func (r *reader) lives(room *model.Member) bool {
	living, _ := r.worked(room, "counts_as_living")
	return living.IsPositive()
}

// enclosed is what the way around the house encloses at most, by a square, the most of all rectangles; 0 where the file does not say it.
func (r *reader) enclosed() decimal.Decimal {
	around, _ := r.worked(r.deal.Root, "house_perimeter")
	return around.Mul(around).DivRound(sixteen, 0)
}
