package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// cent makes an edge of dollars one that is doubted too.
var cent = decimal.New(1, -2)

// A quote for all of some work is about its labour up to so many times it; common practice, no source.
var nearLabour = decimal.RequireFromString("1.15")

// low are the ways in which a quote for all of some work looks like less than that: it is about its
// labour alone or below it, where the materials are much, by themselves or with those of what else it
// is taken to hold; or below half of the labour, where they are little. What is held comes to so much
// labour and goods.
func (q quoteSums) low(heldLabour, heldGoods decimal.Decimal) []Beside {
	labour := func(times decimal.Decimal) Sum { return q.sum(heldLabour.Mul(times), q.labour(times)) }
	all := func(times decimal.Decimal) Sum {
		return q.sum(heldLabour.Add(heldGoods).Mul(times), q.book(times))
	}
	plus := func(sums ...Sum) (out Sum) {
		for _, s := range sums {
			out = Sum{append(out.Parts, s.Parts...), out.And.Add(s.And)}
		}
		return out
	}
	quote := func(times decimal.Decimal) Sum { return q.sum(decimal.Zero, q.quote(times)) }
	extra := func(x decimal.Decimal) Sum { return Sum{And: x} }
	much := Beside{
		quote(one),
		q.sum(smallWork.Neg().Add(cent), q.book(one)),
		plus(labour(nearLabour), quote(one.Neg()), extra(cent)), // about the labour at most
		plus(labour(half), all(half), quote(one.Neg())),         // and nearer to it than to all
	}
	return []Beside{
		append(slices.Clone(much), // of the work itself, however small
			q.sum(cent, q.book(one), q.labour(two.Neg())),
			plus(q.sum(cent, q.book(one)), quote(offItsOwn.Neg()))),
		append(slices.Clone(much),
			plus(all(one), labour(one.Neg()), extra(smallWork.Neg().Add(cent))),
			plus(all(one.Sub(muchOfIt)), labour(one.Neg()), extra(cent))),
		{
			quote(one),
			q.sum(smallWork.Neg().Add(cent), q.book(one)),
			plus(labour(half), quote(one.Neg())),
			plus(all(one), quote(one.Neg()), extra(smallWork.Neg())),
		},
	}
}

// saysCovers reports whether the file says in so many words what a quote covers.
func (r *reader) saysCovers(w *work) bool {
	return w.scope.path != "" && r.good(w.scope.path+"covers") != nil
}

// doubtLowQuote doubts a quote for all of some work that is about what the labour of all that it is
// taken to hold comes to by the price book, or less. What the file says in so many words,
// covers: all, is no slip.
func (r *reader) doubtLowQuote(w *work, given model.Value, quote, labour decimal.Decimal) {
	if r.saysCovers(w) {
		return
	}
	if most, known := r.heldAtMost(w, labour); known && quote.GreaterThan(labour.Add(most).Mul(nearLabour)) {
		return // it is not near the labour, whatever it holds
	}
	held, goods := r.heldByQuote(w)
	if !r.doubtedBeside(quoteSums{r.deal, r.deal.Model.Find(w.member, "quote")}.low(held, goods)...) {
		return
	}
	of := ""
	if held.IsPositive() {
		of = " of all that it is taken to hold"
	}
	labour = labour.Add(held)
	if quote.Mul(nearOther).GreaterThanOrEqual(labour) {
		r.say("quote-half", given.Pos, "%s: a quote of %s is about what the labour alone%s comes to by the price book, %s", w.label, diag.Quote(given.Text), of, quantity.FormatMoney(labour))("if it is for the labour, say   covers: labour   , so that the materials are bought besides; if it brings them, say   covers: all")
		return
	}
	r.say("quote-half", given.Pos, "%s: a quote of %s is well below what the labour alone%s comes to by the price book, %s", w.label, diag.Quote(given.Text), of, quantity.FormatMoney(labour))("ask what it is for: a nought may be lost, or it is for the materials alone, for a part of the work or for one of several; if it is for the labour, say   covers: labour   ; if it is for all of it, say   covers: all")
}

// doubtedBeside reports whether one of some ways of doubting an input beside others tells something.
func (r *reader) doubtedBeside(ways ...Beside) bool {
	return slices.ContainsFunc(ways, func(x Beside) bool {
		return !x.Holds(func(c *model.Cell) (decimal.Decimal, bool) { return r.worked(c.Member, c.Line.Name) })
	})
}
