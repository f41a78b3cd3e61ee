package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// muchLabour is how many times what the labour comes to a quote for it may be: one for a roof may have
// the labour of its tear-off in it too; common practice, no source.
var muchLabour = decimal.New(25, -1)

// littleLabour is how small a part of what much labour comes to a quote for it is at least; one that is
// dear and lost a nought is over a fifth of that; common practice, no source.
var littleLabour, muchOfLabour = decimal.New(25, -2), decimal.NewFromInt(1500)

// doubtLabourQuote doubts a quote for the labour of far more than that is by the price book, of work
// with materials, or that brings work of its own trade: it may be the price of all of it, of which much
// is in what comes along. One that is doubted already, or far off, is not told again.
func (r *reader) doubtLabourQuote(w *work, given model.Value, quote, base decimal.Decimal) {
	told := slices.ContainsFunc(r.diags, func(d diag.Diag) bool { return d.Code == "quote-half" && d.Pos == given.Pos })
	if !w.quotedAll() && !told && quote.LessThan(base.Mul(littleLabour)) && !base.LessThan(muchOfLabour) && pricebook.FarFrom(quote, base) == "" {
		r.say("quote-far", given.Pos, "%s: a quote of %s for the labour is under a quarter of what that comes to by the price book, %s", w.label, diag.Quote(given.Text), quantity.FormatMoney(base))("check it for a nought that was lost, and whether it is for all of the work; it is used as it stands")
		return
	}
	if w.quotedAll() || told || pricebook.FarFrom(quote, base) != "" {
		return
	}
	if r.hasGoods(w) && !base.LessThan(smallWork) && quote.GreaterThan(base.Mul(muchLabour)) {
		r.say("quote-half", given.Pos, "%s: a quote of %s for the labour is over %s times what that comes to by the price book, %s", w.label, diag.Quote(given.Text), muchLabour, quantity.FormatMoney(base))("if it brings the materials, and what else its trade does for it, say   covers: all   , or leave   covers: labour   out; if it is for the labour of other work too, say   holds more: yes   ; it is used as it stands")
		return
	}
	if along := r.labourAlong(w); along != nil && r.doubtedBeside(quoteSums{r.deal, r.deal.Model.Find(w.member, "quote")}.holdsAlong(along)) {
		r.say("quote-holds-other", given.Pos, "%s: a quote of %s for the labour is over %s times what that comes to by the price book, %s, and what it brings of its trade is hired besides: %s", w.label, diag.Quote(given.Text), farOver, quantity.FormatMoney(base), r.largest(along))("if it holds the labour of that too, say   holds more: yes, from: Fern   , or whoever gave it, and name that as work,   %s: {quote: $0, covers: labour, from: Fern}   ; if it is for this work alone, say   holds more: no", along[0].item.Name)
	}
}

// labourAlong is the hired work of its trade that work brings, the labour of which a quote for its labour may
// hold; nothing where the file says whether it holds more.
func (r *reader) labourAlong(w *work) []*work {
	if w.scope.path == "" || r.good(w.scope.path+"holds more") != nil {
		return nil
	}
	return r.broughtOfTrade([]*work{w})
}

// holdsAlong is how a quote for the labour is doubted that may hold the labour of what comes along.
func (q quoteSums) holdsAlong(along []*work) Beside {
	held := func(times decimal.Decimal) (out []Part) {
		for _, x := range along {
			out = append(out, Part{Cell: q.d.Model.Find(x.member, "computed_labour"), Times: times})
		}
		return out
	}
	return Beside{
		q.sum(cent, q.quote(one), q.labour(farOver.Neg())),
		q.sum(smallWork.Neg().Add(cent), q.quote(one), q.labour(one.Neg())),
		q.sum(decimal.Zero, q.quote(one), q.labour(one.Neg()), held(leastHeld.Neg())),
	}
}

// hasGoods reports whether work buys materials, or brings work of its trade along.
func (r *reader) hasGoods(w *work) bool {
	return r.goodsOf(w).IsPositive() || r.bringsOfTrade(w)
}

// bringsOfTrade reports whether work brings work of its trade along.
func (r *reader) bringsOfTrade(w *work) bool {
	return slices.ContainsFunc(r.chosenWorks(), func(x *work) bool { return x.item.Trade == w.item.Trade && x.broughtBy(w) })
}

// buys reports whether materials go with work, as far as the price book knows.
func (w *work) buys() bool { return len(w.member.In("use")) > 0 }

// forAll is how a quote for the labour is doubted that may be for all of the work: one of many times
// the labour, and one of about labour and materials together.
func (q quoteSums) forAll(goods bool) (out []Beside) {
	if !goods {
		return nil
	}
	much := q.sum(smallWork.Neg(), q.labour(one))
	return []Beside{
		{q.sum(decimal.Zero, q.quote(one), q.labour(muchLabour.Neg())), much},
		{
			q.sum(decimal.Zero, q.quote(one), q.labour(offItsOwn.Neg())),
			q.sum(cent, q.labour(nearOther), q.goods(nearOther), q.quote(one.Neg())),
			q.sum(cent, q.quote(nearOther), q.labour(one.Neg()), q.goods(one.Neg())),
			q.sum(cent, q.goods(one), q.labour(one.Neg())),
			much,
		},
	}
}
