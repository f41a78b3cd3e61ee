package pricebook

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/shopspring/decimal"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// itemKeys are the keys of an item.
var itemKeys = sync.OnceValue(func() []keyOf[*Item] {
	type read = func(*node)
	return []keyOf[*Item]{
		{Key{"trade", "tile", "*needed*", "who does it; a trade's rate and crew are in the deal file"}, func(r *reader, it *Item) read { return r.text(&it.Trade) }},
		{Key{"work", "lay porcelain floor tile", "nothing", "what is done and of what grade, in one line for a lender"}, func(r *reader, it *Item) read { return r.text(&it.Work) }},
		{Key{"category", "Ceramic tile", "nothing", "its line in a lender's breakdown: those of HUD form HUD-9746-A, whose names and order are from memory"}, func(r *reader, it *Item) read { return r.text(&it.Category) }},
		{Key{"element", "C3020", "nothing", "its element in NISTIR 6389"}, func(r *reader, it *Item) read { return r.text(&it.Element) }},
		{Key{"measure", "open floor", "*needed*", "what it is measured by, one of the measures below"}, func(r *reader, it *Item) read { return func(n *node) { r.measure(it, n) } }},
		{Key{"hours", "0.12 per sq ft", "*needed*; none if there are none", "hours of a trained hand for each unit and coat"}, func(r *reader, it *Item) read { return r.rate(it, &it.Hours, "", "") }},
		{Key{"set-up hours", "1", "none", "hours that come once for each room it is done in, and for each part of one that is a piece of work of its own"}, func(r *reader, it *Item) read {
			return parsed(r, quantity.ParseHours, func(x decimal.Decimal) { it.SetUp = x })
		}},
		{Key{"hours source", "Griffith's Carpentry of 1916", "your own price book, where it gives hours", "where the hours come from"}, func(r *reader, it *Item) read { return r.text(&it.HoursSource) }},
		{Key{"hired", "$9.50 per sq ft", "*needed*; none if no trade does it alone", "what a trade charges for its labour alone, for each unit and coat"}, func(r *reader, it *Item) read { return r.rate(it, &it.Hired, "", "$") }},
		{Key{"hired source", "Fern Street Tile", "your own price book; in the starter book, an invented starter price", "who says so"}, func(r *reader, it *Item) read { return r.text(&it.HiredSource) }},
		{Key{"dated", "2026-09-14", "unknown; 2026-09-01 in the starter book", "the day of the hired price"}, func(r *reader, it *Item) read {
			return parsed(r, quantity.ParseDate, func(x quantity.Date) { it.Dated = x })
		}},
		{Key{"materials", "{porcelain floor tile: {waste: 10%}}", "*needed*; none if it takes none", "the products it takes, each with the keys below; the deal file changes the first"}, func(r *reader, it *Item) read { return func(n *node) { r.uses(it, n) } }},
		{Key{"brings", "[floor backer board, toilet off and on if bath, delivery in house]", "*needed*; none if it brings none", "the items that come along: always, if a condition holds, unless another item is there, or once for the whole house"}, func(r *reader, it *Item) read {
			return func(n *node) { it.Brings = nil; r.list(func(n *node) { r.companion(it, n) })(n) }
		}},
		{Key{"debris", "0.02 cu ft per sq ft", "none", "loose volume that goes to the container, for each unit"}, func(r *reader, it *Item) read { return r.rate(it, &it.Debris, "cu ft", "") }},
		{Key{"weight", "0.6 lb per sq ft", "none", "what the debris weighs, for each unit"}, func(r *reader, it *Item) read { return r.rate(it, &it.Weight, "lb", "") }},
		{Key{"coats", "2", "1", "how often it is gone over; hours, hired price and materials with `each coat` are then for one coat"}, func(r *reader, it *Item) read { return parsed(r, coats, func(x int) { it.Coats = x }) }},
		{Key{"new floor", "yes", "no", "whether it lays a floor, so that the layers of the old one are taken up"}, func(r *reader, it *Item) read { return r.yesNo(func(x bool) { it.NewFloor = x }) }},
		{Key{"makes", "counter", "nothing that another would make instead", "what of a place it makes new: two items that make one thing do it side by side, and are doubted where each makes all of it"}, func(r *reader, it *Item) read { return r.text(&it.Makes) }},
		{Key{"takes out", "wall surface", "nothing that need be made new", "what of a place it takes out whole: it is doubted where all of it is taken out and no item makes it"}, func(r *reader, it *Item) read { return r.text(&it.TakesOut) }},
		{Key{"instead of", "[base off and on]", "nothing", "other work that it is in place of or has in it: both are doubted where each is done to all; in work on the whole house, also what rooms bring along and would not beside that"}, func(r *reader, it *Item) read {
			return r.names(&it.InsteadOf)
		}},
		{Key{"share by age", "subfloor", "all of the measure", "of which table by year built it takes its share of the measure: subfloor or roof deck"}, func(r *reader, it *Item) read { return parsed(r, shareByAge, func(x string) { it.ShareByAge = x }) }},
		{Key{"in part", "yes", "no", "whether it is rarely done to all of the measure, as a mend of what is found rotten: it is doubted where the deal file says neither count nor part"}, func(r *reader, it *Item) read { return r.yesNo(func(x bool) { it.InPart = x }) }},
		{Key{"once", "yes", "no", "whether an item measured by one, where it is brought along, comes once for a room, whatever the count or part of the work that brings it, as the containment of a work area"}, func(r *reader, it *Item) read { return r.byOne(it, &it.Once) }},
		{Key{"for each", "yes", "no", "whether an item measured by one, where several pieces of work bring it along, comes for each of them, as a circuit for each appliance; without this the largest count of them counts"}, func(r *reader, it *Item) read { return r.byOne(it, &it.ForEach) }},
		{Key{"waits", "2 days", "none", "curing, delivery or inspection in which nobody works"}, func(r *reader, it *Item) read {
			return parsed(r, quantity.ParseDays, func(x decimal.Decimal) { it.Waits = x })
		}},
		{Key{"permit", "yes", "no", "whether a permit is usual; local rules decide"}, func(r *reader, it *Item) read { return r.yesNo(func(x bool) { it.Permit = x }) }},
		{Key{"licence", "yes", "no", "whether a licensed trade is usual or required; local rules decide"}, func(r *reader, it *Item) read { return r.yesNo(func(x bool) { it.Licence = x }) }},
		{Key{"cautions", "[asbestos]", "none", "what in it can hurt: " + strings.Join(Cautions, ", ")}, func(r *reader, it *Item) read {
			return func(n *node) { it.Cautions = nil; r.list(func(n *node) { r.caution(it, n) })(n) }
		}},
		{Key{"source", "\"common practice, no source\"", "*needed*", "where the item as a whole comes from"}, func(r *reader, it *Item) read { return r.text(&it.Source) }},
	}
})

