package pricebook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// Invented is the source of the starter's prices, Owners of an owner's that name none.
const (
	Invented = "invented starter price"
	Owners   = "your own price book"
)

// starterDate is the day of the starter's prices.
var starterDate = quantity.Date{Year: 2026, Month: 9, Day: 1} // said once in docs/price-book.md

// StarterDate is the day of the starter's prices.
func StarterDate() quantity.Date { return starterDate }

// productKeys are the keys of a product.
var productKeys = []keyOf[*Product]{
	{Key{"aisle", "tile", "nothing", "where it is found in a shop; `buy` lists by it"}, func(r *reader, p *Product) func(*node) { return r.text(&p.Aisle) }},
	{Key{"pack", "box of 10 sq ft", "*needed*, or `sticks` or `roll`", "what it is sold in: a word, how much is in it and the unit; or a unit alone, as in `each` or `day`"},
		func(r *reader, p *Product) func(*node) {
			return parsed(r, quantity.ParsePack, func(x quantity.Pack) { p.Pack = x })
		}},
	{Key{"price", "$24.90", "*needed*, but with `sticks`", "what one pack costs before sales tax"}, func(r *reader, p *Product) func(*node) { return func(n *node) { r.price(p, n) } }},
	{Key{"sticks", "{8 ft: $8.40, 12 ft: $12.60}", "it is sold by the pack", "instead of pack and price: the lengths it is sold in and what one of each costs, or `starter` for the price of the starter book; a cut list says how many"},
		func(r *reader, p *Product) func(*node) { return func(n *node) { r.sticks(p, n) } }},
	{Key{"roll", "20.5 in x 33 ft", "it is sold by the pack", "instead of pack: width and length of a roll of wallpaper, hung in drops"},
		func(r *reader, p *Product) func(*node) {
			return parsed(r, quantity.ParseSize, func(x quantity.Size) { p.roll().Width, p.roll().Length = x.First.Length, x.Second.Length })
		}},
	{Key{"repeat", "21 in", "no pattern", "after what length the pattern of a roll comes again"}, func(r *reader, p *Product) func(*node) {
		return parsed(r, quantity.ParseLength, func(x quantity.Length) { p.roll().Repeat = x })
	}},
	{Key{"half drop", "yes", "no", "whether neighbouring drops are shifted by half a repeat"}, func(r *reader, p *Product) func(*node) {
		return r.yesNo(func(x bool) { p.roll().HalfDrop = x })
	}},
	{Key{"grade", "standard", "nothing", "builder, standard or better"}, func(r *reader, p *Product) func(*node) { return r.text(&p.Grade) }},
	{Key{"tax", "no", "yes", "whether sales tax is charged on it"}, func(r *reader, p *Product) func(*node) { return r.yesNo(func(x bool) { p.NoTax = !x }) }},
	{Key{"dated", "2026-09-14", "unknown; 2026-09-01 in the starter book", "the day of the price"}, func(r *reader, p *Product) func(*node) {
		return parsed(r, quantity.ParseDate, func(x quantity.Date) { p.Dated = x })
	}},
	{Key{"source", "Fern Street Supply", "your own price book; in the starter book, an invented starter price", "who says so"},
		func(r *reader, p *Product) func(*node) { return r.text(&p.Source) }},
}

// roll is how it is sold as wallpaper; a copy, for the one of the book below stays.
func (p *Product) roll() *Roll {
	if p.Roll == nil {
		p.Roll = &Roll{}
	}
	return p.Roll
}

