package pricebook

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
)

// A Change is what the quotes for one thing change of a book.
type Change struct {
	Name  string
	Pos   diag.Pos // of the first quote
	Lines []string // what was and what is, a line for each price
	Far   string   // that the new price is far from the starter book's, or ""; see Doubt
	hint  string   // what to do then
	// Alike are products whose names begin with that of the item, where the table does
	// not say that the item is meant.
	Alike []string
}

// Changes are what quotes change from the book that they were read by to the one that
// holds them, in the order of LayQuotes.
func Changes(quotes []Quote, from, to *Book) []Change {
	var out []Change
	for _, group := range byName(quotes) {
		if group = onlyNews(group, from); len(group) == 0 {
			continue
		}
		name := group[0].Name
		if group[0].Item {
			c := Change{Name: name, Pos: group[0].Pos, Lines: []string{labourChange(from.Item(name), to.Item(name))}, Far: to.Item(name).Far(), hint: to.Item(name).FarHint()}
			if !group[0].Kinded {
				c.Alike = to.Item(name).alike(to)
			}
			out = append(out, c)
			continue
		}
		c := Change{Name: name, Pos: group[0].Pos, Far: to.Product(name).Far(), hint: to.Product(name).FarHint()}
		for _, q := range group {
			c.Lines = append(c.Lines, productChange(q, from.Product(name), to.Product(name)))
		}
		out = append(out, c)
	}
	return out
}

// Doubt is the doubt of a price that is far from the starter book's.
func (c Change) Doubt() (doubt diag.Diag, is bool) {
	return diag.Warnf(c.Pos, "price-far", "%s: %s", c.Name, c.Far).WithHint("%s", c.hint), c.Far != ""
}

func labourChange(was, is *Item) string {
	price := func(it *Item) string {
		if it.Hired.IsZero() {
			return "none"
		}
		return "$" + plainMoney(it.Hired)
	}
	unit := " per " + string(is.Unit)
	if is.Unit == "each" {
		unit = " each"
	}
	if is.Coats > 1 {
		unit += fmt.Sprintf(andCoat+", of which there are %d", is.Coats)
	}
	return is.Name + ": hired labour " + moved(price(was), price(is), unit)
}

func productChange(q Quote, was, is *Product) string {
	if q.Stick != nil {
		before, soldIn := "not sold", "a stick of "+plainLength(*q.Stick)
		if s := was.stick(*q.Stick); s != nil {
			before = dollarText(s.Price)
		}
		return is.Name + ": " + moved(before, dollarText(q.Price), ", "+soldIn)
	}
	if was.SoldIn() == is.SoldIn() {
		return is.Name + ": " + moved(dollarText(was.Price), dollarText(is.Price), sold(is))
	}
	of := func(p *Product) string { return dollarText(p.Price) + sold(p) }
	return is.Name + ": " + moved(of(was), of(is), "")
}

// sold is what a price of a product is for.
func sold(p *Product) string {
	if in := p.SoldIn(); in != "each" {
		return ", " + in
	}
	return " each"
}

// moved is a price that was and one that is, with what both are for behind them.
func moved(was, is, per string) string {
	if was == is {
		return is + per + " as before, of another day or source"
	}
	return fmt.Sprintf("%s -> %s", was, is) + per
}

// alike are the products that a price of an item may be meant for: the first that it takes,
// where that has all words of the item's name, be it as the end of one (handrail, stair rail);
// else those of the book whose names begin with it.
func (it *Item) alike(b *Book) []string {
	if len(it.Uses) > 0 {
		product := strings.Fields(it.Uses[0].Product)
		lacks := func(word string) bool {
			return !slices.ContainsFunc(product, func(p string) bool { return strings.HasSuffix(word, p) })
		}
		if !slices.ContainsFunc(strings.Fields(it.Name), lacks) {
			return []string{it.Uses[0].Product}
		}
	}
	return slices.DeleteFunc(b.Products(), func(n string) bool { return !strings.HasPrefix(n, it.Name+" ") })
}
