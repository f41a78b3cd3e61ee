package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// doubtAttic doubts a room under the roof that says nothing of its ceiling, where work goes by its walls or its
// ceiling: it has the flat one of the house, and such rooms mostly slope. A bath may stand in a dormer.
func (r *reader) doubtAttic(room *model.Member) {
	if !slices.Contains(strings.Fields(plainKey(room.Label)), "attic") || r.isPassage(room) || slices.Contains([]string{"bath", "closet"}, r.roomKinds[room]) || highestGiven(room).Key != "" {
		return
	}
	for _, w := range r.chosenWorks() {
		m := w.item.Measure
		if w.place() != room || w.quoted() || w.scope.path != "" && r.good(w.scope.path+"count") != nil || !strings.HasPrefix(m, "walls") && m != "ceiling" {
			continue
		}
		flat, _ := r.worked(r.deal.Root, "usual_ceiling")
		r.say("ceiling-flat", room.Pos, "%s says nothing of its ceiling, so it has a flat one of %s ft, by which %s goes, and rooms under a roof mostly slope", room.Label, quantity.FormatCount(flat, 2), diag.Quote(w.label))("add   ceiling: 4' to 8' both sides   , or that of one slope,   4' to 8'   ; if it is flat, say so too, as   ceiling: 8 ft")
		return
	}
}