// item reads an item over the one of the same name in the book below, or nil, from
// which it has what it does not say.
func (r *reader) item(name string, at diag.Pos, body *node, base *Item) *Item {
	it := &Item{Coats: 1}
	if base != nil {
		*it = *base
	}
	it.Name, it.Pos = name, at
	switch {
	case r.starter:
		it.Dated, it.HiredSource = starterDate, Invented
	case has(body, "hired") || base == nil: // a new price has its own day and source
		it.Dated, it.HiredSource = quantity.Date{}, Owners
	}
	if has(body, "hours") && !r.starter {
		it.HoursSource = Owners
	}
	entryKeys(r, first(body, "measure"), "the item", itemKeys(), it)
	hours, hired := it.like("", ""), it.like("", "$")
	again := base != nil && it.Unit != base.Unit // what was for each of another unit is none for this
	for _, must := range []struct {
		key, example string
		unit         bool
	}{
		{"trade", "trade: tile", false}, {"measure", "measure: open floor   or   measure: one", false},
		{"hours", "hours: " + hours + "   or   hours: none", true}, {"hired", "hired: " + hired + "   or   hired: none", true},
		{"materials", "materials: {porcelain floor tile: {waste: 10%}}   or   materials: none", true}, {"brings", "brings: [floor backer board]   or   brings: none", false},
		{"source", "source: \"common practice, no source\"", false},
	} {
		if !has(body, must.key) && (base == nil || again && must.unit) {
			r.missing(at, name, must.key, must.example)
		}
	}
	r.howOften(it, body)
	if again {
		for key, to := range map[string]*decimal.Decimal{"debris": &it.Debris, "weight": &it.Weight} {
			if !has(body, key) {
				*to = decimal.Decimal{}
			}
		}
	}
	return it
}

