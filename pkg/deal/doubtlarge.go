package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// One piece of work that costs so many dollars, so much of the price of the house and half of all that
// is planned is rather a unit or a digit that slipped than a plan; common practice, no source.
var largeWork, partOfPrice = decimal.NewFromInt(30_000), decimal.New(25, -2)

// slipped are the doubts of what such work goes by: a slip is told once.
var slipped = []string{"outside-size", "room-large", "count-large", "hired-with-materials", "price-far"}

// doubtLargeWork doubts such work at the prices of the price book: a quote is somebody's word.
func (r *reader) doubtLargeWork() {
	least := decimal.Max(largeWork, r.good("purchase.price").number.Mul(partOfPrice))
	for _, w := range r.chosenWorks() {
		counted := w.scope.path != "" && r.good(w.scope.path+"count") != nil
		if w.by != "" || w.quoted() || w.allowed() || !counted && w.member.Parent.Parent.Kind == "inside" { // whose sizes have doubts of their own
			continue
		}
		labour, _ := r.worked(w.member, "computed_labour")
		if !labour.GreaterThan(least.Mul(partOfPrice)) {
			continue // goods are seldom over three times the labour, and most work ends here
		}
		cost, _ := r.worked(w.member, "labour")
		if cost = cost.Add(r.goodsOf(w)); !cost.GreaterThan(least) {
			continue
		}
		all, known := r.worked(r.deal.Root, "works_cost")
		unseen, _ := r.worked(r.deal.Root, "not_seen")
		much, _ := r.worked(w.member, "quantity")
		if known && cost.Mul(two).GreaterThan(all.Sub(unseen)) && !r.doubted(slipped...) {
			of := quantity.FormatCount(much, 1)
			if w.item.Unit != "each" {
				of += " " + string(w.item.Unit)
			}
			r.say("work-large", w.at, "%s comes to %s for %s by the price book, more than half of all work that is planned", diag.Quote(w.label), quantity.FormatDollars(cost.Round(0)), of)("check what it goes by, its count and the sizes, for a unit or a digit that has slipped; if it is so much, ask for a quote, and write   %s: {quote: $31,000, from: who gave it}", w.label)
		}
	}
}

// doubted reports whether one of some codes has been told.
func (r *reader) doubted(codes ...string) bool {
	return slices.ContainsFunc(r.diags, func(d diag.Diag) bool { return slices.Contains(codes, d.Code) })
}
