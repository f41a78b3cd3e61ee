package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// doubtCeiling doubts a room that is nowhere high enough to live in; a crawl space is not.
func (r *reader) doubtCeiling(room *model.Member) {
	r.doubtHeight(room.Label, highestGiven(room), lowCeilingOf(room, r.roomKinds[room]), ", or say   living area: no   of what stays unfinished")
}

// highestGiven is how high a room is at its highest as the file has it.
func highestGiven(room *model.Member) (high model.Value) {
	for _, m := range append([]*model.Member{room}, room.In("section")...) {
		for _, line := range []string{"room_ceiling", "height"} {
			if v := m.Given.Of(line); v.Number.GreaterThan(high.Number) {
				high = v
			}
		}
	}
	return high
}

// doubtUsualHeight doubts a ceiling of all rooms that not all rooms of a house have.
func (r *reader) doubtUsualHeight() {
	usual := r.deal.Root.Given.Of("usual_ceiling")
	if usual.Number.GreaterThan(highUsual) && usual.Number.LessThanOrEqual(highCeiling) {
		r.say("ceiling-high", usual.Pos, "the house has a ceiling of %s, which is high for all of its rooms", usual.Text)("check it, for feet, inches and metres that have slipped; where one room is so high, write it there as   ceiling: %s   ; it is used as it stands", usual.Text)
		return
	}
	r.doubtHeight("the house", usual, lowCeiling, "")
}

// lowCeilingOf is how high a room of a kind is at least; nobody stands in a closet or a crawl space, nor need
// they in what is no living area.
func lowCeilingOf(room *model.Member, kind string) decimal.Decimal {
	living, said := room.Given.Look("counts_as_living")
	switch {
	case kind == "closet" || strings.Contains(strings.ToLower(room.Label), "crawl"):
		return decimal.Zero
	case belowGrade(room.Label, kind):
		return lowCellar
	case said && !living.Number.IsPositive(): // an unfinished attic, a shed
		return decimal.Zero
	}
	return lowCeiling
}

// doubtHeight doubts a ceiling that houses do not have.
func (r *reader) doubtHeight(where string, high model.Value, low decimal.Decimal, unlived string) {
	if high.Number.GreaterThan(highCeiling) {
		r.say("ceiling-high", high.Pos, "%s has a ceiling of %s, which is high for a house", where, high.Text)("check it, for feet, inches and metres that have slipped; it is used as it stands")
	}
	if high.Number.IsPositive() && high.Number.LessThan(low) {
		r.say("ceiling-low", high.Pos, "%s has a ceiling of %s, under which many cannot stand", where, high.Text)("check it, for feet and inches that have slipped; usual is 7 ft or more%s; it is used as it stands", unlived)
	}
}