// product reads a product over the one of the same name in the book below, or nil,
// from which it has what it does not say.
func (r *reader) product(name string, at diag.Pos, body *node, base *Product) *Product {
	p := &Product{}
	r.sold = nil
	if base != nil {
		*p = *base
		r.sold = base.Sticks
		if base.Roll != nil {
			roll := *base.Roll
			p.Roll = &roll
		}
	}
	p.Name, p.Pos = name, at
	priced := has(body, "price") || has(body, "sticks")
	switch {
	case r.starter:
		p.Dated, p.Source = starterDate, Invented
	case priced || base == nil: // a new price has its own day and source
		p.Dated, p.Source = quantity.Date{}, Owners
	}
	if has(body, "sticks") {
		p.Pack, p.Roll, p.Price, p.Sticks = quantity.Pack{}, nil, decimal.Decimal{}, nil
	}
	if has(body, "pack") {
		p.Roll, p.Sticks = nil, nil
	}
	if has(body, "roll") {
		p.Pack, p.Sticks = quantity.Pack{}, nil
	}
	packFirst := body
	if !r.starter {
		packFirst = first(body, "pack") // of which the price is told
	}
	entryKeys(r, packFirst, "the product", productKeys, p)
	if !r.starter && p.Source != Invented && !has(body, "sticks") { // who says so is of the owner's place
		p.Sticks = slices.Clone(p.Sticks)
		for i := range p.Sticks {
			p.Sticks[i].Own = true
		}
	}
	if !r.starter && has(body, "sticks") {
		p.nameStarters()
	}
	r.whole(p, base, at, body)
	return p
}

// whole refuses a product that is not sold in anything or has no price for it, and one
// that is sold in another unit than the work that the book below takes it for.
func (r *reader) whole(p, base *Product, at diag.Pos, body *node) {
	given := func(key string) bool { return has(body, key) }
	packed := given("pack") || given("roll") || given("sticks")
	switch {
	case given("sticks") && (given("pack") || given("roll") || given("price")) || given("pack") && given("roll"):
		r.found.Add(diag.Errorf(at, "book-two-ways", "%q is sold in two ways", p.Name).WithHint("keep one: pack and price, roll and price, or sticks, each with its price"))
		return
	case base == nil && !packed:
		r.missing(at, p.Name, "pack", "pack: box of 10 sq ft   or   pack: each")
	case len(p.Sticks) > 0 && given("price"):
		r.missing(at, p.Name, "price for each stick", "sticks: {8 ft: $8.40}   in place of the price")
	case p.Roll != nil && !(p.Roll.Length.Feet().IsPositive() && p.Roll.Width.Feet().IsPositive()):
		r.missing(at, p.Name, "roll of any size", "roll: 20.5 in x 33 ft")
	}
	if !given("price") && !given("sticks") && (base == nil || packed) {
		r.missing(at, p.Name, "price", "price: $24.90   , for a pack has the price it is sold at")
	}
	if base != nil && packed && p.Unit() != "" && p.Unit() != base.Unit() { // without, it is refused already
		r.found.Add(diag.Errorf(at, "book-bad-unit", "%q is sold by the %s, but by the %s in the book below", p.Name, p.SoldBy(), base.SoldBy()).
			WithHint("the work that takes it counts on the %s; give it a name of its own", base.SoldBy()))
	}
}

// price reads what one pack costs; a price of each unit in it is told as one of the pack.
func (r *reader) price(p *Product, n *node) {
	var x quantity.Per
	if strings.ContainsAny(n.Value, " /") { // most have no unit, and are thousands
		x, _ = quantity.ParsePer(n.Value)
	}
	if !x.Money || x.Top != "" {
		r.money(&p.Price)(n)
		return
	}
	tell := r.wrong(n, "book-bad-value", "%q has a unit; the price is that of one pack", n.Value)
	switch {
	case p.Pack.Word != "" && x.Bottom == p.Pack.Unit:
		tell("write   price: %s   for the %s", quantity.FormatMoney(x.Number.Mul(p.Pack.Number)), p.Pack)
	case p.Pack.Word != "" && x.Bottom == "each":
		tell("write   price: %s   for the %s", quantity.FormatMoney(x.Number), p.Pack)
	default:
		tell("write   price: $24.90   , what one pack costs")
	}
}