// howOften holds that an item comes along in one way: what is said here stands for what the book below says.
func (r *reader) howOften(it *Item, body *node) {
	once, each := has(body, "once"), has(body, "for each")
	switch {
	case it.Measure != "one":
		it.Once, it.ForEach = false, false
	case it.Once && it.ForEach && once && each:
		r.wrong(body, "book-two-ways", "how often %q comes along is said in two ways", it.Name)("keep one of   once   and   for each")
	case it.Once && it.ForEach:
		it.Once, it.ForEach = once, each
	}
}

// byOne reads whether an item comes along in a way that means something of what is measured by one alone.
func (r *reader) byOne(it *Item, to *bool) func(*node) {
	return func(n *node) {
		r.yesNo(func(x bool) {
			if *to = x; x && it.Measure != "one" && MeasureNamed(it.Measure) != nil {
				r.wrong(n, "book-not-by-one", "%q is measured by %s, so it comes along for all of that", it.Name, it.Measure)("leave this out, or write   measure: one")
			}
		})(n)
	}
}

// first moves a key to the front, for what the others may say depends on it.
func first(n *node, key string) *node {
	for i := 2; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
		if n.Content[i].Value == key {
			out := *n
			out.Content = append([]*node{n.Content[i], n.Content[i+1]}, n.Content[:i]...)
			out.Content = append(out.Content, n.Content[i+2:]...)
			return &out
		}
	}
	return n
}

func (r *reader) measure(it *Item, n *node) {
	it.Measure = r.words(n)
	m := MeasureNamed(it.Measure)
	if m == nil {
		names := make([]string, len(Measures))
		for i, m := range Measures {
			names[i] = m.Name
		}
		tell := r.wrong(n, "book-unknown-measure", "nothing is measured as %q", it.Measure)
		if near, ok := diag.Nearest(it.Measure, names); ok {
			tell("did you mean %q?", near)
			return
		}
		tell("the measures are in docs/price-book.md, e.g. open floor, base run, one")
		return
	}
	it.Unit = m.Unit
}

// rate reads so much for each unit of the item's measure, or none.
func (r *reader) rate(it *Item, to *decimal.Decimal, top quantity.Unit, money string) func(*node) {
	return func(n *node) {
		if n.Value == "none" || it.Unit == "" {
			*to = decimal.Decimal{}
			return
		}
		if x, bare := bareNumber(n.Value); bare {
			meant := quantity.Per{Number: x, Money: money != "", Top: top, Bottom: it.Unit}
			r.wrong(n, "book-bad-unit", "%q does not say that it is for each %s, by which the item is measured (%s)", n.Value, it.Unit.One(), it.Measure)("write it like   %s", meant)
			return
		}
		parsed(r, func(s string) (quantity.Per, error) { return quantity.ParsePer(EachCoat(s)) }, func(x quantity.Per) {
			topFits := x.Top == top || top == "" && (x.Top == "hour" || x.Top == "")
			if meant, plain := x.InDollars(it.Unit); money != "" && plain {
				r.wrong(n, "book-bad-unit", "%q has no dollar sign", n.Value)("write it like   %s", meant)
				return
			}
			if x.Money != (money != "") || !topFits || x.Bottom != it.Unit {
				r.wrong(n, "book-bad-unit", "%q is not for each %s, by which the item is measured (%s)", n.Value, it.Unit.One(), it.Measure)("write it like   %s", it.like(top, money))
				return
			}
			*to = x.Number
		})(n)
	}
}

const andCoat = " and coat"

