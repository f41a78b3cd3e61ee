package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// A room hardly has more doors than a few and one for each so many sq ft of its floor: several rooms
// that are entered as one have more floor, and what others open onto has more doors. Common practice,
// no source.
var (
	roomDoors    = crowd{few: decimal.NewFromInt(9), floor: decimal.NewFromInt(30)}
	passageDoors = crowd{few: decimal.NewFromInt(19), floor: decimal.NewFromInt(15)}
)

// A crowd is more than a few, and more than one for each so many sq ft of floor.
type crowd struct{ few, floor decimal.Decimal }

func (c crowd) is(n, floor decimal.Decimal) bool {
	return n.GreaterThan(c.few) && n.Mul(c.floor).GreaterThan(floor)
}

// doubtManyDoors doubts more doors than one room has, unless they are wider than its walls, which is
// told by itself.
func (r *reader) doubtManyDoors(room *model.Member) {
	most := roomDoors
	if r.isPassage(room) {
		most = passageDoors
	}
	if n, at := r.openingsOf(room, "door"); r.isCrowd(room, n, most) {
		r.say("many-in-room", at.Pos, "%s has %s doors, many for one room", room.Label, n)("check it, for a digit too many; it is used as it stands")
	}
}

// isCrowd reports whether there are more of an opening than a room has, and it is not told that they
// are wider than its walls.
func (r *reader) isCrowd(room *model.Member, n decimal.Decimal, most crowd) bool {
	floor, known := r.worked(room, "floor_area")
	told := slices.ContainsFunc(r.diags, func(d diag.Diag) bool { return d.Code == "openings-wide" && d.Pos == room.Pos })
	return known && !told && most.is(n, floor)
}

// openingsOf are how many openings of a sort a place has, with the most that are given at once.
func (r *reader) openingsOf(place *model.Member, kind string) (n decimal.Decimal, at model.Value) {
	for _, o := range place.In("opening") {
		if number := o.Given.Of("number"); o.Given.Of("kind").Choice == kind {
			if n = n.Add(number.Number); number.Number.GreaterThan(at.Number) {
				at = number
			}
		}
	}
	return n, at
}
