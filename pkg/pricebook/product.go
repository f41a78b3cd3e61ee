package pricebook

import (
	"errors"
	"slices"

	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

func asQuantity(err error, to **quantity.Error) bool { return errors.As(err, to) }

// Invented is the source of the starter's prices.
const Invented = "invented starter price"

// starterDate is the day of the starter's prices.
var starterDate = quantity.Date{Year: 2026, Month: 9, Day: 1} // said once in docs/price-book.md

func (r *reader) product(name string, at diag.Pos, body *yaml.Node) *Product {
	p := &Product{Name: name, Pos: at, Dated: starterDate, Source: Invented}
	var priced, packed bool
	roll := func() *Roll {
		if p.Roll == nil {
			p.Roll = &Roll{}
		}
		return p.Roll
	}
	r.keys(body, "the product", map[string]func(*yaml.Node){
		"aisle":     r.text(&p.Aisle),
		"grade":     r.text(&p.Grade),
		"source":    r.text(&p.Source),
		"pack":      parsed(r, quantity.ParsePack, func(x quantity.Pack) { p.Pack, packed = x, true }),
		"price":     func(n *yaml.Node) { priced = true; r.money(&p.Price)(n) },
		"sticks":    func(n *yaml.Node) { packed, priced = true, true; r.sticks(p, n) },
		"roll":      parsed(r, quantity.ParseSize, func(x quantity.Size) { packed = true; roll().Width, roll().Length = x.First.Length, x.Second.Length }),
		"repeat":    parsed(r, quantity.ParseLength, func(x quantity.Length) { roll().Repeat = x }),
		"half drop": r.yesNo(func(x bool) { roll().HalfDrop = x }),
		"tax":       r.yesNo(func(x bool) { p.NoTax = !x }),
		"dated":     parsed(r, quantity.ParseDate, func(x quantity.Date) { p.Dated = x }),
	})
	if !packed {
		r.missing(at, name, "pack", "pack: box of 10 sq ft   or   pack: each")
	}
	if !priced {
		r.missing(at, name, "price", "price: $24.90")
	}
	return p
}

func (r *reader) missing(at diag.Pos, name, key, example string) {
	r.found.Add(diag.Errorf(at, "book-missing", "%q has no %s", name, key).WithHint("add   %s", example))
}

func (r *reader) sticks(p *Product, n *yaml.Node) {
	r.mapping(n, "sticks", func(key, value *yaml.Node) bool {
		var s Stick
		parsed(r, quantity.ParseLength, func(x quantity.Length) { s.Length = x })(key)
		r.money(&s.Price)(value)
		p.Sticks = append(p.Sticks, s)
		return true
	})
	slices.SortFunc(p.Sticks, func(a, b Stick) int { return a.Length.Cmp(b.Length) })
}

// StarterDate is the day of the starter's prices.
func StarterDate() quantity.Date { return starterDate }
