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

// doubtFramed doubts a wall that is framed where no work closes it: bare studs.
func (r *reader) doubtFramed(p *plan) {
	for _, w := range p.works {
		if p.room.Kind != "inside" || w.item.Name != newWall || w.by != "" || w.quotedAll() || r.putBack(p, "wall surface") {
			continue
		}
		count := "so many sq ft"
		if framed, known := r.worked(w.member, "quantity"); known {
			count = quantity.FormatCount(framed.Mul(two), 0) + " sq ft"
		}
		r.say("not-put-back", w.at, "%s frames a wall, and no work in %s closes it", diag.Quote(w.label), p.room.Label)("add   hang wall board: {by: %s, count: %s}   for its two faces, and under   without   what the old walls keep, such as casing and outside wall insulation; where a quote holds it or it stays bare, write   without: [hang wall board]", w.doer(), count)
	}
}
