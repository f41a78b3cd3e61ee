package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// doubtApart doubts a product or an item of the owner's price book that no work takes, where
// the work takes one of the starter book of nearly that name: its price would count for
// nothing without a word.
func (r *reader) doubtApart() {
	ownProducts, ownItems := r.prices().Apart()
	if len(ownProducts)+len(ownItems) == 0 {
		return
	}
	var products, items []string
	for _, m := range r.deal.Root.In("product") {
		products = append(products, m.Label)
	}
	for _, p := range r.plans {
		for _, w := range p.works {
			items = append(append(items, w.item.Name), w.includes()...)
			for _, prod := range w.products {
				products = append(products, prod.Name)
			}
		}
	}
	for _, all := range []*[]string{&products, &items} {
		slices.Sort(*all)
		*all = slices.Compact(*all)
	}
	for _, name := range ownProducts {
		if near := r.prices().Meant(name, products); len(near) > 0 && !slices.Contains(products, name) {
			r.say("own-name-near", r.prices().Product(name).Pos, "no work takes %s of the own book; it takes %s", diag.Quote(name), quotedAll(near))("if that is what you buy, call it so in the own book; or let work take it, with   product: %s", name)
		}
	}
	for _, name := range ownItems {
		if near := r.prices().Meant(name, items); len(near) > 0 && !slices.Contains(items, name) {
			r.say("own-name-near", r.prices().Item(name).Pos, "no room has the work %s of the own book; there is %s", diag.Quote(name), quotedAll(near))("if that is the work meant, call it so in the own book, or write   %s   in the deal", name)
		}
	}
}

// doubtOwnTrades doubts a trade of the owner's price book that is nearly one of the starter
// book, which has hours, rates and permits of its own; one that is unlike any is hers to have.
func (r *reader) doubtOwnTrades() {
	if r.prices() == pricebook.Starter() {
		return
	}
	known := pricebook.Starter().Trades()
	told := []string{}
	for _, name := range r.prices().Items() {
		if !r.prices().Own(name) {
			continue
		}
		it := r.prices().Item(name)
		if slices.Contains(known, it.Trade) || slices.Contains(told, it.Trade) {
			continue
		}
		if near, ok := nearTrade(it.Trade, known); ok {
			told = append(told, it.Trade)
			r.say("own-name-near", it.Pos, "the trade of %s in the own book is %s; there is %s", diag.Quote(name), diag.Quote(it.Trade), diag.Quote(near))("if that is the trade meant, write   trade: %s   ; else it is a trade of its own", near)
		}
	}
}

func quotedAll(names []string) string {
	var out []string
	for _, n := range names {
		out = append(out, diag.Quote(n))
	}
	return strings.Join(out, ", ")
}
