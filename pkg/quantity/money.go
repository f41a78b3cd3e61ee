package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

const wantMoney = "an amount in dollars, e.g. $285,000, 285k or 1.2m"

// ParseMoney reads US dollars: $285,000, 285000, 285,000.50, $285k, 1.2m,
// 285 thousand, 500 dollars, -$500. The result is in whole cents: more than two
// decimals are refused unless k or m makes them whole cents (1.2345m). Amounts
// below zero are read; whether one is allowed is for the caller to say. A 0 before
// other digits is refused: 05k may be what a shell left of $205k.
func ParseMoney(text string) (decimal.Decimal, error) {
	return parse(text, wantMoney, func(c *cursor) (decimal.Decimal, error) { return c.money(2) })
}

// money reads an amount of at most places decimals of a dollar.
func (c *cursor) money(places int32) (decimal.Decimal, error) {
	first := c.peek()
	if first.text == "(" {
		return decimal.Zero, c.refuseFor(first, "a minus sign for an amount below zero, e.g. -$500", "parentheses are not read as a minus")
	}
	negative, signed := c.sign()
	if err := c.dollarBefore(); err != nil {
		return decimal.Zero, err
	}
	if !signed {
		negative, _ = c.sign()
	}
	figure := c.peek()
	if err := c.leadingZero(); err != nil {
		return decimal.Zero, err
	}
	n, err := c.decimal(Places)
	if err != nil {
		return decimal.Zero, err
	}
	value := n.Shift(c.scale())
	amount := c.since(figure)
	switch {
	case value.Exponent() < -places && (value.Exponent() == n.Exponent() || !value.Equal(value.Truncate(places))):
		return decimal.Zero, c.refuseSpan(figure, c.toks[c.i-1], c.wantCents(amount), "%q has more than %d decimals", amount, places)
	case value.NumDigits()+int(value.Exponent()) > maxDigits:
		return decimal.Zero, c.refuseSpan(figure, c.toks[c.i-1], c.want, "%q has more than %d digits before the point", amount, maxDigits)
	}
	if err := c.dollarBehind(); err != nil {
		return decimal.Zero, err
	}
	if negative {
		value = value.Neg()
	}
	return trim(value), nil
}

// leadingZero refuses 05 and 00, whose digits in front a shell may have taken away.
func (c *cursor) leadingZero() error {
	t := c.peek()
	if lead := t.text; len(lead) > 1 && lead[0] == '0' && '0' <= lead[1] && lead[1] <= '9' {
		return c.refuseFor(t, "the digits that are missing before the 0, or the amount without it", "%q begins with a 0", lead)
	}
	return nil
}

// wantCents says how an amount is written that has too many decimals, which may be
// thousands behind a point.
func (c *cursor) wantCents(amount string) string {
	if next := c.peek(); next.kind == word && next.tight { // 2.125e5
		return c.want
	}
	if part, err := decimal.NewFromString(amount); err == nil && part.LessThan(decimal.NewFromInt(1)) { // a share, rather than thousands
		return "cents at most; a share as a percentage, here " + FormatPercent(part, 6)
	}
	if pointed().MatchString(amount) {
		return "a comma between thousands: " + strings.ReplaceAll(amount, ".", ",") + "; or dollars and cents, e.g. 285,000.50"
	}
	return "dollars and cents, e.g. 285,000 or 285,000.50"
}

// scale steps over k, m or their words and returns the power of ten.
func (c *cursor) scale() int32 {
	switch {
	case c.take("k", "thousand"):
		return 3
	case c.take("m", "million"):
		return 6
	}
	return 0
}

func (c *cursor) dollarBefore() error {
	t := c.peek()
	switch {
	case t.name == "us" && c.ahead(1).text == "$":
		c.next()
	case t.kind == word && c.ahead(1).text == "$" && c.ahead(1).tight: // C$, A$
		return c.refuseForeign(t, c.ahead(1))
	case isForeign(t):
		return c.refuseForeign(t, t)
	case c.take("usd"):
		return nil
	}
	c.take("$")
	return nil
}

func (c *cursor) dollarBehind() error {
	if t := c.peek(); isForeign(t) {
		return c.refuseForeign(t, t)
	}
	c.take("dollar", "dollars", "usd")
	return nil
}

func (c *cursor) refuseForeign(from, to token) error {
	return c.refuseSpan(from, to, "the amount in US dollars, e.g. $285,000", "%q is not US dollars", c.text[from.at:to.end()])
}

// foreign are the names of other currencies likely to be written out.
var foreign = map[string]bool{
	"eur": true, "euro": true, "euros": true, "gbp": true, "pound": true, "pounds": true, "cad": true, "aud": true,
	"nzd": true, "mxn": true, "peso": true, "pesos": true, "chf": true, "franc": true, "francs": true, "jpy": true,
	"yen": true, "cny": true, "rmb": true, "yuan": true, "inr": true, "rupee": true, "rupees": true, "btc": true,
}

func isForeign(t token) bool {
	r, _ := utf8.DecodeRuneInString(t.text)
	return foreign[t.name] || t.kind == mark && r != '$' && unicode.Is(unicode.Sc, r)
}

// ForeignMoney is the first sign or name of a currency other than the US dollar in a text,
// or "".
func ForeignMoney(text string) string {
	for _, t := range scan(nil, text) {
		if isForeign(t) {
			return t.text
		}
	}
	return ""
}
