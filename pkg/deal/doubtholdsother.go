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
// is over that comes to such shares of the other; and from more where own hands or quotes of its own do
// that. Common practice, no source.
var (
	farOver, farOverSettled   = decimal.RequireFromString("1.5"), two
	leastHeld                 = half
	mostHeld, mostHeldSettled = two, decimal.NewFromInt(3)
)

// An otherWork is work that a quote for other work may hold: that of its room that does not come through
// it, or the same in other rooms. It is hired; or all of it, with what own hands buy for and what has a
// quote of its own.
type otherWork struct {
	works     []*work
	elsewhere bool
	settled   bool // by own hands or quotes of its own, too
}

// over is from how many times what the price book says of its own work on a quote may hold other work,
// and most of how many times the other what it is over that is at most.
func (o otherWork) over() decimal.Decimal {
	if o.settled {
		return farOverSettled
	}
	return farOver
}

func (o otherWork) most() decimal.Decimal {
	if o.settled {
		return mostHeldSettled
	}
	return mostHeld
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
			case x == w || x.within != nil || x.comesThrough(w, nil) || x.quotedAlike(w):
			case in && !(wholeHouse && x.by != ""): // what the house takes once is of work all over it
				room = append(room, x)
			case !in && same:
				other = append(other, x)
			}
		}
	}
	byHired := func(all []*work) []*work { return slices.DeleteFunc(slices.Clone(all), (*work).settled) }
	for _, x := range []otherWork{
		{byHired(room), false, false}, {byHired(other), true, false}, {room, false, true}, {other, true, true},
	} {
		if len(x.works) > 0 && (!x.settled || !r.paidSettled(x.works).LessThan(smallWork)) {
			out = append(out, x)
		}
	}
	return out
}

// settled reports whether the file says of work by more than   hired   who does it.
func (w *work) settled() bool { return w.quoted() || w.byOwnHands() }

// quotedAlike reports whether work has a quote of the same sum as other work, of which there is a doubt of
// its own.
func (w *work) quotedAlike(other *work) bool {
	return w.quoted() && w.member.Given.Of("quote").Number.Equal(other.member.Given.Of("quote").Number)
}

// paidSettled is what is paid for work that the file names as that of own hands or with a quote of its own.
func (r *reader) paidSettled(works []*work) (sum decimal.Decimal) {
	for _, x := range works {
		if x.settled() && x.by == "" {
			paid, _ := r.worked(x.member, "cash_cost")
			sum = sum.Add(paid)
		}
	}
	return sum
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
			out = append(out, Part{Cell: c, Times: times})
		}
		return out
	}
	return Beside{
		q.sum(held.Mul(other.over()).Neg().Add(cent), q.quote(one), q.book(other.over().Neg())),
		q.sum(held.Add(smallWork).Neg().Add(cent), q.quote(one), q.book(one.Neg())),
		q.sum(held.Neg(), q.quote(one), q.book(one.Neg()), others(leastHeld.Neg())),
		q.sum(held, q.book(one), others(other.most()), q.quote(one.Neg())),
	}
}

// doubtHoldsOther doubts a quote of so much more than its own work comes to that it may hold other work,
// which is paid besides.
func (r *reader) doubtHoldsOther(w *work, given model.Value, quote, base decimal.Decimal) {
	over := quote.Sub(base)
	if r.farQuote(w, quote, base) || over.LessThan(smallWork) || quote.LessThan(base.Mul(farOver)) {
		return
	}
	labour, _ := r.worked(w.member, "computed_labour")
	most, known := r.heldAtMost(w, labour) // of its labour; its goods are rarely more than twice that
	for _, other := range r.heldPerhaps(w) {
		sum := r.tradePrice(other.works...)
		if over.LessThan(sum.Mul(leastHeld)) || known && over.GreaterThan(sum.Mul(other.most()).Add(most.Mul(two))) {
			continue // whatever it is taken to hold
		}
		heldLabour, heldGoods := r.heldByQuote(w)
		held := heldLabour.Add(heldGoods)
		if !r.doubtedBeside(quoteSums{r.deal, r.deal.Model.Find(w.member, "quote")}.holdsOther(other, held)) {
			continue
		}
		who := "is hired besides"
		if other.settled {
			who = "is counted besides, by own hands or by quotes of its own too"
		}
		what, settle := "other work here", "take what it holds of that out of   work   , or name under   without   what comes along"
		if other.elsewhere {
			what, settle = "the same in "+strings.Join(r.roomsOf(other.works), ", "), "write   {quote: $0, from: ...}   there, and who gave it here too"
		}
		r.say("quote-holds-other", given.Pos, "%s: a quote of %s is over %s times what the price book says of all that it is taken to hold, %s, and %s %s: %s", w.label, diag.Quote(given.Text), other.over(), quantity.FormatMoney(base.Add(held)), what, who, r.largest(other.works))("if it holds that too, say   holds more: yes   and %s; if it is for this work alone, say   holds more: no", settle)
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
