package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// A bedroom is at least so many ft wide, and hardly over longBedroom long and so many times as long as
// wide; common practice, no source.
var narrowBedroom, longBedroom, bedroomTimes = decimal.NewFromInt(5), decimal.NewFromInt(28), decimal.New(22, -1)

// doubtLongBedroom doubts a bedroom of one rectangle that is as long as a house and far longer than
// wide, as of digits that changed places, and reports whether it did.
func (r *reader) doubtLongBedroom(room *model.Member) bool {
	floors := rectangles(room)
	if r.roomKinds[room] != "bedroom" || len(floors) != 1 || namedALevel(room.Label) || holdsAny(strings.ToLower(room.Label), twoRooms...) {
		return false
	}
	long := longerSide(floors[0])
	if !long.Number.GreaterThan(longBedroom) || !long.Number.GreaterThan(shortSide(floors[0]).Number.Mul(bedroomTimes)) {
		return false
	}
	r.say("room-large", long.Pos, "%s has a side of %s, over %s times its other, which is long for a bedroom", room.Label, feetOf(long), bedroomTimes)("check it, for digits that changed places; it is used as it stands")
	return true
}

// doubtNarrowBedroom doubts a bedroom of one rectangle in which no bed stands, as of a digit that was lost.
func (r *reader) doubtNarrowBedroom(room *model.Member) {
	floors := rectangles(room)
	if r.roomKinds[room] != "bedroom" || len(floors) != 1 {
		return
	}
	if short := shortSide(floors[0]); short.Number.LessThan(narrowBedroom) {
		r.say("room-narrow", short.Pos, "%s is %s wide, and a bedroom has at least %s ft", room.Label, feetOf(short), narrowBedroom)("check the size, for a digit that was lost; a closet goes under closets, and a room that is no bedroom has a kind, e.g.   kind: other")
	}
}
