package pricebook

import (
	"cmp"
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
)

// nearNames is the most names that Near returns.
const nearNames = 5

// Near returns at most a few names that are close to words: where each of them stands
// somewhere in the book, those with the rarest; else those that they are a slip of.
func (b *Book) Near(words string) []string {
	wanted := telling(strings.Fields(even(words)))
	names := slices.Concat(b.Items(), b.Products())
	weight := map[string]float64{}
	for _, w := range wanted {
		with := b.withWord(w)
		if len(with) == 0 {
			return diag.Near(strings.Join(wanted, " "), names)
		}
		for _, name := range with {
			x := 1 / float64(len(with)) // a rare word says more
			if !isWord(w, name) {
				x /= 2 // it stands around the name
			}
			weight[name] += x
		}
	}
	names = slices.DeleteFunc(names, func(name string) bool { return weight[name] == 0 })
	slices.SortStableFunc(names, func(x, y string) int { return cmp.Compare(weight[y], weight[x]) })
	return names[:min(nearNames, len(names))]
}

// ItemsNear returns at most a few names of items that have some of the words, those of the rarest
// first, but before them one that says no more than the words; none where the book does not know
// the last word, which tells what a thing is.
func (b *Book) ItemsNear(words string) []string {
	wanted := telling(strings.Fields(even(words)))
	if len(wanted) == 0 || len(b.withWord(wanted[len(wanted)-1])) == 0 {
		return nil
	}
	wanted = slices.DeleteFunc(wanted, func(w string) bool { return len(b.withWord(w)) == 0 })
	more := func(name string) int {
		if slices.ContainsFunc(strings.Fields(name), func(word string) bool { return !slices.Contains(wanted, word) }) {
			return 1
		}
		return 0
	}
	near := slices.DeleteFunc(b.Near(strings.Join(wanted, " ")), func(name string) bool { return b.Item(name) == nil })
	slices.SortStableFunc(near, func(x, y string) int { return cmp.Compare(more(x), more(y)) })
	return near
}

// withWord are the items and the products in whose name, line of work, trade or aisle a
// word stands whole.
func (b *Book) withWord(word string) (out []string) {
	for _, name := range b.Items() {
		if it := b.Item(name); isWord(word, even(strings.Join([]string{name, it.Work, it.Trade}, " "))) || worksIn(word, it.Trade) {
			out = append(out, name)
		}
	}
	for _, name := range b.Products() {
		if isWord(word, even(name+" "+b.Product(name).Aisle)) {
			out = append(out, name)
		}
	}
	return out
}

// isWord reports whether a word stands whole in a text, one or many, or a synonym of it.
func isWord(word, text string) bool { return hasWord(text, single(word)) || occursAs(word, text) }
