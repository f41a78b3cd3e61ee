package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// How often its measure a count may be: that of a room or the outside, with what a tape
// slips by, and that of the house, of which a deal may hold a few rooms only; common
// practice, no source.
var (
	roomTimes  = decimal.New(105, -2)
	houseTimes = decimal.NewFromInt(3)
)

// grown are measures by the piece of which there may be more than is known: none is known of
// them, they are guessed from others, or a room often gets more of them than it had.
var grown = []string{"one", "outlets", "lights", "downspouts", "deck footings"}

// oftenMore is how often its measure the count of an item may well be: two faucets on one vanity, two
// rows of a barrier, rakes beside the eaves, a drive washed with the walls, trim around windows and at
// corners; common practice, no source. A test holds that the price book has them. Never written to.
var oftenMore = map[string]decimal.Decimal{
	"vanity faucet and drain": two, "mirror": two, "medicine cabinet fitted": two, "vanity rough-in": two,
	"window pane replaced": six, "window locks and lifts": two,
	"shower niche": two, "shower faucet and valve trim": two, "counter cut-outs": two,
	"ice barrier": three, "fascia": three, "fascia covered": three, "closet rod and shelf": three, "pressure wash": three,
	"outside trim painted": six, "trim scraped and primed": six,
	"wall backer board":                six, // under tile on all the walls of a bath
	"smoke and carbon monoxide alarms": six, // in halls and on each level too
}

var three, six = decimal.NewFromInt(3), decimal.NewFromInt(6)

// doubtCounts looks for work of which more is stated than there is, or a part of a piece.
func (r *reader) doubtCounts() {
	for _, w := range r.chosenWorks() {
		if w.scope.path == "" {
			continue
		}
		g := r.good(w.scope.path + "count")
		m := pricebook.MeasureNamed(w.item.Measure)
		r.doubtPieces(w, g, m)
		if g != nil && m != nil && !r.doubtOverMeasure(w, g, m) {
			r.doubtMuchOf(w, g, m)
		}
	}
}

// doubtOverMeasure doubts a count of more than there is of the measure, and reports whether it did.
func (r *reader) doubtOverMeasure(w *work, g *reading, m *pricebook.Measure) bool {
	if m.Unit == "month" || slices.Contains(grown, m.Name) {
		return false
	}
	room, m := r.heldAgainst(w, m)
	has, ok := r.worked(room, m.Line)
	count := w.member.Given.Of("measure").Number
	where, times := room.Label, roomTimes
	layers := r.layersOf(room, w.item)
	switch {
	case m.Of == "house":
		where, times = "the house", houseTimes
	case layers > 1:
		where, times = fmt.Sprintf("%s, of which there are %d layers,", room.Label, layers), roomTimes.Add(decimal.NewFromInt(int64(layers-1)))
	}
	often, more := oftenMore[w.item.Name]
	if more {
		times = often
	}
	if !ok || !has.IsPositive() || !count.GreaterThan(times.Mul(decimal.Sum(has, r.islandIn(w), r.framedIn(w)))) {
		return false
	}
	name := strings.TrimPrefix(m.Name, m.Of+" ")
	says, check := fmt.Sprintf("but %s of %s is %s %s", name, where, quantity.FormatCount(has, 1), m.Unit), r.checkCount(w)
	if m.Unit == "each" {
		says, check = fmt.Sprintf("but the count of %s in %s is %s", name, where, quantity.FormatCount(has, 1)), "check it; if there are more of them, say so there"
	}
	if more {
		check = "check it, for a digit too many"
	}
	r.countLarge(w, g, says, check)
	return true
}

// countLarge doubts a count of more than there is.
func (r *reader) countLarge(w *work, g *reading, says, check string) {
	r.say("count-large", g.at(), "%s: a count of %s, %s", w.label, g.node.text, says)("%s; it is used as it stands", check)
}

// heldAgainst is the place whose measure a count is held against, and that measure: windows outside, or of
// the house, against those that the file lists outside.
func (r *reader) heldAgainst(w *work, m *pricebook.Measure) (*model.Member, *pricebook.Measure) {
	place := w.member.Parent.Parent
	if outs := r.deal.Root.In("outside"); m.Name == "windows" && place.Kind != "inside" && len(outs) > 0 {
		return outs[0], pricebook.MeasureNamed("outside windows")
	}
	return place, m
}

// checkCount tells that a count is seldom needed; cabinets of an island may be counted twice.
func (r *reader) checkCount(w *work) string {
	if w.item.Measure == alongWalls {
		if x := r.islandBeside(w); x != nil {
			return "check it; without a count the work takes all there is, and the island has work of its own: " + x.label
		}
	}
	return "check it; without a count the work takes all there is, and waste comes on top by itself"
}

// doubtPieces doubts work by the piece that leaves a part of one undone.
func (r *reader) doubtPieces(w *work, count *reading, m *pricebook.Measure) {
	part := r.good(w.scope.path + "part")
	switch {
	case w.item.Unit != "each":
	case count != nil && !w.member.Given.Of("measure").Number.IsInteger():
		r.say("count-in-parts", count.at(), "%s: a count of %s, and it goes by the piece", w.label, count.node.text)("write how many there are, a whole number; it is used as it stands")
	case count == nil && part != nil && m != nil && m.Name != "one":
		has, ok := r.worked(w.member.Parent.Parent, m.Line)
		if done := has.Mul(part.number); ok && !done.IsInteger() {
			r.say("count-in-parts", part.at(), "%s: %s of %s %s is %s, and it goes by the piece", w.label, part.node.text, quantity.FormatCount(has, 1), m.Name, quantity.FormatCount(done, 2))("write how many are done, as   count: %s   ; it is used as it stands", decimal.Max(one, done.Round(0)))
		}
	}
}
