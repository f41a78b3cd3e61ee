package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// measuredLeast is the part of the living area that the rooms of a file must come to, for work that
// goes by them to be that of the whole house: halls and closets may be left out (common practice,
// no source).
var measuredLeast = decimal.New(6, -1)

// doubtPartMeasured doubts work on the whole house that goes by the floors of the rooms listed, where
// those are far less than the house is said to have: rooms that stay as they are were left out.
func (r *reader) doubtPartMeasured() {
	area := r.entry("house.").Sold().House.Area
	if !area.Known {
		return
	}
	all := decimal.NewFromFloat(area.Value)
	for p, w := range r.eachWork() {
		m := pricebook.MeasureNamed(w.item.Measure)
		if !p.taken || w.by != "" || p.room.Kind != "whole_house" || !byHouseFloor(w.item) || w.member.Given.Of("measure").Refers == "" || w.free() {
			continue
		}
		listed, known := r.worked(r.deal.Root, m.Line)
		if !known || !listed.IsPositive() || !listed.LessThan(all.Mul(measuredLeast)) {
			continue
		}
		r.say("house-part-measured", w.at, "%s goes by the rooms that the file lists, %s, and the house has %s", diag.Quote(w.label), sqFeet(listed), sqFeet(all))("list every room, also those that stay as they are, or say how much it is, e.g.   %s: {by: %s, count: %s}", w.item.Name, w.doneBy(), sqFeet(all))
		return
	}
}

// doneBy are the words for who does work: own hands or hired.
func (w *work) doneBy() string {
	if w.byOwnHands() {
		return "own hands"
	}
	return "hired"
}

// free reports whether work comes to nothing however much it is: a quote of nothing brings all of it,
// and it leaves no debris.
func (w *work) free() bool {
	v, quoted := w.member.Given.Look("quote")
	return quoted && v.Number.IsZero() && w.quotedAll() && w.item.Debris.IsZero()
}
