package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// muchDiscount is the discount up to which a low value near the likely one may well be above the sale: it
// comes off the low value too. Common practice, no source.
var muchDiscount = decimal.New(5, -2)

// discountBeside is how a discount is doubted beside a low value of the file: it takes the sale under it.
func (d *Deal) discountBeside(c *model.Cell) []Beside {
	low, sale := d.Model.Find(d.Root, "low_value"), d.Model.Find(d.Root, "sale_price")
	if low == nil || low.Given == nil {
		return nil
	}
	return []Beside{{
		{Parts: []Part{{Cell: low, Times: one}, {Cell: sale, Times: one.Neg()}}},
		{Parts: []Part{{Cell: c, Times: one}}, And: muchDiscount.Neg()},
	}}
}

// doubtDiscount doubts a discount that takes the sale that is expected under the low value, where a point
// has slipped.
func (r *reader) doubtDiscount() {
	g := r.good("value.expected discount")
	if g == nil || !r.farBeside(r.deal.Root, "expected_discount", 0) || beyondUsual(g) {
		return
	}
	sale, _ := r.worked(r.deal.Root, "sale_price")
	low, _ := r.worked(r.deal.Root, "low_value")
	r.say("discount-under-low", g.at(), "a discount of %s takes the sale to %s, under the low value (%s)", g.node.text, quantity.FormatDollars(sale), quantity.FormatDollars(low))("check it, for a point that has slipped: what others sold for holds what buyers bid off, and the discount comes off the low value too; it is used as it stands")
}
