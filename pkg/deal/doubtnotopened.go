package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// plasterEnds is the year before which walls are mostly plaster on lath; common practice, no source.
var plasterEnds = decimal.NewFromInt(1950)

// onOpenStuds is the item that goes onto open studs; a test holds that the price book has it.
const onOpenStuds = "hang wall board"

// opensWalls reports whether an item takes what is on walls off, to the studs or to what lies behind.
func opensWalls(it *pricebook.Item) bool {
	return it != nil && (slices.Contains([]string{"wall surface", "wet walls"}, it.TakesOut) || it.Name == newWall)
}

// boarded is the work of an option that hangs board on all walls of a room that has some, or nil.
func (r *reader) boarded(p *plan) *work {
	bare := p.room.Kind != "inside" || apart(p.room.Label, r.roomKinds[p.room]) != "" || holdsAny(plainKey(p.room.Label), "attic", "loft", "addition")
	i := slices.IndexFunc(p.works, func(w *work) bool { return w.by == "" && w.item.Name == onOpenStuds && r.allOf(w) })
	if bare || i < 0 {
		return nil
	}
	return p.works[i]
}

// doubtNotOpened doubts board that goes onto open studs all over a room whose walls no work opens.
func (r *reader) doubtNotOpened(p *plan) {
	w := r.boarded(p)
	if w == nil || w.quotedAll() && r.holdsMore(w) || r.opened(p) {
		return
	}
	off := "strip wall board"
	if built := r.good("house.year built"); built != nil && built.number.LessThan(plasterEnds) {
		off = "strip wall plaster"
	}
	r.say("not-opened", w.at, "%s goes onto open studs, and no work takes the old walls of %s off", diag.Quote(w.label), p.room.Label)("add   %s: %s   ; over walls that stay it is   overlay wall board   ; where a quote holds it or they are open already, write   without: [%s]", off, w.doer(), off)
}

// opened reports whether work of an option or of the house opens walls, be it within a quote, or a line of
// the renovation tells of it, or a name left out would.
func (r *reader) opened(p *plan) bool {
	byWork := func(w *work) bool {
		return opensWalls(w.item) || slices.ContainsFunc(w.holds, func(h *work) bool { return opensWalls(h.item) })
	}
	left := func(s span) bool { return opensWalls(r.itemNamed(plainKey(s.text))) }
	for _, other := range r.plans {
		if (other == p || other.room.Kind == "whole_house" && other.taken) && slices.ContainsFunc(other.works, byWork) {
			return true
		}
	}
	for _, m := range r.deal.Root.In("cost") {
		if tellsOfOpening().MatchString(m.Label) {
			return true
		}
	}
	return slices.ContainsFunc(p.without, left)
}

// tellsOfOpening matches what lines of the renovation call it.
var tellsOfOpening = pattern(`(?i)\b(demo|demolition|demolish(ing)?|gut(ting|ted)?|strip(ping)?|tear(ing)?|plaster|studs)\b`)

// openedFor reports whether an option hangs board in a room whose walls an item would open, which it is without.
func (r *reader) openedFor(p *plan, it *pricebook.Item) bool {
	return opensWalls(it) && !p.has(it.Name) && r.boarded(p) != nil
}
