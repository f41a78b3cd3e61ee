package quantity

import (
	"slices"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

const (
	wantPer   = "so much for a unit, e.g. 0.12 per sq ft, $9.50 per sq ft, 0.6 lb/sq ft or 1.5 each"
	perPlaces = 20 // decimals
)

// Per is so much for each unit of something.
type Per struct {
	Number decimal.Decimal // 0 or more, rounded to 20 decimals; dollars of up to 4 decimals if Money
	Money  bool
	Top    Unit // "" for money and for a plain number
	Bottom Unit
}

// InDollars is a plain number for each of a unit as a price, and whether it is one: whoever
// was asked for a price has left the dollar sign out.
func (p Per) InDollars(of Unit) (Per, bool) {
	plain := !p.Money && p.Top == "" && p.Bottom == of
	p.Money = true
	return p, plain
}

// String prints 0.12 per sq ft, $9.50 per sq ft, 0.05 hours per ft, 1.5 each.
func (p Per) String() string {
	text := FormatCount(p.Number, perPlaces)
	switch {
	case p.Money:
		text = shortDollars(p.Number)
	case p.Top != "":
		text = p.Top.amount(p.Number)
	}
	if p.Bottom == "each" {
		return text + " each"
	}
	return text + " per " + string(p.Bottom)
}

// ParsePer reads so much for each unit: 0.12 per sq ft, $9.50 per sq ft, 1.5 each,
// 0.02 cu ft per sq ft, 0.6 lb/sq ft, 0.05 hours per ft. A unit that could be two is
// refused: m (metres or months), yd (of length, area or volume).
func ParsePer(text string) (Per, error) { return parse(text, wantPer, (*cursor).per) }

func (c *cursor) per() (Per, error) {
	if t := c.peek(); t.name == "-" || t.text == "$" && c.ahead(1).name == "-" {
		return Per{}, c.refuse(t, "it cannot be below zero")
	}
	p, err := c.perTop()
	if err != nil {
		return Per{}, err
	}
	t := c.peek()
	switch _, n := c.unitAhead(nil); {
	case t.kind == end:
		return Per{}, c.refuse(t, `the "per" part is missing`)
	case c.take("per", "/", "a", "an"):
		p.Bottom, err = c.anyUnit()
	case c.take("each", "ea") && n == 1:
		p.Bottom = "each"
	default:
		return Per{}, c.refuse(t, `found %s instead of "per"`, shown(t.text))
	}
	return p, err
}

func (c *cursor) perTop() (Per, error) {
	if c.moneyAhead() {
		d, err := c.money(stepPlaces)
		return Per{Number: d, Money: true}, err
	}
	n, err := c.rounded(perPlaces)
	if err != nil {
		return Per{}, err
	}
	p := Per{Number: n}
	if _, n := c.unitAhead(nil); n > 0 && joins(c.ahead(n)) {
		p.Top, err = c.anyUnit()
	}
	return p, err
}

func joins(t token) bool {
	return t.name == "per" || t.name == "/" || t.name == "a" || t.name == "an" || t.name == "each" || t.name == "ea"
}

// moneyAhead reports a sign of any currency, or dollars in letters.
func (c *cursor) moneyAhead() bool {
	return slices.ContainsFunc(c.toks, func(t token) bool {
		r, _ := utf8.DecodeRuneInString(t.text)
		return unicode.Is(unicode.Sc, r) || t.name == "dollar" || t.name == "dollars" || t.name == "usd"
	})
}

// anyUnit reads a unit of anything that cannot be taken for another.
func (c *cursor) anyUnit() (Unit, error) {
	t := c.peek()
	u, n := c.unitAhead(nil)
	switch {
	case t.kind == end:
		return "", c.refuse(t, "the unit is missing")
	case n == 0:
		return "", c.refuse(t, "%s is not a unit used here", shown(t.text))
	case u.unit == "yd":
		return "", c.refuseFor(t, "sq yd, cu yd or ft", "%q could be of length, area or volume", t.text)
	case t.name == "m" && n == 1:
		return "", c.refuseFor(t, "the unit in letters: metre or month", "%q could be metres or months", t.text)
	}
	c.i += n
	return u.unit, nil
}
