package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A count is about a measure of the outside from and to these shares of it; common practice, no source.
var leastAlike, mostAlike = decimal.New(6, -1), decimal.New(14, -1)

// ownRoof are words for rooms that may have a roof, walls or gutters beside those under   outside.
var ownRoof = []string{"garage", "shed", "barn", "carport", "porch", "workshop", "studio", "cottage", "outbuilding", "annex", "addition", "pool", "guest"}

// doubtOutsideToo doubts work that goes by ft or sq ft of the outside and is counted in a room or on the whole
// house, while the outside has about as much of it: vents at the eaves with the attic and with the roof.
func (r *reader) doubtOutsideToo() {
	outside := map[*pricebook.Item]*work{} // that is done to all of its measure
	for _, w := range r.chosenWorks() {
		m := pricebook.MeasureNamed(w.item.Measure)
		if part, known := r.partOf(w); m != nil && m.Of == "outside" && m.Unit != "each" && w.member.Parent.Parent.Kind == "outside" && known && part.Equal(one) {
			outside[w.item] = w
		}
	}
	for _, w := range r.chosenWorks() {
		place, out := w.member.Parent.Parent, outside[w.item]
		if out == nil || place.Kind == "outside" || w.scope.path == "" || r.good(w.scope.path+"count") == nil || w.free() || holdsAny(strings.ToLower(place.Label), ownRoof...) {
			continue
		}
		count := w.member.Given.Of("measure").Number
		all, known := r.worked(out.member, "quantity")
		if !known || !count.GreaterThan(all.Mul(leastAlike)) || !count.LessThan(all.Mul(mostAlike)) {
			continue
		}
		there := "outside has it too, " + quantity.FormatCount(all, 0) + " " + string(out.item.Unit)
		leave := "leave it out in one of them"
		if out.by != "" {
			there += ": " + out.by + " brings it along"
			leave = "leave it out here, or say there   without: [" + w.item.Name + "]  "
		}
		r.say("done-twice", w.at, "%s is counted in %s, and %s", diag.Quote(w.label), place.Label, there)("%s; if it is of another roof, wall or yard, add that to the sizes outside, and leave it out here", leave)
	}
}
