package pricebook

import "strings"

// Ahead reads those items of a book that a text names, with what they bring and take, and
// the tables by age if there are any, so that whoever reads the text meanwhile finds them read.
func (b *Book) Ahead(text string) {
	seen := map[string]bool{}
	var read func(name string)
	read = func(name string) {
		it := b.Item(name)
		if it == nil || seen[name] {
			return
		}
		seen[name] = true
		for _, u := range it.Uses {
			b.Product(u.Product)
		}
		for _, c := range it.Brings {
			read(c.Item)
		}
	}
	text = even(text)
	for _, name := range b.names[items] {
		if strings.Contains(text, name) {
			read(name)
		}
	}
	if len(seen) > 0 {
		byAge()
	}
}
