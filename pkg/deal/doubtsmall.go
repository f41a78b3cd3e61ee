package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// smallRoom is the floor that a room to live, sleep or cook in rarely is under, in sq ft;
// common practice, no source.
var smallRoom = decimal.NewFromInt(30)

// partWords are in the names of what is no whole room to live, sleep or cook in.
var partWords = []string{"nook", "alcove", "passage", "landing", "bar", "booth", "niche", "bay", "pocket", "kitchenette"}

// doubtSmall doubts a room to live, sleep or cook in with next to no floor, as metres with
// a foot mark have it: 3.45' x 4.1'.
func (r *reader) doubtSmall(room *model.Member) {
	floor, ok := r.worked(room, "floor_area")
	if ok && !floor.LessThan(smallRoom) {
		r.doubtNarrowLiving(room)
		return
	}
	if !r.livedIn(room) || !r.breaks(r.deal.smallFloor(room)) {
		return
	}
	tell := r.say("room-small", r.where(r.roomPaths[room]+"size", r.roomPaths[room]+"walls"), "%s has a floor of %s sq ft, little for such a room", room.Label, quantity.FormatCount(floor, 1))
	if metres := inMetres(room); metres != "" {
		tell("did you mean %s? else check the feet and inches; it is used as it stands", metres)
	} else {
		tell("check its size, for a digit or a unit that has slipped; a closet has   kind: closet")
	}
}

// livedIn reports whether a room is a whole one to live, sleep or cook in.
func (r *reader) livedIn(room *model.Member) bool {
	return slices.Contains([]string{"bedroom", "kitchen", "living"}, r.roomKinds[room]) &&
		!slices.ContainsFunc(strings.Fields(plainKey(room.Label)), func(w string) bool { return slices.Contains(partWords, w) })
}

// inMetres is a room's size with metres for feet where a side is written in decimal feet,
// which no tape shows; "" where none is.
func inMetres(room *model.Member) string {
	floors := rectangles(room)
	if len(floors) != 1 {
		return ""
	}
	long, wide := floors[0].Given.Of("length"), floors[0].Given.Of("width")
	if !strings.Contains(long.Text+wide.Text, ".") || strings.ContainsAny(long.Text+wide.Text, "\"m") {
		return ""
	}
	return diag.Quote(long.Number.String() + " m x " + wide.Number.String() + " m")
}
