package quantity

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

const wantPack = "what it comes in, e.g. box of 10 sq ft, bag of 50 lb, each or day"

// Pack is how a thing is sold: a word for the pack and what is in it.
type Pack struct {
	Word   string          // box; the unit's own name where it is sold by the unit
	Number decimal.Decimal // above 0, rounded to 20 decimals
	Unit   Unit
}

// String prints box of 10 sq ft, each.
func (p Pack) String() string {
	if p.Word == string(p.Unit) && p.Number.Equal(decimal.NewFromInt(1)) {
		return p.Word
	}
	return p.Word + " of " + p.Unit.amount(p.Number)
}

// ParsePack reads a word, a number and a unit: box of 10 sq ft, bag of 50 lb; or a
// unit alone, which is one of it: each, day, cu yd. Units are refused as by ParsePer.
func ParsePack(text string) (Pack, error) { return parse(text, wantPack, (*cursor).pack) }

func (c *cursor) pack() (Pack, error) {
	t := c.peek()
	if _, n := c.unitAhead(nil); n > 0 && c.ahead(n).kind == end {
		u, err := c.anyUnit()
		return Pack{string(u), decimal.NewFromInt(1), u}, err
	}
	if len(t.name) < 2 || len(t.name) > 20 || strings.Trim(t.name, "abcdefghijklmnopqrstuvwxyz") != "" {
		return Pack{}, c.refuse(t, "%s is not a word for a pack", shown(t.text))
	}
	c.next()
	if of := c.peek(); !c.take("of") {
		if of.kind == end {
			return Pack{}, c.refuse(of, "what is in the %s is missing", t.name)
		}
		return Pack{}, c.refuse(of, `found %s instead of "of"`, shown(of.text))
	}
	figure := c.peek()
	n, err := c.rounded(perPlaces)
	if err != nil {
		return Pack{}, err
	}
	p := Pack{Word: t.name, Number: n}
	bare := c.since(figure)
	switch {
	case !p.Number.IsPositive():
		return Pack{}, c.refuseSpan(figure, c.last(), c.want, "a pack of nothing")
	case c.peek().kind == end:
		return Pack{}, c.refuseSpan(figure, c.last(), fmt.Sprintf("its unit: %s each, %[1]s sq ft or %[1]s lb", bare), "%q has no unit", bare)
	}
	p.Unit, err = c.anyUnit()
	return p, err
}
