package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// What a cubic yard of a container costs at least and at most; common practice, no source.
var littlePerYard, muchPerYard, cubicFeet = four, decimal.NewFromInt(150), decimal.NewFromInt(27)

// doubtContainer doubts a container that costs far too little or too much for what it holds, where a digit
// of either has slipped and neither is doubted by itself.
func (r *reader) doubtContainer() {
	const path = "local prices.container."
	holds, costs := r.good(path+"holds"), r.good(path+"costs")
	at := costs
	if at == nil {
		at = holds
	}
	if at == nil || r.doubted("container-unusual") {
		return
	}
	yards, known := r.worked(r.deal.Root, "container_holds")
	price, too := r.worked(r.deal.Root, "container_price")
	if !known || !too || !yards.IsPositive() || !price.IsPositive() {
		return
	}
	yards = yards.Div(cubicFeet)
	each := price.DivRound(yards, 2)
	if each.LessThan(littlePerYard) || each.GreaterThan(muchPerYard) {
		r.say("container-unusual", at.at(), "a container of %s cu yd costs %s, %s a cu yd", quantity.FormatCount(yards, 1), quantity.FormatDollars(price), quantity.FormatMoney(each))("check what it holds and costs; usual is %s to %s for a cu yd; it is used as it stands", quantity.FormatDollars(littlePerYard), quantity.FormatDollars(muchPerYard))
	}
}
