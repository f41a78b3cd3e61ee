package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// manyTimes is how often a room's measure a count may be; common practice, no source.
var manyTimes = decimal.NewFromInt(3)

// doubtCounts looks for work of which more is stated than the room can have. What is
// measured by the piece is let be: a room often gets more of it than it had.
func (r *reader) doubtCounts() {
	for _, w := range r.chosenWorks() {
		g := r.good(w.scope.path + "count")
		m := pricebook.MeasureNamed(w.item.Measure)
		if w.scope.path == "" || g == nil || m == nil || !slices.Contains([]quantity.Unit{"sq ft", "ft"}, m.Unit) {
			continue
		}
		room := w.member.Parent.Parent
		has, ok := r.worked(room, m.Line)
		count := w.member.Given.Of("measure").Number
		if !ok || !has.IsPositive() || !count.GreaterThan(manyTimes.Mul(has)) {
			continue
		}
		where := room.Label
		if m.Of == "house" {
			where = "the house"
		}
		r.say("count-large", g.at(), "%s: a count of %s, but %s of %s is %s %s", w.label, g.node.text, m.Name, where, quantity.FormatCount(has, 1), m.Unit)("check it; without a count the work takes all there is; it is used as it stands")
	}
}
