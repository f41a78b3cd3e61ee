package pricebook

import (
	"slices"
	"strings"
)

// Ahead reads the tables by age and those items of a book that a text names, with what they
// bring and take, so that whoever reads the text meanwhile finds them read; nothing where
// it names none.
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
	named := b.namedIn(text)
	if len(named) > 0 {
		byAge() // which is asked for first
	}
	for _, name := range slices.Backward(named) { // for whoever reads the text begins at its head
		read(name)
	}
}

// namedIn are the items that a text names, in its order.
func (b *Book) namedIn(text string) (named []string) {
	begin := map[string][]string{} // names by their first word
	for _, name := range b.names[items] {
		first, _, _ := strings.Cut(name, " ")
		begin[first] = append(begin[first], name)
	}
	words := strings.FieldsFunc(strings.ToLower(text), betweenWords)
	for i, w := range words {
		for _, name := range begin[w] {
			if end := i + strings.Count(name, " ") + 1; end <= len(words) && strings.Join(words[i:end], " ") == name {
				named = append(named, name)
			}
		}
	}
	return named
}

// betweenWords reports whether a sign of a deal file parts words.
func betweenWords(r rune) bool {
	switch r {
	case ' ', '\t', '\r', '\n', ',', ':', '[', ']', '{', '}', '"', '\'':
		return true
	}
	return false
}
