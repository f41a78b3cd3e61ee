package pricebook_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// FuzzRead reads any text as an owner's book: it ends, every mistake has its place and a
// way out, and a book without one can be used.
func FuzzRead(f *testing.F) {
	for _, m := range mistakes {
		f.Add(m.text)
	}
	for _, text := range []string{below, entire, "products: {oak strip: {price: $101.50}}", "a: &a {b: *a}", "? [a]\n: b", "items: {<<: {a: b}}"} {
		f.Add(text)
	}
	over, _ := pricebook.Read("below.yaml", below, nil)
	f.Fuzz(func(t *testing.T, text string) {
		b, found := pricebook.Read("mine.yaml", text, over)
		for _, d := range found {
			require.NotEmpty(t, d.Message)
			require.NotEmpty(t, d.Hint, d.Message)
			require.Positive(t, d.Pos.Line, d.Message)
		}
		if len(found) == 0 {
			usable(t, b)
		}
	})
}

// usable asks a sound book for all that it has.
func usable(t *testing.T, b *pricebook.Book) {
	for _, name := range b.Products() {
		p := b.Product(name)
		require.NotEmpty(t, p.SoldIn(), name)
		require.False(t, p.Price.IsNegative(), name)
	}
	for _, name := range b.Items() {
		it := b.Item(name)
		require.NotNil(t, pricebook.MeasureNamed(it.Measure), name)
		for _, u := range it.Uses {
			require.NotNil(t, b.Product(u.Product), u.Product)
		}
		for _, c := range it.Brings {
			require.NotNil(t, b.Item(c.Item), c.Item)
			c.Comes(pricebook.Place{})
		}
	}
}

// FuzzReadQuotes reads any text as a table of quotes; what is read without a mistake
// makes a book that is read without one, and in which the quotes say nothing new.
func FuzzReadQuotes(f *testing.F) {
	for _, m := range wrongQuotes {
		f.Add(m.text)
	}
	f.Add("name,price,pack,dated,source\noak strip,5,box of 24 sq ft,2026-10-02,\"a, b: #c\"\nlay oak,none,,,'=1\n")
	f.Add("kind,name,pack,price\nproduct,oak base,stick of 8 ft,5\nproduct,vine paper,roll of 1 ft x 2 ft,6\n")
	over, _ := pricebook.Read("below.yaml", below, nil)
	f.Fuzz(func(t *testing.T, text string) {
		quotes, _, found := pricebook.ReadQuotes("q.csv", text, over)
		for _, d := range found {
			require.NotEmpty(t, d.Hint, d.Message)
			require.Positive(t, d.Pos.Line, d.Message)
		}
		if len(found) > 0 {
			return
		}
		book, _, err := pricebook.LayQuotes("", quotes, over, "")
		require.NoError(t, err)
		mine, wrong := pricebook.Read("mine.yaml", book, over)
		require.Empty(t, wrong, book)
		for _, q := range quotes {
			if q.Item {
				require.True(t, q.Price.Equal(mine.Item(q.Name).Hired), book)
				continue
			}
			if q.Stick == nil {
				require.True(t, q.Price.Equal(mine.Product(q.Name).Price), book)
			}
		}
	})
}
