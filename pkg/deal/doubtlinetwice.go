package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// smallBeside is the share of a line under which what the rooms hold of its trade is plainly
// other work, as an outlet beside a new panel: common practice, no source.
var smallBeside = decimal.RequireFromString("0.2")

// doubtLinesTwice doubts lines of a trade that has work in rooms, or of a room that has work,
// and tells what that work is and costs; not those that the file says are apart, nor small ones, as
// hooks for a bath that is painted.
func (r *reader) doubtLinesTwice(works []*work) {
	for _, l := range r.lines() {
		m := l.member
		if m == nil || r.saidApart(l) || container().MatchString(m.Label) || ofTheWhole(m.Label) != "" {
			continue
		}
		who, what, _ := strings.Cut(m.Label, ":")
		same, whole := r.ofAPlace(m.Label, works)
		if len(same) == 0 {
			same = r.pricedInRooms(plainKey(who), works)
		}
		if len(same) == 0 { // it is called by who does it, a handyman
			same = namedBy(what, works)
		}
		sum := r.tradePrice(same...)
		line, known := r.worked(m, "trade_price")
		if len(same) == 0 || !whole && known && line.IsPositive() && (line.LessThan(smallWork) || sum.LessThan(line.Mul(smallBeside))) {
			continue
		}
		r.say("trade-twice", m.Pos, "%s is of a trade, or of a room, that rooms price too: %s", diag.Quote(m.Label), r.largest(same))("take out of one what the other holds; if it is other work, say   apart: yes   in the line")
	}
}

// saidApart reports whether the file says that a line is other work than that of the rooms.
func (r *reader) saidApart(l scope) bool {
	apart := r.good(l.path + "apart")
	return apart != nil && apart.number.IsPositive()
}

// tradePrice is what pieces of work cost together if trades do all of it.
func (r *reader) tradePrice(works ...*work) (sum decimal.Decimal) {
	for _, w := range works {
		paid, _ := r.worked(w.member, "trade_price")
		sum = sum.Add(paid)
	}
	return sum
}

// largest names the pieces of work that cost the most, how many more there are, and their sum.
func (r *reader) largest(works []*work) string {
	const most = 3
	works = slices.Clone(works)
	slices.SortStableFunc(works, func(a, b *work) int { return r.tradePrice(b).Cmp(r.tradePrice(a)) })
	var names []string
	for _, w := range works {
		if name := w.item.Name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) > most+1 {
		names = append(names[:most], fmt.Sprintf("%d more", len(names)-most))
	}
	list, last, sum := names[:len(names)-1], names[len(names)-1], quantity.FormatDollars(r.tradePrice(works...))
	if len(list) == 0 {
		return last + ", " + sum
	}
	return strings.Join(list, ", ") + " and " + last + ", together " + sum
}

// pricedInRooms is the chosen work of a trade, by any of its names, or else that of rooms that
// are called so: for a line for the kitchen that of the kitchen.
func (r *reader) pricedInRooms(trade string, works []*work) (out []*work) {
	words := strings.Fields(trade)
	for _, w := range works {
		ofTrade := func(word string) bool { return pricebook.OfTrade(word, w.item.Trade) || pricebook.IsMade(word, w.item) }
		if w.item.Trade == trade || slices.ContainsFunc(words, ofTrade) {
			out = append(out, w)
		}
	}
	if len(out) > 0 {
		return out
	}
	for _, p := range r.chosenPlans() {
		if slices.ContainsFunc(words, func(word string) bool { return slices.Contains(strings.Fields(plainKey(p.room.Label)), roomWord(word)) }) {
			out = append(out, p.works...)
		}
	}
	return out
}
