package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A quote that holds more is hardly over such a share of the after-repair value, for a place and for the house,
// and so many times all work that it may stand for; what a whole kitchen comes to in the cheapest of houses is
// let be. Common practice, no source.
var (
	muchForPlace, muchForHouse = decimal.New(25, -2), decimal.New(75, -2)
	timesHeld                  = three
	wholeKitchen               = decimal.NewFromInt(30_000)
)

// ofTheHouse is what a note says of a quote for several rooms.
var ofTheHouse = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b((whole|entire|full|all( of)? the) (house|home)|general contractor|(several|all|other|more|\d|two|three|four|five) rooms)\b`)
})

// doubtMuchHeld doubts a quote that is said to hold more and is far more than all that it may stand for: the work
// of its place, of each place where the same is named as held, or of the house.
func (r *reader) doubtMuchHeld(w *work, given model.Value, quote decimal.Decimal) {
	worth, known := r.worked(r.deal.Root, "after_repair_value")
	share, words, all, ofHouse := muchForPlace, "a quarter", "", r.holdsHouse(w)
	if ofHouse {
		share, words, all = muchForHouse, "three quarters", "the house"
	}
	if !known || !worth.IsPositive() || !quote.GreaterThan(decimal.Max(wholeKitchen, worth.Mul(share))) {
		return
	}
	places := []*model.Member{w.place()}
	for _, x := range r.sharers(w, true) {
		if !slices.Contains(places, x.place()) {
			places = append(places, x.place())
		}
	}
	labour, goods := r.heldByQuote(w)
	held := labour.Add(goods)
	for _, x := range r.chosenWorks() {
		if ofHouse || slices.Contains(places, x.place()) {
			held = held.Add(r.atBook(x))
		}
	}
	if !quote.GreaterThan(held.Mul(timesHeld)) {
		return
	}
	hint := "check it for a point or nought that has slipped"
	if !ofHouse {
		var names []string
		for _, p := range places {
			names = append(names, p.Label)
		}
		all = strings.Join(names, " and ")
		hint += "; if it is for work all over the house, say so, e.g.   note: whole house   "
	}
	r.say("quote-far", given.Pos, "%s: the quote of %s, which is said to hold more, is over %s of the after-repair value (%s), and over %s times what all work of %s comes to by the price book (%s)", w.label, diag.Quote(given.Text), words, quantity.FormatDollars(worth), timesHeld, all, quantity.FormatDollars(held.Round(0)))("%s", hint+"; it is used as it stands")
}

// place is where work is done.
func (w *work) place() *model.Member { return w.member.Parent.Parent }

// holdsHouse reports whether a quote that holds more may be for work all over the house: it says so, other places
// name other work that it holds, or it stands in no small room and others are paid for little that is named in
// other places. What is left there to own hands may stand beside any quote.
func (r *reader) holdsHouse(w *work) bool {
	if ofTheHouse().MatchString(r.text(w, "note")) {
		return true
	}
	_, alone := largeKinds[r.roomKinds[w.place()]]
	for _, x := range r.sharers(w, true) {
		if x.place() != w.place() && x.item.Name != w.item.Name {
			return true
		}
		alone = alone || x.place() != w.place() // one kind of work in several
	}
	var beside decimal.Decimal
	for _, x := range r.chosenWorks() {
		if x.by == "" && x.place() != w.place() && !x.byOwnHands() {
			beside = beside.Add(r.tradePrice(x))
		}
	}
	return !alone && beside.LessThan(smallWork)
}

// atBook is about what work comes to by the price book, done by trades.
func (r *reader) atBook(w *work) decimal.Decimal {
	over, _ := r.worked(w.member, "quote_over")
	return r.tradePrice(w).Sub(over)
}