// Unit is what a product is counted in; wallpaper is counted in rolls.
func (p *Product) Unit() quantity.Unit {
	switch {
	case p.Roll != nil:
		return "roll"
	case len(p.Sticks) > 0:
		return "ft"
	}
	return p.Pack.Unit
}

// SoldBy is what a product is counted in as said behind "by the": sq ft, piece, roll.
func (p *Product) SoldBy() string { return p.Unit().One() }

// has reports whether a group has a key.
func has(n *node, key string) bool {
	for i := 0; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
		if n.Content[i].Value == key {
			return true
		}
	}
	return false
}

// missing is about a key that is needed; a name that is nearly one of the book below was
// probably meant for it, from which it would have the key.
func (r *reader) missing(at diag.Pos, name, key, example string) {
	d := diag.Errorf(at, "book-missing", "%q has no %s", name, key)
	if near, ok := diag.Nearest(name, r.below.all(r.kind)); ok && near != name {
		r.found.Add(d.WithHint("did you mean %q? what an entry does not say is taken from the one of its name; or add   %s", near, example))
		return
	}
	r.found.Add(d.WithHint("add   %s", example))
}

const writeSticks = "write   sticks: {8 ft: $8.40, 12 ft: $12.60}"

func (r *reader) sticks(p *Product, n *node) {
	switch {
	case n.Kind != yaml.MappingNode:
		r.wrong(n, "book-want-group", "sticks is not a group of lengths with their prices")(writeSticks)
		return
	case len(n.Content) == 0:
		r.wrong(n, "book-want-value", "no stick has a price")(writeSticks)
		return
	}
	r.mapping(n, "sticks", nil, func(key, value *node) bool {
		var s Stick
		parsed(r, someLength, func(x quantity.Length) { s.Length = x })(key)
		if s.Own = !r.starter; s.Own && value.Value == starterStick {
			s.Own = false
			r.starterPrice(p, &s, value)
		} else {
			r.money(&s.Price)(value)
		}
		p.Sticks = append(p.Sticks, s)
		return true
	})
	slices.SortFunc(p.Sticks, func(a, b Stick) int { return a.Length.Cmp(b.Length) })
}

// starterStick stands in place of the price of a stick that keeps the starter book's.
const starterStick = "starter"

func (r *reader) starterPrice(p *Product, s *Stick, n *node) {
	i := slices.IndexFunc(r.sold, func(x Stick) bool { return x.Length.Cmp(s.Length) == 0 })
	if i < 0 {
		r.wrong(n, "book-want-value", "the starter book has no %s of %s", p.Name, plainLength(s.Length))("write what one costs, e.g. $12.60")
		return
	}
	s.Price, s.Own = r.sold[i].Price, r.sold[i].Own
}

// nameStarters says of lengths at starter prices that nobody quoted these.
func (p *Product) nameStarters() {
	starter := func(s Stick) bool { return !s.Own }
	switch {
	case !slices.ContainsFunc(p.Sticks, starter) || strings.HasSuffix(p.Source, Invented):
	case !slices.ContainsFunc(p.Sticks, func(s Stick) bool { return s.Own }):
		p.Source, p.Dated = Invented, starterDate
	default:
		p.Source += "; " + otherLengths + Invented
	}
}

// otherLengths stands between who quotes some lengths of a product and who says the others.
const otherLengths = "the other lengths: "

// saidOf is the day and the source of a stick of the product.
func (p *Product) saidOf(s Stick) (quantity.Date, string) {
	if !s.Own && slices.ContainsFunc(p.Sticks, func(o Stick) bool { return o.Own }) {
		return starterDate, Invented
	}
	return p.Dated, strings.TrimSuffix(p.Source, "; "+otherLengths+Invented)
}

// someLength reads a length above 0.
func someLength(text string) (quantity.Length, error) {
	x, err := quantity.ParseLength(text)
	if err == nil && !x.Feet().IsPositive() {
		err = &quantity.Error{Found: text, Why: "nothing is that short", Want: "a length above 0, e.g. 8 ft"}
	}
	return x, err
}
