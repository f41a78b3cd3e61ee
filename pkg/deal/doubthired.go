package deal

import (
	"fmt"
	"regexp"
	"slices"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A price of labour looks as if it had the materials in it where these are a fifth or more of the
// two together, and it is over 1.25 times the labour of the book and within 15% of both, or over 1.3
// times it, nearer to both and at most 1.7 times what all of it comes to, with what the work brings of
// its trade: that is as dear as a price of all is anywhere; common practice, no source.
var (
	plainlyLabour = decimal.RequireFromString("1.25")
	muchOfIt      = decimal.RequireFromString("0.2")
	aboutBoth     = decimal.RequireFromString("0.15")
	dearForAll    = decimal.RequireFromString("1.7")
)

// labourSaid are the words in who says a price that tell that it is for the labour alone.
var labourSaid = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)\blabou?r\b`) })

// doubtHired doubts prices of hired labour, of the file and of an own book, that are about what
// labour and materials come to together, for the materials are bought besides.
func (r *reader) doubtHired() {
	var ofBook []*pricebook.Item
	works := r.chosenWorks()
	for _, w := range works {
		switch v, ok := w.member.Given.Look("hired_price"); {
		case !ok || w.quoted() || w.byOwnHands() || w.byTheHour() || r.saysLabour(w):
		case v.Key != "":
			if is, but := r.withMaterials(w.item.Hired, w); is != "" {
				r.say("hired-with-materials", v.Pos, "%s: %s is %s, and %s besides", w.label, v.Text, is, but)("hired is the labour alone: write what that is, or what all of it costs as a quote; if it is the labour alone, add   covers: labour")
			}
		case !slices.Contains(ofBook, w.item):
			ofBook = append(ofBook, w.item)
			r.doubtHiredOfBook(w.item, works)
		}
	}
}

// doubtHiredOfBook does so for the price of an item of an own book, by all work at that price.
func (r *reader) doubtHiredOfBook(it *pricebook.Item, works []*work) {
	base := pricebook.Starter().Item(it.Name)
	if base == nil || base == it || base.Unit != it.Unit || it.HiredSource == pricebook.Invented || labourSaid().MatchString(it.HiredSource) {
		return
	}
	same := slices.DeleteFunc(slices.Clone(works), func(w *work) bool {
		v := w.member.Given.Of("hired_price")
		return w.item != it || v.Key != "" || w.quoted() || w.byOwnHands() || w.byTheHour() || r.saysLabour(w)
	})
	if is, but := r.withMaterials(base.Hired, same...); is != "" {
		r.say("hired-with-materials", it.Pos, "%s: %s for labour is %s, and %s besides", it.Name, perUnitOf(it.Hired, it), is, but)("hired is the labour alone: write what that is; if this is it, say so with its source, e.g.   hired source: %s, labour alone", it.HiredSource)
	}
}

// ownHired reports whether the price of the labour of work is the owner's, so that the file may say
// what it covers.
func (r *reader) ownHired(w *work) bool {
	return !w.byOwnHands() && w.member.Given.Of("own_labour_price").Number.IsPositive()
}

// saysLabour reports whether the file says of work that its price is for the labour.
func (r *reader) saysLabour(w *work) bool {
	g := r.good(w.scope.path + "covers")
	return w.scope.path != "" && g != nil && g.choice == "labour"
}

// withMaterials says what a hired price of work looks like that seems to have its materials in it, with
// the labour at the book's price, and what is paid besides; "" where the price does not look so, or is
// doubted as far from the book's. A price of all may have in it what the work brings of its trade, as
// a quote has.
func (r *reader) withMaterials(book decimal.Decimal, works ...*work) (is, but string) {
	var paid, goods, price decimal.Decimal
	for _, w := range works {
		labour, known := r.worked(w.member, "computed_labour")
		if !known {
			return "", ""
		}
		price = w.member.Given.Of("hired_price").Number
		paid, goods = paid.Add(labour), goods.Add(r.goodsOf(w))
	}
	factor, _ := r.worked(r.deal.Root, "labour_factor")
	labour := book.Mul(factor)
	if !paid.IsPositive() || !price.IsPositive() || !labour.IsPositive() || pricebook.FarFrom(price, book) != "" || price.LessThanOrEqual(labour.Mul(plainlyLabour)) {
		return "", ""
	}
	each := func(x decimal.Decimal) decimal.Decimal { return x.Mul(price).DivRound(paid, 4) }
	along := r.broughtOfTrade(works)
	var held decimal.Decimal
	for _, x := range along {
		labour, _ := r.worked(x.member, "computed_labour")
		held = held.Add(labour).Add(r.goodsOf(x))
	}
	both := labour.Add(each(goods))
	all := both.Add(each(held))
	near := price.Sub(both).Abs().LessThanOrEqual(both.Mul(aboutBoth))
	nearer := price.GreaterThan(labour.Mul(nearOther)) && price.GreaterThan(labour.Add(both).DivRound(two, 4)) && price.LessThanOrEqual(all.Mul(dearForAll))
	if each(goods).LessThan(both.Mul(muchOfIt)) || paid.Mul(both).DivRound(price, 2).LessThan(smallWork) || !near && !nearer {
		return "", ""
	}
	says, it, of := "labour and materials come to", works[0].item, both
	but = "its materials are bought"
	if len(along) > 0 && price.Mul(price).GreaterThan(both.Mul(all)) { // nearer to all
		says, of = "labour and materials come to with what it brings of its trade ("+r.largest(along)+")", all
		but = "these are paid"
	}
	if price.GreaterThan(of.Mul(nearOther)) {
		return "more than " + says + ", " + perUnitOf(of, it), but
	}
	return "about what " + says + ", " + perUnitOf(of, it), but
}

// broughtOfTrade is the hired work that comes along with some work, and is of its trade, with what that
// brings of it.
func (r *reader) broughtOfTrade(works []*work) (out []*work) {
	all := r.chosenWorks()
	for again := true; again; {
		again = false
		for _, x := range all {
			if x.item.Trade != works[0].item.Trade || x.within != nil || x.quoted() || x.byOwnHands() || x.by == "" || slices.Contains(works, x) || slices.Contains(out, x) {
				continue
			}
			if slices.ContainsFunc(x.bringers, func(b brought) bool { return slices.Contains(works, b.by) || slices.Contains(out, b.by) }) {
				out, again = append(out, x), true
			}
		}
	}
	return out
}

// goodsOf is about what the materials of work cost by the model, before whole packs.
func (r *reader) goodsOf(w *work) (goods decimal.Decimal) {
	for _, u := range w.member.In("use") {
		x, _ := r.worked(u, "by_parts")
		goods = goods.Add(x)
	}
	found, _ := r.worked(w.member, "found")
	return goods.Add(found)
}

// perUnitOf is a price of labour in words.
func perUnitOf(x decimal.Decimal, it *pricebook.Item) string {
	per := fmt.Sprint(quantity.Per{Number: x.Round(2), Money: true, Bottom: it.Unit})
	if it.Coats > 1 {
		per += " and coat"
	}
	return per
}
