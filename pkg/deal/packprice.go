package deal

import (
	"cmp"
	"fmt"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// priceOfPack is the field of the price of a piece of work, which says of what pack it is.
func (r *reader) priceOfPack(s scope, f *Field) *Field {
	of := *f
	of.want = "the price of one pack of its first product, e.g. " + f.Example
	if p := r.packOf(s); p != nil {
		of.want = fmt.Sprintf("the price of one pack of %s (%s), e.g. %s", p.Name, p.SoldIn(), cmp.Or(packPrice(p), f.Example))
	}
	return &of
}

// packOf is the product that the price of a piece of work is for, or nil.
func (r *reader) packOf(s scope) *pricebook.Product {
	if g := r.of(s, "product"); g != nil && g.ok {
		return r.productNamed(plainKey(g.choice))
	}
	name := plainKey(s.member.Label)
	if g := r.of(s, "item"); g != nil && g.ok {
		name = plainKey(g.choice)
	}
	if it := r.itemNamed(name); it != nil && len(it.Uses) > 0 {
		return r.prices().Product(it.Uses[0].Product)
	}
	return nil
}

// packPrice is what a pack costs by the book, or "" for what is sold in sticks.
func packPrice(p *pricebook.Product) string {
	if len(p.Sticks) > 0 {
		return ""
	}
	return quantity.FormatMoney(p.Price)
}
