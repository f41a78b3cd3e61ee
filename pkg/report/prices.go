package report

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// invented is said wherever prices of the starter book are shown.
var invented = "Prices of the starter book are invented starters dated " + pricebook.StarterDate().String() + "; put quotes and shelf prices in their place."

// Prices writes what a price book holds: its trades and aisles with counts, and how to
// search it.
func Prices(w io.Writer, b *pricebook.Book, s Style) error {
	p := newPage(w, s)
	products, items := b.Products(), b.Items()
	p.line("%s", p.paint(bold, fmt.Sprintf("The price book: %d items of work and %d products", len(items), len(products))))
	p.text("", invented)
	p.heading("Items of work, by trade")
	p.columns(counted(items, func(n string) string { return b.Item(n).Trade }))
	p.heading("Products, by aisle")
	p.columns(counted(products, func(n string) string { return b.Product(n).Aisle }))
	p.heading("To look something up")
	for _, how := range [][2]string{
		{"ledgerboard prices tile floor", "the one of that name, whole"},
		{"ledgerboard prices --list tile floor", "all with both words"},
		{"ledgerboard prices plumbing", "a trade or an aisle"},
		{"ledgerboard prices --book mine.yaml", "your own book over it"},
		{"ledgerboard prices --csv", "all of it as a table"},
	} {
		p.line("  %-37s  %s", how[0], how[1])
	}
	return p.flush()
}

// A tally is how many there are of a kind.
type tally struct {
	name string
	n    int
}

func counted(names []string, of func(string) string) []tally {
	var out []tally
	for _, n := range names {
		kind := of(n)
		i := slices.IndexFunc(out, func(t tally) bool { return t.name == kind })
		if i < 0 {
			out = append(out, tally{kind, 0})
			i = len(out) - 1
		}
		out[i].n++
	}
	slices.SortFunc(out, func(a, b tally) int { return cmp.Compare(a.name, b.name) })
	return out
}

// columns writes tallies in three columns, read downwards.
func (p *page) columns(all []tally) {
	rows := (len(all) + 2) / 3
	for i := range rows {
		line := ""
		for k := i; k < len(all); k += rows {
			line += fmt.Sprintf("  %-19s%4d ", cut(all[k].name, 19), all[k].n)
		}
		p.line("%s", line)
	}
}

const (
	foundItem    = "%-30s %-11s %-15s %6s %14s"
	foundProduct = "%-36s %-12s %-19s %10s"
)

// Found writes the products and items of a search, one line each.
func Found(w io.Writer, b *pricebook.Book, products, items []string, s Style) error {
	p := newPage(w, s)
	if len(items) > 0 {
		p.line("%s", p.paint(dim, fmt.Sprintf(foundItem, "item of work", "trade", "measure", "hours", "hired")))
		for _, n := range items {
			it := b.Item(n)
			p.row(30, n, fmt.Sprintf(" %-11s %-15s %6s %14s", cut(it.Trade, 11), cut(it.Measure, 15), hoursEach(it), hiredEach(it)))
		}
	}
	if len(products) > 0 {
		if len(items) > 0 {
			p.line("")
		}
		p.line("%s", p.paint(dim, fmt.Sprintf(foundProduct, "product", "aisle", "sold in", "price")))
		for _, n := range products {
			prod := b.Product(n)
			pack, price := soldIn(prod)
			p.row(36, n, fmt.Sprintf(" %-12s %-19s %10s", cut(prod.Aisle, 12), cut(pack, 19), price))
		}
	}
	p.line("")
	p.text("", "ledgerboard prices NAME shows one whole. Hours and hired prices are for one unit of the measure. "+invented)
	return p.flush()
}

// row writes a name and what belongs to it; a long name stands alone above.
func (p *page) row(width int, name, rest string) {
	if utf8.RuneCountInString(name) > width {
		p.line("%s", name)
		name = ""
	}
	p.line("%s%s", pad(name, width), rest)
}

func hoursEach(it *pricebook.Item) string {
	if it.Hours.IsZero() {
		return "none"
	}
	return it.Hours.String()
}

func hiredEach(it *pricebook.Item) string {
	if it.Hired.IsZero() {
		return "none"
	}
	if it.Unit == "each" {
		return unitMoney(it.Hired) + " each"
	}
	return unitMoney(it.Hired) + "/" + string(it.Unit)
}

// unitMoney prints a price with its cents, and with less where it has less.
func unitMoney(x decimal.Decimal) string {
	if x.Exponent() < -2 {
		return "$" + x.String()
	}
	return quantity.FormatMoney(x)
}

// soldIn is the pack of a product and its price, of the shortest stick.
func soldIn(p *pricebook.Product) (pack, price string) {
	if len(p.Sticks) > 0 {
		return "sticks from " + p.Sticks[0].Length.String(), unitMoney(p.Sticks[0].Price)
	}
	return p.SoldIn(), unitMoney(p.Price)
}
