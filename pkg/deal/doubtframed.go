package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// newWall is the item that frames a wall; a test holds that the price book has it.
const newWall = "interior wall"

// alongWall are measures along the walls of a room. Never written to.
var alongWall = []string{"perimeter", "base run", "crown run"}

// closers close a wall beside what makes one of closedBy; a test holds that the price book has them. Never
// written to.
var (
	closers  = []string{"wall backer board", "tile wall"}
	closedBy = []string{"wall surface", "tub walls", "shower walls"}
)

// framedIn is how much a count of work on walls or along them may have in it of walls that the option
// frames in the room: their two faces, which the sizes of the room may not have.
func (r *reader) framedIn(w *work) decimal.Decimal {
	room := w.member.Parent.Parent
	var faces decimal.Decimal
	for _, x := range r.chosenWorks() {
		if x.item.Name == newWall && x.member.Parent == w.member.Parent {
			framed, _ := r.worked(x.member, "quantity")
			faces = faces.Add(framed.Mul(two))
		}
	}
	high, _ := r.worked(room, "room_ceiling")
	switch {
	case pricebook.SameSurface(w.item.Measure, "walls"):
		return faces
	case slices.Contains(alongWall, w.item.Measure) && high.IsPositive():
		return faces.Div(high)
	}
	return decimal.Zero
}

// closes reports whether an item closes a wall that is framed.
func closes(it *pricebook.Item) bool {
	return it != nil && (slices.Contains(closers, it.Name) || slices.Contains(closedBy, it.Thing()))
}

// closed reports whether work of an option closes its walls, be it within a quote, or a name left out would.
func (r *reader) closed(p *plan) bool {
	byWork := func(w *work) bool {
		return closes(w.item) || slices.ContainsFunc(w.holds, func(h *work) bool { return closes(h.item) })
	}
	left := func(s span) bool { return closes(r.itemNamed(plainKey(s.text))) }
	return r.putBack(p, "wall surface") || slices.ContainsFunc(p.works, byWork) || slices.ContainsFunc(p.without, left)
}

// framed is the work of an option that frames a wall.
func framed(p *plan) (out []*work) {
	for _, w := range p.works {
		if p.room.Kind == "inside" && w.item.Name == newWall && w.by == "" {
			out = append(out, w)
		}
	}
	return out
}

// framedFor reports whether an option frames a wall that an item would close, which it is without.
func framedFor(p *plan, it *pricebook.Item) bool {
	return closes(it) && !p.has(it.Name) && len(framed(p)) > 0
}

// doubtFramed doubts a wall that is framed where no work closes it: bare studs.
func (r *reader) doubtFramed(p *plan) {
	if r.closed(p) {
		return
	}
	for _, w := range framed(p) {
		if w.quotedAll() && r.holdsMore(w) {
			continue
		}
		count := "so many sq ft"
		if faces, known := r.worked(w.member, "quantity"); known {
			count = quantity.FormatCount(faces.Mul(two), 0) + " sq ft"
		}
		r.say("not-put-back", w.at, "%s frames a wall, and no work in %s closes it", diag.Quote(w.label), p.room.Label)("add   hang wall board: {by: %s, count: %s}   for its two faces, and under   without   what the old walls keep, such as casing and outside wall insulation; where a quote holds it or it stays bare, write   without: [hang wall board]", w.doer(), count)
	}
}
