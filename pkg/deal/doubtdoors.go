package deal

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// fewDoors is how many doors a passage has at least that are doubted: a single one may well be
// its own.
var fewDoors = decimal.NewFromInt(2)

// passageWords are in the names of passages that are no hall by their kind.
var passageWords = []string{"landing", "corridor", "passage"}

// doubtSharedDoors doubts doors of passages, less those of their closets, that are about as many as
// the other rooms are, where both get the same work on doors: a door between two rooms is
// named in one of them. A passage that says its doorways has its doors told apart.
func (r *reader) doubtSharedDoors() {
	works := r.doorWorks()
	var passages []*model.Member
	var all decimal.Decimal
	for room := range works {
		if own := r.ownDoors(room); r.isPassage(room) && own.GreaterThanOrEqual(fewDoors) {
			passages, all = append(passages, room), all.Add(own)
		}
	}
	for _, room := range r.deal.Root.In("inside") {
		if !slices.Contains(passages, room) {
			continue
		}
		rooms, doors, both := r.roomsWithDoors(room, works)
		if both == "" || rooms.LessThan(fewDoors) || all.LessThan(rooms.Sub(one)) || all.GreaterThan(doors.Add(one)) {
			continue
		}
		n := quantity.FormatCount(r.ownDoors(room), 0)
		at := r.good(r.roomPaths[room] + "doors").at()
		r.say("doors-twice", at, "%s has %s doors, about as many as the rooms that doors lead to, which have %s of their own: %s is done to both", room.Label, n, quantity.FormatCount(doors, 0), both)("a door between two rooms is one: leave it under doors in the room that it closes off, and write it in %s as   doorways: %s   ; if these are other doors, add   doorways: 0", room.Label, n)
	}
}

// isPassage reports whether a room is one that others open onto.
func (r *reader) isPassage(room *model.Member) bool {
	return r.roomKinds[room] == "hall" || r.roomKinds[room] == "other" && slices.ContainsFunc(passageWords, func(w string) bool { return strings.Contains(plainKey(room.Label), w) })
}

// ownDoors are the doors that a room names, less one for each of its closets; none where it tells
// its doorways apart, or where the room is only counted and nobody named them.
func (r *reader) ownDoors(room *model.Member) decimal.Decimal {
	path := r.roomPaths[room]
	doors, known := r.worked(room, "doors")
	closets, _ := r.worked(room, "closets")
	if named := r.good(path + "doors"); !known || named == nil || named.at().File == pricebook.QuickFile || r.good(path+"doorways") != nil {
		return decimal.Zero
	}
	return doors.Sub(closets)
}

// doorWorks are the items by doors that each room gets, by itself.
func (r *reader) doorWorks() map[*model.Member][]string {
	out := map[*model.Member][]string{}
	for _, w := range r.chosenWorks() {
		room := w.member.Parent.Parent
		if m := pricebook.MeasureNamed(w.item.Measure); m != nil && m.Line == "doors" && r.good(w.scope.path+"count") == nil && !slices.Contains(out[room], w.item.Name) {
			out[room] = append(out[room], w.item.Name)
		}
	}
	return out
}

// roomsWithDoors are how many rooms, no passages, have doors and get some of the same work on them
// as a passage, their doors, and the first such work.
func (r *reader) roomsWithDoors(passage *model.Member, works map[*model.Member][]string) (rooms, doors decimal.Decimal, both string) {
	for _, room := range r.deal.Root.In("inside") {
		i := slices.IndexFunc(works[passage], func(name string) bool { return slices.Contains(works[room], name) })
		if n, known := r.worked(room, "doors"); known && n.IsPositive() && i >= 0 && !r.isPassage(room) {
			rooms, doors, both = rooms.Add(one), doors.Add(n), cmp.Or(both, works[passage][i])
		}
	}
	return rooms, doors, both
}
