package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// Cabinets along walls and those of islands are measured apart.
const alongWalls, ofIslands = "cabinet run", "island run"

// doubtIslands doubts work on the cabinets of a room, other than new ones, that goes by those along its
// walls while the room has an island: paint, doors, pulls. New cabinets bring those of an island along.
func (r *reader) doubtIslands() {
	for _, p := range r.chosenPlans() {
		island, known := r.worked(p.room, pricebook.MeasureNamed(ofIslands).Line)
		if !known || !island.IsPositive() || slices.ContainsFunc(p.works, r.hasIslands) {
			continue
		}
		i := slices.IndexFunc(p.works, func(w *work) bool {
			return w.by == "" && w.item.Measure == alongWalls && w.item.TakesOut == "" && !w.quoted() &&
				r.good(w.scope.path+"count") == nil && r.good(w.scope.path+"part") == nil
		})
		walls, known := r.worked(p.room, pricebook.MeasureNamed(alongWalls).Line)
		if i < 0 || !known {
			continue
		}
		feet := func(x decimal.Decimal) string { return quantity.FormatCount(x, 2) + " ft" }
		w := p.works[i]
		r.say("island-uncounted", w.at, "%s goes by the base cabinets along the walls of %s, %s: its island, %s, is not in it", diag.Quote(w.label), p.room.Label, feet(walls), feet(island))("if the cabinets of the island are done too, write   count: %s   ; if not, or if it has none,   count: %s", feet(walls.Add(island)), feet(walls))
	}
}

// hasIslands reports whether work is on the cabinets of islands, or brings such work along.
func (r *reader) hasIslands(w *work) bool {
	return w.item.Measure == ofIslands || slices.ContainsFunc(w.item.Brings, func(c pricebook.Companion) bool {
		it := r.prices().Item(c.Item)
		return it != nil && it.Measure == ofIslands
	})
}

// islandIn is how much a count of work along cabinets may have in it of the room's islands, on which
// no work of its option is.
func (r *reader) islandIn(w *work) decimal.Decimal {
	if w.item.Measure != alongWalls || r.islandBeside(w) != nil {
		return decimal.Zero
	}
	island, _ := r.worked(w.member.Parent.Parent, pricebook.MeasureNamed(ofIslands).Line)
	return island
}

// islandBeside is the work on islands in the option of other work, or nil.
func (r *reader) islandBeside(w *work) *work {
	for _, x := range r.chosenWorks() {
		if x.item.Measure == ofIslands && x.member.Parent == w.member.Parent {
			return x
		}
	}
	return nil
}
