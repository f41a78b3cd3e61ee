package pricebook

import (
	"encoding/csv"
	"io"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// A Column is a column of the table of prices.
type Column struct {
	Name, Meaning string
	read          bool // of a table of quotes
}

// Columns are those that WriteTable writes, in order. ReadQuotes reads some of them, by
// name and in any order.
var Columns = []Column{
	{"kind", "product or item", true},
	{"name", "as in the price book", true},
	{"aisle", "of a product", false},
	{"trade", "of an item", false},
	{"pack", "what a product is sold in: box of 10 sq ft, stick of 8 ft, roll of 20.5 in x 33 ft; in quotes, the book's if left out", true},
	{"unit", "what an item's price and hours are for", true},
	{"price", "dollars a pack; for an item, dollars a unit and coat for hired labour alone, or none", true},
	{"hours", "hours of a trained hand for each unit of an item", false},
	{"dated", "the day of the price", true},
	{"source", "who says so", true},
}

// WriteTable writes the prices of all products and all items as CSV with a header. A
// product that is sold by the stick has a row for each length. A text that a spreadsheet
// would take for a formula is led by an apostrophe.
func WriteTable(w io.Writer, b *Book) error {
	c := csv.NewWriter(w)
	header := make([]string, len(Columns))
	for i, col := range Columns {
		header[i] = col.Name
	}
	rows := [][]string{header}
	for _, name := range b.Products() {
		p := b.Product(name)
		row := func(pack string, price decimal.Decimal, dated quantity.Date, source string) {
			rows = append(rows, []string{"product", p.Name, p.Aisle, "", pack, "", plainMoney(price), "", dayOrBlank(dated), source})
		}
		switch {
		case len(p.Sticks) > 0:
			for _, s := range p.Sticks {
				dated, source := p.saidOf(s)
				row("stick of "+plainLength(s.Length), s.Price, dated, source)
			}
		default:
			row(p.SoldIn(), p.Price, p.Dated, p.Source)
		}
	}
	for _, name := range b.Items() {
		it := b.Item(name)
		price := "none"
		if it.Hired.IsPositive() {
			price = plainMoney(it.Hired)
		}
		rows = append(rows, []string{"item", it.Name, "", it.Trade, "", string(it.Unit), price, it.Hours.String(), dayOrBlank(it.Dated), it.HiredSource})
	}
	for _, row := range rows {
		for i := range row {
			row[i] = harmless(row[i])
		}
		if err := c.Write(row); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// SoldIn is what a product is sold in, in words.
func (p *Product) SoldIn() string {
	switch {
	case p.Roll != nil:
		return "roll of " + plainLength(p.Roll.Width) + " x " + plainLength(p.Roll.Length)
	case len(p.Sticks) > 0:
		all := make([]string, len(p.Sticks))
		for i, s := range p.Sticks {
			all[i] = plainLength(s.Length)
		}
		return "sticks of " + strings.Join(all, ", ")
	}
	return p.Pack.String()
}

// plainLength is a length without the marks for feet and inches, which a CSV would
// double: 8 ft, 20.5 in.
func plainLength(l quantity.Length) string {
	if feet := l.Feet(); feet.IsInteger() {
		return feet.String() + " ft"
	}
	return l.Inches().String() + " in"
}

// plainMoney is dollars without a sign and commas, with cents and no less.
func plainMoney(x decimal.Decimal) string {
	if x.Exponent() < -2 {
		return x.String()
	}
	return x.StringFixed(2)
}

func dayOrBlank(d quantity.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}

// formulas are the beginnings that spreadsheets take for a formula, or skip to one.
const formulas = "=+-@\t\r"

// harmless keeps a spreadsheet from working a text out.
func harmless(s string) string {
	if s != "" && strings.ContainsAny(s[:1], formulas) {
		return "'" + s
	}
	return s
}

// harmed takes the apostrophe of harmless away.
func harmed(s string) string {
	if len(s) > 1 && s[0] == '\'' && strings.ContainsAny(s[1:2], formulas) {
		return s[1:]
	}
	return s
}
