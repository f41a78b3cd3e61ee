package deal

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// How often its measure a count may be: that of a room or the outside, with what a tape
// slips by, and that of the house, of which a deal may hold a few rooms only; common
// practice, no source.
var (
	roomTimes  = decimal.New(105, -2)
	houseTimes = decimal.NewFromInt(3)
)

// doubtCounts looks for work of which more is stated than there is, or a part of a piece. More
// pieces than there are are let be: a room often gets more of them than it had.
func (r *reader) doubtCounts() {
	for _, w := range r.chosenWorks() {
		g := r.good(w.scope.path + "count")
		m := pricebook.MeasureNamed(w.item.Measure)
		if w.scope.path != "" && g != nil && w.item.Unit == "each" && !w.member.Given.Of("measure").Number.IsInteger() {
			r.say("count-in-parts", g.at(), "%s: a count of %s, and it goes by the piece", w.label, g.node.text)("write how many there are, a whole number; it is used as it stands")
		}
		if w.scope.path == "" || g == nil || m == nil || !slices.Contains([]quantity.Unit{"sq ft", "ft"}, m.Unit) {
			continue
		}
		room := w.member.Parent.Parent
		has, ok := r.worked(room, m.Line)
		count := w.member.Given.Of("measure").Number
		where, times := room.Label, roomTimes
		layers := r.layersOf(room, w.item)
		switch {
		case m.Of == "house":
			where, times = "the house", houseTimes
		case layers > 1:
			where, times = fmt.Sprintf("%s, of which there are %d layers,", room.Label, layers), roomTimes.Add(decimal.NewFromInt(int64(layers-1)))
		}
		if !ok || !has.IsPositive() || !count.GreaterThan(times.Mul(has)) {
			continue
		}
		r.say("count-large", g.at(), "%s: a count of %s, but %s of %s is %s %s", w.label, g.node.text, m.Name, where, quantity.FormatCount(has, 1), m.Unit)("check it; without a count the work takes all there is, and waste comes on top by itself; it is used as it stands")
	}
}
