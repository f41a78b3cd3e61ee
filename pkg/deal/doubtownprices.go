package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// fewHours are so few that the file may well say a multiple of the price book's, or a
// part; common practice, no source.
var fewHours = decimal.NewFromInt(8)

// doubtOwnPrices looks for prices and hours that the file gives to work and that are far
// from the price book's.
func (r *reader) doubtOwnPrices() {
	for _, w := range r.chosenWorks() {
		if w.scope.path == "" {
			continue
		}
		if g, p := r.good(w.scope.path+"price"), r.packOf(w.scope); g != nil && p != nil {
			if words := pricebook.FarFrom(g.number, p.Price); words != "" {
				r.say("price-far", g.at(), "%s: %s a pack of %s (%s) is %s the price book's %s", w.label, g.node.text, p.Name, p.SoldIn(), words, quantity.FormatMoney(p.Price))("%s", pricebook.FarHint)
			}
		}
		if v, ok := w.member.Given.Look("hired_price"); ok && v.Key != "" {
			if words := pricebook.FarFrom(v.Number, w.item.Hired); words != "" {
				r.say("price-far", v.Pos, "%s: %s is %s the price book's %s", w.label, v.Text, words, quantity.Per{Number: w.item.Hired, Money: true, Bottom: w.item.Unit})("%s", pricebook.FarHint)
			}
		}
		if g := r.good(w.scope.path + "hours"); g != nil {
			r.doubtHours(w, g)
		}
	}
}

func (r *reader) doubtHours(w *work, g *reading) {
	all, known := r.worked(w.member, "quantity")
	hours, done := r.worked(w.member, "trade_hours")
	coats, _ := r.worked(w.member, "coats")
	book := all.Mul(coats).Mul(w.item.Hours).Add(w.item.SetUp)
	if !known || !done || decimal.Max(hours, book).LessThan(fewHours) {
		return
	}
	if words := pricebook.FarFrom(hours, book); words != "" {
		r.say("hours-far", g.at(), "%s: %s hours of a trained hand are %s the %s of the price book", w.label, short(hours), words, short(book))("check it for a point or nought that has slipped; it is used as it stands")
	}
}
