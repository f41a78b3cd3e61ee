package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// steepCeiling is in ft for each foot across how fast a ceiling falls at most: one of 60 degrees is under
// it; common practice, no source.
var steepCeiling = decimal.New(175, -2)

// doubtSteepCeiling doubts a sloped ceiling that is steeper than the roofs of houses over all parts of a
// room: over a closet or a bay it counts as falling all the way.
func (r *reader) doubtSteepCeiling(room *model.Member) {
	var least decimal.Decimal
	var high model.Value
	for i, part := range room.In("section") {
		slope, _ := r.worked(part, "ceiling_slope")
		if i == 0 || slope.LessThan(least) {
			least, high = slope, part.Given.Of("height")
		}
	}
	if least.GreaterThan(steepCeiling) && !high.Number.GreaterThan(highCeiling) {
		r.say("ceiling-high", high.Pos, "%s has a ceiling that falls %s ft for each foot across", room.Label, quantity.FormatCount(least, 1))("check how high it is, and how wide the room; it is used as it stands")
	}
}
