package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// A kitchen has at least so many ft of cabinets of a sort where it has any, and a third as much of
// base cabinets as of wall cabinets; another room hardly has under a foot of either. Common practice,
// no source.
var (
	leastBase, leastWall = decimal.NewFromInt(3), decimal.New(15, -1)
	leastElsewhere       = one
	baseOfWall           = decimal.NewFromInt(3)
)

// doubtCabinets doubts runs of cabinets too short for any, where inches stand for feet or a point has
// slipped: cabinets, counter and backsplash go by them.
func (r *reader) doubtCabinets(room *model.Member) {
	base, first := cabinetsOf(room, "base cabinet")
	wall, firstWall := cabinetsOf(room, "wall cabinet")
	kitchen := r.roomKinds[room] == "kitchen"
	least, lowWall := leastElsewhere, leastElsewhere
	if kitchen {
		least, lowWall = leastBase, leastWall
	}
	little := func(f *model.Member, run decimal.Decimal) string {
		return fmt.Sprintf("%s: %s is all that %s has of them, %s", f.Label, f.Given.Of("fitting_length").Text, room.Label, feetText(run))
	}
	const hint = "check it, for an inch mark (\") in place of a foot mark (') or a point that has slipped; it is used as it stands"
	switch {
	case first == nil:
	case base.LessThan(least):
		r.say("cabinets-short", first.Given.Of("fitting_length").Pos, "%s", little(first, base))(hint)
	case kitchen && base.Mul(baseOfWall).LessThan(wall):
		r.say("cabinets-short", first.Given.Of("fitting_length").Pos, "%s, and its wall cabinets are %s long", little(first, base), feetText(wall))(hint)
	}
	if firstWall != nil && wall.LessThan(lowWall) {
		r.say("cabinets-short", firstWall.Given.Of("fitting_length").Pos, "%s", little(firstWall, wall))(hint)
	}
}

// likeCabinets is what stands with cabinets, by a word of its name, and how the file says what it is.
var likeCabinets = []struct{ word, hint string }{
	{"peninsula", "if it has cabinets and a counter, it counts as an island:   %s: {size: %s, kind: island}"},
	{"breakfast bar", "if it has cabinets and a counter, it counts as an island:   %s: {size: %s, kind: island}"},
	{"counter", "a counter lies on base cabinets, whose floor is left out already: leave it out, or write the cabinets under it, as   base cabinets: %[2]s"},
	{"worktop", "a worktop lies on base cabinets, whose floor is left out already: leave it out, or write the cabinets under it, as   base cabinets: %[2]s"},
	{"pantry", "if it is a cabinet, say so:   %s: {size: %s, kind: base cabinet}"},
}

// doubtLikeCabinets doubts what stands like cabinets and is taken for none, where work goes by cabinets,
// and reports whether it told of it.
func (r *reader) doubtLikeCabinets(room, f *model.Member) bool {
	byCabinets := func(w *work) bool {
		return w.member.Parent.Parent == room && (strings.Contains(w.item.Measure, "cabinet") || w.item.Measure == "counter")
	}
	if _, said := f.Given.Look("sort"); said || !slices.ContainsFunc(r.chosenWorks(), byCabinets) {
		return false
	}
	for _, c := range likeCabinets {
		if strings.Contains(plainKey(f.Label), c.word) {
			size := fmt.Sprintf("%s x %s", f.Given.Of("fitting_length").Text, f.Given.Of("fitting_depth").Text)
			r.say("fixed-near", f.Pos, "%s is none of the fixed parts that are known, so no cabinets and no counter are priced for it", diag.Quote(f.Label))(c.hint, f.Label, size)
			return true
		}
	}
	return false
}

// cabinetsOf is how long all cabinets of a sort in a room are together, and the first of them.
func cabinetsOf(room *model.Member, sort string) (run decimal.Decimal, first *model.Member) {
	for _, f := range room.In("fitting") {
		long := f.Given.Of("fitting_length").Number
		if f.Given.Of("sort").Choice != sort || !long.IsPositive() {
			continue
		}
		if first == nil {
			first = f
		}
		times := one
		if n, said := f.Given.Look("fitted"); said {
			times = n.Number
		}
		run = run.Add(long.Mul(times))
	}
	return run, first
}

// Wall cabinets of a kitchen are hardly so many times as long as base cabinets of a long run: they go over a range,
// a fridge and a dishwasher too; common practice, no source.
var longRun, wallOfBase = decimal.NewFromInt(10), decimal.New(22, -1)

// What base cabinets of a kitchen take of its walls at most, or of many of them where they are as many
// times as long as its wall cabinets; and how many ft an island is from the walls at its ends together;
// common practice, no source.
var (
	mostOfWalls, manyOfWalls = decimal.New(75, -2), decimal.New(66, -2)
	pastIsland               = two
)

// doubtRoomForCabinets doubts base cabinets of a kitchen for which its walls have no room beside doors and
// a range, wall cabinets far longer than a long run of them, and an island that is as long as the room.
func (r *reader) doubtRoomForCabinets(room *model.Member) {
	if r.roomKinds[room] != "kitchen" {
		return
	}
	const hint = "check it, for a digit too many or digits that changed places; it is used as it stands"
	walls, known := r.worked(room, "perimeter")
	base, first := cabinetsOf(room, "base cabinet")
	above, upper := cabinetsOf(room, "wall cabinet")
	apart := above.IsPositive() && base.GreaterThan(above.Mul(baseOfWall)) && base.GreaterThan(walls.Mul(manyOfWalls))
	if first != nil && known && walls.IsPositive() && base.LessThanOrEqual(walls) && (apart || base.GreaterThan(walls.Mul(mostOfWalls))) {
		r.say("fixed-long", first.Given.Of("fitting_length").Pos, "%s: all base cabinets are %s long, and all walls of %s, with its doors, %s ft", first.Label, feetText(base), room.Label, short(walls))(hint)
	}
	if first != nil && base.GreaterThan(longRun) && above.GreaterThan(base.Mul(wallOfBase)) && above.LessThanOrEqual(decimal.Min(walls, base.Mul(baseOfWall))) {
		r.say("fixed-long", upper.Given.Of("fitting_length").Pos, "%s: all wall cabinets are %s long, and all base cabinets of %s %s", upper.Label, feetText(above), room.Label, feetText(base))(hint)
	}
	across := r.come(r.deal.longestOf(room))
	for _, f := range room.In("fitting") {
		long := f.Given.Of("fitting_length")
		if f.Given.Of("sort").Choice == "island" && across.IsPositive() && long.Number.GreaterThan(across.Sub(pastIsland)) && long.Number.LessThanOrEqual(walls) {
			r.say("fixed-long", long.Pos, "%s is %s long, and %s %s ft at most", f.Label, feetOf(long), room.Label, short(across))(hint)
		}
	}
}
