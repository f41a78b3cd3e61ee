package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// quoteBeside is how a quote is doubted beside what the price book says of its work, and of other work:
// one that holds more may well be higher.
func (d *Deal) quoteBeside(c *model.Cell) (out []Beside) {
	q := quoteSums{d, c}
	w := d.chosenWork(c.Member)
	more := w != nil && d.reader.holdsMore(w)
	var labour, goods decimal.Decimal // of what else a quote for all of it is taken to hold
	if w != nil && w.quotedAll() {
		labour, goods = d.reader.heldByQuote(w)
	}
	if !more {
		out = append(out, Beside{
			q.sum(labour.Add(goods).Mul(pricebook.FarTimes).Neg(), q.quote(one), q.book(pricebook.FarTimes.Neg())),
			q.sum(smallWork.Neg(), q.quote(one)),
			q.sum(decimal.Zero, q.book(one)),
		})
	}
	out = append(out, Beside{
		q.sum(decimal.Zero, q.book(one), q.quote(pricebook.FarTimes.Neg())),
		q.sum(smallWork.Neg(), q.book(one)),
	})
	switch {
	case w == nil:
	case !w.quotedAll():
		if !more {
			out = append(out, q.forAll(w.buys() || d.reader.bringsOfTrade(w))...)
			if along := d.reader.labourAlong(w); along != nil {
				out = append(out, q.holdsAlong(along))
			}
		}
	default:
		if !d.reader.saysCovers(w) {
			for _, x := range q.low(labour, goods) {
				if more { // else it is higher for what it holds
					x = append(x, q.sum(decimal.Zero, q.book(one), q.quote(one.Neg())))
				}
				out = append(out, x)
			}
		}
		for _, other := range d.reader.heldPerhaps(w) {
			out = append(out, q.holdsOther(other, labour.Add(goods)))
		}
	}
	return out
}

// chosenWork is the chosen work of a member, or nil.
func (d *Deal) chosenWork(m *model.Member) *work {
	if d.reader == nil {
		return nil
	}
	works := d.reader.chosenWorks()
	if i := slices.IndexFunc(works, func(w *work) bool { return w.member == m }); i >= 0 {
		return works[i]
	}
	return nil
}

// quoteSums are sums of a quote and of what it is held against.
type quoteSums struct {
	d *Deal
	c *model.Cell
}

func (q quoteSums) sum(and decimal.Decimal, parts ...[]Part) Sum {
	return Sum{slices.Concat(parts...), and}
}

func (q quoteSums) cell(line string, times decimal.Decimal) []Part {
	return []Part{{Cell: q.d.Model.Find(q.c.Member, line), Times: times}}
}

func (q quoteSums) quote(times decimal.Decimal) []Part { return []Part{{Cell: q.c, Times: times}} }

// book is what the price book says of the work itself, as far as the quote covers it.
func (q quoteSums) book(times decimal.Decimal) []Part {
	return slices.Concat(q.cell("labour_at_trade", times), q.cell("quote_over", times.Neg()))
}

// labour is what its labour comes to, and goods what it buys.
func (q quoteSums) labour(times decimal.Decimal) []Part { return q.cell("computed_labour", times) }

func (q quoteSums) goods(times decimal.Decimal) []Part {
	out := q.cell("found", times)
	for _, u := range q.c.Member.In("use") {
		out = append(out, Part{Cell: q.d.Model.Find(u, "by_parts"), Times: times})
	}
	return out
}
