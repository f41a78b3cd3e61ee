package pricebook

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A Quote is what somebody asks for a product or for the labour of an item.
type Quote struct {
	Name string // as the book has it
	Item bool   // it is the hired price of an item, dollars for each unit
	// Kinded says that the row itself says whether it is an item or a product.
	Kinded bool
	Price  decimal.Decimal
	None   bool             // no trade does the item alone
	Pack   *quantity.Pack   // nil: the book's
	Stick  *quantity.Length // which one, where it is sold by the stick
	Roll   *quantity.Size   // nil: the book's
	Dated  quantity.Date    // zero: unknown
	// Source is who asks it, "" if the row does not say.
	Source string
	Pos    diag.Pos

	low, high decimal.Decimal // of a form: the prices that labour may have been rounded from
}

// meet keeps of two quotes of a form what may be the price of both; false where nothing may.
func (q *Quote) meet(other Quote) bool {
	low, high := decimal.Max(q.low, other.low), decimal.Min(q.high, other.high)
	if low.GreaterThan(high) {
		return false
	}
	q.low, q.high = low, high
	q.Price = decimal.Max(low, decimal.Min(high, q.Price)).Round(formPlaces)
	return true
}

// news reports whether a quote says anything that the book does not say already.
func (q Quote) news(b *Book) bool {
	var price decimal.Decimal
	var dated quantity.Date
	var source string
	if q.Item {
		it := b.Item(q.Name)
		price, dated, source = it.Hired, it.Dated, it.HiredSource
	} else {
		p := b.Product(q.Name)
		price, dated, source = p.Price, p.Dated, p.Source
		switch {
		case q.Stick != nil:
			known := p.stick(*q.Stick)
			if known == nil {
				return true
			}
			price = known.Price
			dated, source = p.saidOf(*known)
		case q.Pack != nil && q.Pack.String() != p.Pack.String():
			return true
		case q.Roll != nil && (q.Roll.First.Cmp(p.Roll.Width) != 0 || q.Roll.Second.Cmp(p.Roll.Length) != 0):
			return true
		}
	}
	said := q.Source != source
	if q.Source == "" { // the table is its source: an invented price is then a quoted one, though it is the same
		said = source == Invented
	}
	return !q.Price.Equal(price) || !q.Dated.IsZero() && q.Dated != dated || said
}

func (p *Product) stick(l quantity.Length) *Stick {
	for i := range p.Sticks {
		if p.Sticks[i].Length.Cmp(l) == 0 {
			return &p.Sticks[i]
		}
	}
	return nil
}
