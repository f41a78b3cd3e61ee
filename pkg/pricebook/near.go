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
	if !b.Knows(words) {
		return diag.Near(strings.Join(wanted, " "), names)
	}
	return firstFew(b.ranked(wanted, names))
}

// Knows reports whether each of some words stands somewhere in the book.
func (b *Book) Knows(words string) bool {
	return !slices.ContainsFunc(telling(strings.Fields(even(words))), func(w string) bool { return len(b.withWord(w)) == 0 })
}

func firstFew(names []string) []string { return names[:min(nearNames, len(names))] }

// ranked are the names that have some of the words, those with the rarest first.
func (b *Book) ranked(wanted, names []string) []string {
	weight := map[string]float64{}
	for _, w := range wanted {
		with := b.withWord(w)
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
	return names
}

// ItemsNear returns at most a few names of items that have some of the words, those of the rarest
// first, but before them one that says no more than the words, and behind them those around whose name
// alone a word stands; none where the book does not know the last word, which tells what a thing is.
func (b *Book) ItemsNear(words string) []string {
	wanted := telling(strings.Fields(even(words)))
	if len(wanted) == 0 || len(b.withWord(wanted[len(wanted)-1])) == 0 {
		return nil
	}
	wanted = slices.DeleteFunc(wanted, func(w string) bool { return len(b.withWord(w)) == 0 })
	more := func(name string) int {
		switch {
		case !slices.ContainsFunc(wanted, func(w string) bool { return isWord(w, name) }):
			return 2
		case slices.ContainsFunc(strings.Fields(name), func(word string) bool { return !slices.Contains(wanted, word) }):
			return 1
		}
		return 0
	}
	near := b.ranked(wanted, b.Items())
	slices.SortStableFunc(near, func(x, y string) int { return cmp.Compare(more(x), more(y)) })
	return firstFew(near)
}

// Foremost puts first, of names of items that have all of some words, those that end with the last of
// them, which tells what a thing is, and of these what makes one: kitchen cabinets before strip cabinets,
// and both before cabinet pulls.
func (b *Book) Foremost(words string, names []string) []string {
	wanted := strings.Fields(even(words))
	last := wanted[len(wanted)-1]
	rank := func(name string) (n int) {
		has := strings.Fields(name)
		ends := func(with int) bool { return isWord(last, strings.Join(has[max(0, len(has)-with):], " ")) }
		switch {
		case ends(1): // one word
		case ends(2): // as wall board
			n = 2
		default:
			n = 4
		}
		if b.Item(name).Thing() == "" {
			n++
		}
		return n
	}
	names = slices.Clone(names)
	slices.SortStableFunc(names, func(x, y string) int { return cmp.Compare(rank(x), rank(y)) })
	return names
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
