package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// onePrice is how many times the smaller the larger of two pieces of work may be that a trade may well
// do for one price; common practice, no source.
var onePrice = decimal.RequireFromString("1.1")

// A sameQuote is a quote with all work that has it: the same sum on the same day for the same work, or
// by one firm that is named for whatever work.
type sameQuote struct {
	sum   decimal.Decimal
	rooms []*plan
	works []*work
}

// doubtQuotesTwice doubts one quote that stands in several rooms, where it is counted in each. What
// is as much work in each, at about the price of one, is rather asked for each, as toilets are; and
// where   holds more   is said, yes or no, it is settled.
func (r *reader) doubtQuotesTwice() {
	for _, q := range r.sameQuotes() {
		if len(q.works) < 2 || q.ofOneItem() && r.forEach(q) {
			continue
		}
		var rooms []string
		for _, p := range q.rooms {
			rooms = append(rooms, p.room.Label)
		}
		w, from := q.works[0], r.text(q.works[0], "from")
		by, each := "", "who gave it"
		if from != "" {
			by, each = " from "+diag.Quote(from), from
		}
		if !q.ofOneItem() {
			r.say("quote-twice", q.works[1].member.Given.Of("quote").Pos, "%s: a quote of %s%s stands at each of them, and is counted in each", q.names(), quantity.FormatDollars(q.sum), by)("if it is for all of them, write it at one with   holds more: yes   and at the others   {quote: $0, from: %s}; if it is for each, say   holds more: no", each)
			continue
		}
		r.say("quote-twice", q.works[1].member.Given.Of("quote").Pos, "%s: a quote of %s%s stands in %s, and is counted in each", w.item.Name, quantity.FormatDollars(q.sum), by, strings.Join(rooms, " and "))("if it is for all of them, write it in one with   holds more: yes   and in the others   {quote: $0, from: %s}; if it is for each, say   holds more: no", each)
	}
}

// ofOneItem reports whether a quote is for the same work wherever it stands.
func (q *sameQuote) ofOneItem() bool {
	return !slices.ContainsFunc(q.works, func(w *work) bool { return w.item != q.works[0].item })
}

// names are the work that a quote stands at, by its place.
func (q *sameQuote) names() string {
	var out []string
	for i, w := range q.works {
		out = append(out, w.label+" ("+q.rooms[i].room.Label+")")
	}
	return strings.Join(out, ", ")
}

// sameQuotes are the quotes of chosen work, each with all that has the same.
func (r *reader) sameQuotes() (out []*sameQuote) {
	for _, p := range r.chosenPlans() {
		for _, w := range p.works {
			v, quoted := w.member.Given.Look("quote")
			if !quoted || w.scope.path == "" || !v.Number.IsPositive() || r.good(w.scope.path+"holds more") != nil {
				continue
			}
			i := slices.IndexFunc(out, func(q *sameQuote) bool {
				first := q.works[0]
				from := plainKey(r.text(w, "from"))
				return q.sum.Equal(v.Number) && (first.item == w.item || from != "") && plainKey(r.text(first, "from")) == from && r.day(first, "dated") == r.day(w, "dated")
			})
			if i < 0 {
				out = append(out, &sameQuote{sum: v.Number})
				i = len(out) - 1
			}
			out[i].rooms, out[i].works = append(out[i].rooms, p), append(out[i].works, w)
		}
	}
	return out
}

// forEach reports whether a quote in several rooms is plainly for each of them: it is as much work in
// each, and nearer to what one comes to by the price book than to all.
func (r *reader) forEach(q *sameQuote) bool {
	var least, most, all, largest decimal.Decimal
	for i, w := range q.works {
		much, _ := r.worked(w.member, "quantity")
		base, known := r.bookOf(w)
		if !known || !much.IsPositive() {
			return false
		}
		if i == 0 {
			least = much
		}
		least, most, all, largest = decimal.Min(least, much), decimal.Max(most, much), all.Add(base), decimal.Max(largest, base)
	}
	return most.LessThanOrEqual(least.Mul(onePrice)) && q.sum.Mul(q.sum).LessThan(all.Mul(largest))
}

// bookOf is what work with a quote comes to by the price book.
func (r *reader) bookOf(w *work) (decimal.Decimal, bool) {
	over, known := r.worked(w.member, "quote_over")
	quote, done := r.worked(w.member, "labour_at_trade")
	return quote.Sub(over), known && done
}

// heldElsewhere reports whether work with a quote of nothing is in a quote of the same trade that is
// said to hold more.
func (r *reader) heldElsewhere(w *work) bool { return len(r.sharers(w, false)) > 0 }

// holdsElsewhere reports whether a quote that is said to hold more holds work of other places that
// names its trade with a quote of nothing.
func (r *reader) holdsElsewhere(w *work) bool { return len(r.sharers(w, true)) > 0 }

// sharers are other work with a quote by the same trade: with those of nothing, or with those that hold more.
func (r *reader) sharers(w *work, nothing bool) (out []*work) {
	from := plainKey(r.text(w, "from"))
	if from == "" {
		return nil
	}
	for _, x := range r.chosenWorks() {
		v, quoted := x.member.Given.Look("quote")
		if x != w && quoted && v.Number.IsZero() == nothing && (nothing || r.holdsMore(x)) && plainKey(r.text(x, "from")) == from {
			out = append(out, x)
		}
	}
	return out
}
