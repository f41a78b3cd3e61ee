package pricebook

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
)

// Apart are the products and the items of a book of the owner's that the books below do not
// have and that none of its own items takes or brings: only a deal can take them by name.
func (b *Book) Apart() (products, items []string) {
	within := map[string]bool{}
	for layer := b; layer.below != nil; layer = layer.below {
		for _, name := range layer.names[1] {
			it := b.Item(name)
			for _, u := range it.Uses {
				within[u.Product] = true
			}
			for _, c := range it.Brings {
				within[c.Item] = true
			}
		}
	}
	for layer := b; layer.below != nil; layer = layer.below {
		for _, name := range layer.names[0] {
			if !within[name] && layer.below.Product(name) == nil {
				products = append(products, name)
			}
		}
		for _, name := range layer.names[1] {
			if !within[name] && layer.below.Item(name) == nil {
				items = append(items, name)
			}
		}
	}
	return products, items
}

// Meant are the names of the starter book among some that another name is probably meant
// for: a slip of the pen, the same words in another order, or one word more.
func (b *Book) Meant(name string, among []string) []string {
	among = slices.DeleteFunc(slices.Clone(among), b.Own)
	var out []string
	if near, ok := diag.Nearest(name, among); ok {
		out = append(out, near)
	}
	split := func(name string) []string { return telling(strings.Fields(strings.ReplaceAll(even(name), "-", " "))) }
	words := split(name)
	for _, other := range among {
		theirs := split(other)
		missing := func(w string) bool { return !isWord(w, name) }
		if more := len(words) - len(theirs); more >= 0 && more <= 1 && !slices.ContainsFunc(theirs, missing) && !slices.Contains(out, other) {
			out = append(out, other)
		}
	}
	return out[:min(nearNames, len(out))]
}