// EachCoat is a rate without the words that it is for each coat, as every rate is.
func EachCoat(text string) string { return strings.TrimSuffix(strings.TrimSpace(text), andCoat) }

// AndCoat are those words, where there are several coats.
func (it *Item) AndCoat() string {
	if it.Coats > 1 {
		return andCoat
	}
	return ""
}

// bareNumber reads a number that stands alone, with a dollar sign or without.
func bareNumber(text string) (decimal.Decimal, bool) {
	if strings.ContainsAny(text, " /") {
		return decimal.Zero, false
	}
	x, err := decimal.NewFromString(strings.TrimPrefix(text, "$"))
	return x, err == nil && !x.IsNegative()
}

// like is an example of so much for each unit of the item's measure.
func (it *Item) like(top quantity.Unit, money string) string {
	number, per := "0.12", " per "+string(cmp.Or(it.Unit, "sq ft"))
	if it.Unit == "each" {
		number, per = "1.5", " each"
	}
	switch {
	case money != "":
		number = money + "9.50"
	case top != "":
		number += " " + string(top)
	}
	return number + per
}

// A useDraft is a material being read, with the item that takes it.
type useDraft struct {
	*Use
	item *Item
}

// materialKeys are the keys of a material of an item.
var materialKeys = sync.OnceValue(func() []keyOf[useDraft] {
	type read = func(*node)
	return []keyOf[useDraft]{
		{Key{"takes", "3.6", "1, without the two below, or so much of it in the pack's unit, as sq ft in m2", "so many of the pack's unit for each unit of work"}, func(r *reader, u useDraft) read {
			return parsed(r, amount, func(x decimal.Decimal) { u.Takes = x })
		}},
		{Key{"one for", "80 sq ft", "nothing", "so much work is done by one whole pack of the book that says so; another pack does it by what it holds"}, func(r *reader, u useDraft) read { return r.covers(u.item, u.Use) }},
		{Key{"for the job", "1", "nothing", "so many of the pack's unit for each room, and for each part of one that is a piece of work of its own, however large"}, func(r *reader, u useDraft) read {
			return parsed(r, amount, func(x decimal.Decimal) { u.ForJob = x })
		}},
		{Key{"along", "casing run", "the item's own measure", "another measure that it follows"}, func(r *reader, u useDraft) read { return func(n *node) { r.along(u.Use, n) } }},
		{Key{"waste", "10%", "0%", "what is bought beyond what is laid"}, func(r *reader, u useDraft) read {
			return parsed(r, waste, func(x decimal.Decimal) { u.Waste = x })
		}},
		{Key{"each coat", "yes", "no", "whether it is taken again for each coat"}, func(r *reader, u useDraft) read { return r.yesNo(func(x bool) { u.PerCoat = x }) }},
		{Key{"source", "\"common practice, no source\"", "nothing", "where the yield and the waste come from"}, func(r *reader, u useDraft) read { return r.text(&u.Source) }},
	}
})

func (r *reader) uses(it *Item, n *node) {
	it.Uses = nil
	if n.Kind == yaml.ScalarNode && n.Value == "none" {
		return
	}
	it.Uses = make([]Use, 0, len(n.Content)/2)
	r.mapping(n, "materials", nil, func(key, value *node) bool {
		it.Uses = append(it.Uses, Use{Product: key.Value, Pos: r.pos(key), starter: r.starter})
		u := &it.Uses[len(it.Uses)-1]
		entryKeys(r, first(value, "along"), "the material", materialKeys(), useDraft{u, it})
		switch n := count(has(value, "takes"), has(value, "one for"), has(value, "for the job")); {
		case n > 1:
			r.wrong(key, "book-two-ways", "how much it takes of %q is said in two ways", u.Product)("keep one of   takes,   one for   and   for the job")
		case n == 0:
			u.Takes, u.unsaid = decimal.NewFromInt(1), true
		}
		return true
	})
}

func count(all ...bool) (n int) {
	for _, x := range all {
		if x {
			n++
		}
	}
	return n
}

