package quantity

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// unitAhead returns the longest name of a unit that comes next, of the given
// dimension if there is one, and how many tokens it takes; 0 if there is none.
func (c *cursor) unitAhead(of *dimension) (found *unitRow, tokens int) {
	name := ""
	for n := 0; ; n++ {
		t := c.ahead(n)
		switch {
		case t.kind == end || n > 0 && t.kind != word && !t.tight:
			return found, tokens
		case n > 0 && t.text == ".": // sq.ft.
			continue
		case n > 0 && t.kind == word:
			name += " "
		}
		name += t.name
		if u := unitsByName[name]; u != nil && (of == nil || u.of == of) {
			found, tokens = u, n+1
		}
	}
}

// unsigned reads a number of what cannot be below zero.
func (c *cursor) unsigned(of *dimension) (*big.Rat, error) {
	if t := c.peek(); t.name == "-" {
		return nil, c.refuse(t, "%s cannot be below zero", of.noun)
	}
	return c.mixed(Places)
}

// unitOf reads the unit of the number that began at figure, after a hyphen too: 8-ft.
func (c *cursor) unitOf(of *dimension, figure token) (*unitRow, error) {
	c.hyphen()
	if u, n := c.unitAhead(of); n > 0 {
		c.i += n
		return u, nil
	}
	return nil, c.noUnit(of, figure)
}

// noUnit refuses what stands in the place of a unit, or that nothing does.
func (c *cursor) noUnit(of *dimension, figure token) error {
	bare, t := c.since(figure), c.peek()
	if u, n := c.unitAhead(nil); n > 0 {
		last := c.ahead(n - 1)
		return c.refuseSpan(t, last, c.want, "%s is %s, not %s", shown(c.text[t.at:last.end()]), u.of.noun, of.noun)
	}
	switch _, noun, _ := strings.Cut(of.noun, " "); {
	case lookalike(t):
		return c.refuseSpan(figure, t, wantDigits, "%q is not a number", c.text[figure.at:t.end()])
	case t.kind != end:
		return c.refuse(t, "%s is not a unit of %s", shown(t.text), noun)
	}
	var usual []string
	for _, u := range of.usual {
		usual = append(usual, bare+" "+u)
	}
	last := len(usual) - 1
	want := fmt.Sprintf("its unit: %s or %s", strings.Join(usual[:last], ", "), usual[last])
	return c.refuseSpan(figure, c.last(), want, "%q has no unit", bare)
}

// hyphen steps over one before a word.
func (c *cursor) hyphen() {
	if c.peek().name == "-" && c.ahead(1).kind == word {
		c.next()
	}
}

// kept turns what stands from first to last into a decimal of at most places, or
// refuses what that would round.
func (c *cursor) kept(first, last token, n *big.Rat, of *dimension, places int32) (decimal.Decimal, error) {
	d := toDecimal(n, places)
	text := shown(c.text[first.at:last.end()])
	switch {
	case d.Rat().Cmp(n) != 0:
		return decimal.Zero, c.refuseSpan(first, last, "fewer decimals or halves, quarters, eighths and so on, e.g. 2.3125 or 2 5/16",
			"%s cannot be kept without rounding", text)
	case d.GreaterThan(of.most):
		return decimal.Zero, c.refuseSpan(first, last, c.want, "%s is more than %s", text, of.mostSay)
	}
	return d, nil
}

// shown quotes a text, in a way that leaves inch marks as they are.
func shown(text string) string {
	if strings.Contains(text, `"`) && strconv.CanBackquote(text) {
		return "`" + text + "`"
	}
	return strconv.Quote(text)
}
