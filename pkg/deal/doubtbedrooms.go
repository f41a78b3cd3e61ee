package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// A room to live, sleep or cook in is at least so many ft wide, and a bedroom hardly over longBedroom long and
// so many times as long as wide; common practice, no source.
var narrowLiving, longBedroom, bedroomTimes = decimal.NewFromInt(5), decimal.NewFromInt(28), decimal.New(22, -1)

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

// livingWords are what the rooms to live, sleep or cook in are called, by their kind. Never written to.
var livingWords = map[string]string{"bedroom": "bedroom", "kitchen": "kitchen", "living": "room to live in"}

// doubtNarrowLiving doubts a room to live, sleep or cook in of which the largest rectangle is so narrow that no bed
// or table stands in it, as of a digit that was lost; a bay or a nook may be.
func (r *reader) doubtNarrowLiving(room *model.Member) {
	if !r.livedIn(room) {
		return
	}
	var long, short model.Value
	for _, floor := range rectangles(room) {
		if x, y := longerSide(floor), shortSide(floor); x.Number.Mul(y.Number).GreaterThan(long.Number.Mul(short.Number)) {
			long, short = x, y
		}
	}
	if what := livingWords[r.roomKinds[room]]; short.Number.IsPositive() && short.Number.LessThan(narrowLiving) {
		r.say("room-narrow", short.Pos, "%s is %s wide, and a %s has at least %s ft", room.Label, feetOf(short), what, narrowLiving)("check the size, for a digit that was lost; a closet goes under closets, and what is no %s has a kind, e.g.   kind: other", what)
	}
}
