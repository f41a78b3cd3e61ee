package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A quote may hold other work from so many times what the price book says of its own on, where what it
// is over that comes to such shares of the other; common practice, no source.
var (
	farOver             = decimal.RequireFromString("1.5")
	leastHeld, mostHeld = half, two
)

// An otherWork is hired work that a quote for other work may hold: that of its room that does not come
// through it, or the same in other rooms.
type otherWork struct {
	works     []*work
	elsewhere bool
}

// heldPerhaps is what a quote for all of some work may hold of other work; nothing where the file says
// whether it holds more, or that other work is in a quote of its trade.
func (r *reader) heldPerhaps(w *work) (out []otherWork) {
	if w.scope.path == "" || !w.quotedAll() || r.good(w.scope.path+"holds more") != nil || r.holdsElsewhere(w) {
		return nil
	}
	var room, other []*work
	for _, p := range r.chosenPlans() {
		in := slices.Contains(p.works, w)
		wholeHouse := p.room.Kind == "whole_house"
		for _, x := range p.works {
			same := x.item == w.item || slices.ContainsFunc(x.bringers, func(b brought) bool { return b.by.item == w.item && x.item.Trade == w.item.Trade })
			switch {
			case x == w || x.within != nil || x.quoted() || x.byOwnHands() || x.comesThrough(w, nil):
			case in && !(wholeHouse && x.by != ""): // what the house takes once is of work all over it
				room = append(room, x)
			case !in && same:
				other = append(other, x)
			}
		}
	}
	for _, x := range []otherWork{{room, false}, {other, true}} {
		if len(x.works) > 0 {
			out = append(out, x)
		}
	}
	return out
}

// comesThrough reports whether brought work comes through other work alone; seen is the work asked
// already on the way there.
func (w *work) comesThrough(by *work, seen []*work) bool {
	return len(w.bringers) > 0 && !slices.Contains(seen, w) && !slices.ContainsFunc(w.bringers, func(x brought) bool {
		return x.by != by && !x.by.comesThrough(by, append(slices.Clone(seen), w))
	})
}

// holdsOther is how a quote is doubted that may hold other work too, beside what it is taken to hold.
func (q quoteSums) holdsOther(other otherWork, held decimal.Decimal) Beside {
	var parts []*model.Cell
	for _, x := range other.works {
		parts = append(parts, q.d.Model.Find(x.member, "trade_price"))
	}
	others := func(times decimal.Decimal) (out []Part) {
		for _, c := range parts {
			out = append(out, Part{c, times})
		}
		return out
	}
	return Beside{
		q.sum(held.Mul(farOver).Neg().Add(cent), q.quote(one), q.book(farOver.Neg())),
		q.sum(held.Add(smallWork).Neg().Add(cent), q.quote(one), q.book(one.Neg())),
		q.sum(held.Neg(), q.quote(one), q.book(one.Neg()), others(leastHeld.Neg())),
		q.sum(held, q.book(one), others(mostHeld), q.quote(one.Neg())),
	}
}

// doubtHoldsOther doubts a quote of so much more than its own work comes to that it may hold other work,
// which is hired besides.
func (r *reader) doubtHoldsOther(w *work, given model.Value, quote, base decimal.Decimal) {
	over := quote.Sub(base)
	if r.farQuote(w, quote, base) || over.LessThan(smallWork) || quote.LessThan(base.Mul(farOver)) {
		return
	}
	labour, _ := r.worked(w.member, "computed_labour")
	most, known := r.heldAtMost(w, labour) // of its labour; its goods are rarely more than twice that
	for _, other := range r.heldPerhaps(w) {
		sum := r.tradePrice(other.works...)
		if over.LessThan(sum.Mul(leastHeld)) || known && over.GreaterThan(sum.Mul(mostHeld).Add(most.Mul(two))) {
			continue // whatever it is taken to hold
		}
		heldLabour, heldGoods := r.heldByQuote(w)
		held := heldLabour.Add(heldGoods)
		if !r.doubtedBeside(quoteSums{r.deal, r.deal.Model.Find(w.member, "quote")}.holdsOther(other, held)) {
			continue
		}
		what, settle := "other work here", "take what it holds of that out of   work   , or name under   without   what comes along"
		if other.elsewhere {
			what, settle = "the same in "+strings.Join(r.roomsOf(other.works), ", "), "write   {quote: $0, from: ...}   there, and who gave it here too"
		}
		r.say("quote-holds-other", given.Pos, "%s: a quote of %s is over %s times what the price book says of all that it is taken to hold, %s, and %s is hired besides: %s", w.label, diag.Quote(given.Text), farOver, quantity.FormatMoney(base.Add(held)), what, r.largest(other.works))("if it holds that too, say   holds more: yes   and %s; if it is for this work alone, say   holds more: no", settle)
		return
	}
}

// roomsOf are the rooms that work is in.
func (r *reader) roomsOf(works []*work) (out []string) {
	for p, w := range r.eachWork() {
		if slices.Contains(works, w) && !slices.Contains(out, p.room.Label) {
			out = append(out, p.room.Label)
		}
	}
	return out
}
