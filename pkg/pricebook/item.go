package pricebook

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

func (r *reader) item(name string, at diag.Pos, body *yaml.Node) *Item {
	it := &Item{Name: name, Pos: at, Coats: 1}
	given := map[string]bool{}
	table := map[string]func(*yaml.Node){
		"trade":        r.text(&it.Trade),
		"work":         r.text(&it.Work),
		"category":     r.text(&it.Category),
		"element":      r.text(&it.Element),
		"measure":      func(n *yaml.Node) { r.measure(it, n) },
		"hours":        r.rate(it, &it.Hours, "", ""),
		"set-up hours": parsed(r, quantity.ParseHours, func(x decimal.Decimal) { it.SetUp = x }),
		"hours source": r.text(&it.HoursSource),
		"hired":        r.rate(it, &it.Hired, "", "$"),
		"materials":    func(n *yaml.Node) { r.uses(it, n) },
		"brings":       r.list(func(n *yaml.Node) { r.companion(it, n) }),
		"debris":       r.rate(it, &it.Debris, "cu ft", ""),
		"weight":       r.rate(it, &it.Weight, "lb", ""),
		"waits":        parsed(r, days, func(x decimal.Decimal) { it.Waits = x }),
		"coats":        parsed(r, coats, func(x int) { it.Coats = x }),
		"permit":       r.yesNo(func(x bool) { it.Permit = x }),
		"licence":      r.yesNo(func(x bool) { it.Licence = x }),
		"cautions":     r.list(func(n *yaml.Node) { it.Cautions = append(it.Cautions, r.words(n)) }),
		"source":       r.text(&it.Source),
	}
	for key, read := range table {
		table[key] = func(n *yaml.Node) { given[key] = true; read(n) }
	}
	r.keys(first(body, "measure"), "the item", table)
	for _, must := range [][2]string{
		{"trade", "trade: tile"}, {"measure", "measure: open floor   or   measure: one"},
		{"hours", "hours: 0.12 per sq ft   or   hours: none"}, {"hired", "hired: $9.50 per sq ft   or   hired: none"},
		{"materials", "materials: {floor tile: {waste: 10%}}   or   materials: none"}, {"brings", "brings: [transition]   or   brings: none"},
		{"source", "source: common practice, no source"},
	} {
		if !given[must[0]] {
			r.missing(at, name, must[0], must[1])
		}
	}
	return it
}

// first moves a key to the front, for what the others may say depends on it.
func first(n *yaml.Node, key string) *yaml.Node {
	for i := 2; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
		if n.Content[i].Value == key {
			out := *n
			out.Content = append([]*yaml.Node{n.Content[i], n.Content[i+1]}, n.Content[:i]...)
			out.Content = append(out.Content, n.Content[i+2:]...)
			return &out
		}
	}
	return n
}

func (r *reader) measure(it *Item, n *yaml.Node) {
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
func (r *reader) rate(it *Item, to *decimal.Decimal, top quantity.Unit, money string) func(*yaml.Node) {
	return func(n *yaml.Node) {
		if n.Value == "none" || it.Unit == "" {
			return
		}
		parsed(r, quantity.ParsePer, func(x quantity.Per) {
			want := fmt.Sprintf("%s0.12 per %s", money, it.Unit)
			if it.Unit == "each" {
				want = money + "1.5 each"
			}
			topFits := x.Top == top || top == "" && (x.Top == "hour" || x.Top == "")
			if x.Money != (money != "") || !topFits || x.Bottom != it.Unit {
				r.wrong(n, "book-bad-unit", "%q is not for each %s, by which the item is measured (%s)", n.Value, it.Unit, it.Measure)("write it like   %s", want)
				return
			}
			*to = x.Number
		})(n)
	}
}

func (r *reader) uses(it *Item, n *yaml.Node) {
	if n.Kind == yaml.ScalarNode && n.Value == "none" {
		return
	}
	r.mapping(n, "materials", func(key, value *yaml.Node) bool {
		u := Use{Product: key.Value, Pos: r.pos(key)}
		r.keys(first(value, "along"), "the material", map[string]func(*yaml.Node){
			"takes":       parsed(r, amount, func(x decimal.Decimal) { u.Takes = x }),
			"one for":     r.covers(it, &u),
			"for the job": parsed(r, amount, func(x decimal.Decimal) { u.ForJob = x }),
			"along":       func(n *yaml.Node) { r.along(&u, n) },
			"waste":       parsed(r, quantity.ParsePercent, func(x decimal.Decimal) { u.Waste = x }),
			"each coat":   r.yesNo(func(x bool) { u.PerCoat = x }),
			"source":      r.text(&u.Source),
		})
		if u.Takes.IsZero() && u.Covers.IsZero() && u.ForJob.IsZero() {
			u.Takes = decimal.NewFromInt(1)
		}
		it.Uses = append(it.Uses, u)
		return true
	})
}

// covers reads how much work one pack does, in the unit of the measure it follows.
func (r *reader) covers(it *Item, u *Use) func(*yaml.Node) {
	return func(n *yaml.Node) {
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

func (r *reader) along(u *Use, n *yaml.Node) {
	u.Along = r.words(n)
	if MeasureNamed(u.Along) == nil {
		r.wrong(n, "book-unknown-measure", "nothing is measured as %q", u.Along)("the measures are in docs/price-book.md")
	}
}

func (r *reader) companion(it *Item, n *yaml.Node) {
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
	if c.If != "" && conditions[c.If] == nil {
		names := make([]string, 0, len(conditions))
		for k := range conditions {
			names = append(names, k)
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

// days reads days or weeks of waiting.
func days(text string) (decimal.Decimal, error) {
	number, word, _ := strings.Cut(strings.TrimSpace(text), " ")
	x, err := quantity.ParseCount(number)
	switch {
	case err != nil || x.IsNegative():
	case word == "day" || word == "days":
		return x, nil
	case word == "week" || word == "weeks":
		return x.Mul(decimal.NewFromInt(7)), nil
	}
	return x, &quantity.Error{Found: text, Why: "it is no number of days", Want: "days or weeks, e.g. 2 days"}
}

func coats(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > 9 {
		return 0, &quantity.Error{Found: text, Why: "it is not a number of coats", Want: "1 to 9, e.g. 2"}
	}
	return n, nil
}
