package pricebook

import (
	"slices"
	"strings"
)

// Named returns the product or the item of a name, whatever its case and blanks; nil
// for what there is not.
func (b *Book) Named(name string) (*Product, *Item) {
	return b.Product(even(name)), b.Item(even(name))
}

// Search returns the names of the products and of the items in whose name, aisle, trade,
// line of work or part of the house that they make new every word or a synonym of it occurs, in the order of the book; who
// works in a trade stands for all of the trade. No words fit all.
func (b *Book) Search(words string) (products, items []string) {
	wanted := telling(strings.Fields(even(words)))
	fits := func(trade string, texts ...string) bool {
		all := even(strings.Join(append(texts, trade), " "))
		return !slices.ContainsFunc(wanted, func(w string) bool { return !occurs(w, all) && !worksIn(w, trade) })
	}
	for _, name := range b.Products() {
		if fits(b.Product(name).Aisle, name) {
			products = append(products, name)
		}
	}
	for _, name := range b.Items() {
		if it := b.Item(name); fits(it.Trade, name, it.Work, MadeNew(it)) {
			items = append(items, name)
		}
	}
	return products, items
}

// LookFor is the command that shows what there is near a name: by the last of its words that finds
// something.
func (b *Book) LookFor(name string) string {
	for _, word := range slices.Backward(telling(strings.Fields(even(name)))) {
		if products, items := b.Search(word); len(products)+len(items) > 0 {
			return "ledgerboard prices " + word
		}
	}
	return "ledgerboard prices"
}

// ItemsWith returns the names of the items in which every word stands whole, one or many,
// or a synonym of it, in the order of the book: what someone means who has the words right
// and not the name.
func (b *Book) ItemsWith(words string) []string { return withAll(words, b.Items()) }

// ProductsWith returns the names of the products likewise.
func (b *Book) ProductsWith(words string) []string { return withAll(words, b.Products()) }

func withAll(words string, names []string) (out []string) {
	wanted := telling(strings.Fields(even(words)))
	for _, name := range names {
		if !slices.ContainsFunc(wanted, func(w string) bool { return !isWord(w, name) }) {
			out = append(out, name)
		}
	}
	return out
}

// TakenBy returns the names of the items that take a product.
func (b *Book) TakenBy(product string) []string {
	var out []string
	for _, name := range b.Items() {
		if slices.ContainsFunc(b.Item(name).Uses, func(u Use) bool { return u.Product == product }) {
			out = append(out, name)
		}
	}
	return out
}

// BroughtBy returns the names of the items that bring an item along.
func (b *Book) BroughtBy(item string) []string {
	var out []string
	for _, name := range b.Items() {
		if slices.ContainsFunc(b.Item(name).Brings, func(c Companion) bool { return c.Item == item }) {
			out = append(out, name)
		}
	}
	return out
}

// Trades returns the names of the trades of all items, in order.
func (b *Book) Trades() []string {
	var out []string
	for ; b != nil; b = b.below {
		for _, e := range b.items {
			if e.trade != "" {
				out = append(out, e.trade)
			} else {
				out = append(out, e.item.Trade)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Own reports whether a book of the owner's has a say in a product or an item.
func (b *Book) Own(name string) bool {
	for ; b != nil && b.below != nil; b = b.below {
		if b.own(products, name) != nil || b.own(items, name) != nil {
			return true
		}
	}
	return false
}