// waste reads a share from 0% to under 100%.
func waste(text string) (decimal.Decimal, error) {
	x, err := quantity.ParsePercent(text)
	if err == nil && (x.IsNegative() || !x.LessThan(decimal.NewFromInt(1))) {
		err = &quantity.Error{Found: text, Why: "it is no waste", Want: "0% to under 100%, e.g. 10%"}
	}
	return x, err
}

// Cautions are the words for what can hurt.
var Cautions = []string{"lead", "asbestos", "wiring", "gas", "structure", "mould", "height", "dust", "sewage"}

func (r *reader) caution(it *Item, n *node) {
	word := r.words(n)
	if word != "" && !slices.Contains(Cautions, word) {
		tell := r.wrong(n, "book-unknown-caution", "%q is no caution", word)
		if near, ok := diag.Nearest(word, Cautions); ok {
			tell("did you mean %q?", near)
			return
		}
		tell("the cautions are: %s", strings.Join(Cautions, ", "))
		return
	}
	it.Cautions = append(it.Cautions, word)
}

// covers reads how much work one pack does, in the unit of the measure it follows.
func (r *reader) covers(it *Item, u *Use) func(*node) {
	return func(n *node) {
		parsed(r, work, func(x quantity.Pack) {
			unit := it.Unit
			if m := MeasureNamed(u.Along); m != nil {
				unit = m.Unit
			}
			if x.Unit != unit {
				r.wrong(n, "book-bad-unit", "%q is not in %s, in which the work is measured", n.Value, unit)("write it like   one for: 80 %s", unit)
				return
			}
			u.Covers = x.Number
		})(n)
	}
}

// work reads a number of units of work: 80 sq ft, 1 each.
func work(text string) (quantity.Pack, error) {
	p, err := quantity.ParsePack("pack of " + text)
	if err != nil {
		err = &quantity.Error{Found: text, Why: "it is not so much work", Want: "a number and its unit, e.g. 80 sq ft"}
	}
	return p, err
}

func (r *reader) along(u *Use, n *node) {
	u.Along = r.words(n)
	if MeasureNamed(u.Along) == nil {
		r.wrong(n, "book-unknown-measure", "nothing is measured as %q", u.Along)("the measures are in docs/price-book.md")
	}
}

func (r *reader) companion(it *Item, n *node) {
	c := Companion{Item: r.words(n), Pos: r.pos(n)}
	c.Item, c.If, _ = strings.Cut(c.Item, " unless ")
	unless := c.If
	c.Item, c.If, _ = strings.Cut(c.Item, " if ")
	if unless != "" {
		c.Unless = strings.Split(unless, " or ")
	}
	for _, part := range []*string{&c.Item, &c.If} {
		if cut, found := strings.CutSuffix(*part, " in house"); found {
			*part, c.House = cut, true
		}
	}
	if c.If != "" && conditionNamed(c.If) == nil {
		names := make([]string, len(Conditions))
		for i, k := range Conditions {
			names[i] = k.Name
		}
		tell := r.wrong(n, "book-unknown-condition", "%q is no condition", c.If)
		if near, ok := diag.Nearest(c.If, names); ok {
			tell("did you mean %q?", near)
		} else {
			tell("the conditions are in docs/price-book.md, e.g. if bath, if before 1978")
		}
		return
	}
	it.Brings = append(it.Brings, c)
}

// amount reads a plain number with or without its unit behind it: 3.6, 1 bag.
func amount(text string) (decimal.Decimal, error) {
	number, _, _ := strings.Cut(strings.TrimSpace(text), " ")
	x, err := quantity.ParseCount(number)
	if err == nil && !x.IsPositive() {
		err = &quantity.Error{Found: text, Why: "it is not above 0", Want: "a number above 0, e.g. 3.6"}
	}
	return x, err
}

func shareByAge(text string) (string, error) {
	if text != "subfloor" && text != "roof deck" {
		return "", &quantity.Error{Found: text, Why: "there is no such table", Want: "subfloor or roof deck"}
	}
	return text, nil
}

func coats(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > 9 {
		return 0, &quantity.Error{Found: text, Why: "it is not a number of coats", Want: "1 to 9, e.g. 2"}
	}
	return n, nil
}
