package quantity

import "github.com/shopspring/decimal"

const (
	wantStep   = "dollars for each step, e.g. $2 per $500 or $0.70 per $100 or part"
	stepPlaces = 4 // taxes go below the cent: $0.115 per $100
)

// Step is a charge of Each dollars for every Unit dollars or part of them.
type Step struct {
	Each decimal.Decimal `json:"each"` // up to 4 decimals, not below zero
	Unit decimal.Decimal `json:"unit"` // whole cents, above zero
}

// ParseStep reads $2 per $500, $0.70 per $100 or part, 2 for each 500, $2/$500. A part
// of a unit always counts as a whole one; "or part" only says so.
func ParseStep(text string) (Step, error) { return parse(text, wantStep, (*cursor).step) }

func (c *cursor) step() (Step, error) {
	first := c.peek()
	each, err := c.money(stepPlaces)
	if err != nil {
		return Step{}, err
	}
	if each.IsNegative() {
		return Step{}, c.refuse(first, "a charge cannot be below zero")
	}
	c.take("for")
	if t := c.peek(); !c.take("per", "each", "every", "/") {
		if t.kind == end {
			return Step{}, c.refuse(t, `the "per" amount is missing`)
		}
		return Step{}, c.refuse(t, `found %q instead of "per"`, t.text)
	}
	slash, second := c.toks[c.i-1].text == "/", c.peek()
	unit, err := c.money(2)
	if err != nil {
		return Step{}, err
	}
	if unit.IsPositive() && slash && (each.GreaterThan(unit) || unit.LessThan(decimal.NewFromInt(100))) { // a year's bill over 12, for one
		part := each.DivRound(unit, 2)
		return Step{}, c.refuseSpan(second, c.toks[c.i-1], "the amount itself, e.g. "+FormatMoney(part)+"; $2 per $500 is for each $500 of a total", "that would be %s for each %s of a total", FormatMoney(each), FormatMoney(unit))
	}
	if !unit.IsPositive() {
		return Step{}, c.refuseSpan(second, c.toks[c.i-1], c.want, `the amount behind "per" must be above zero`)
	}
	return Step{each, unit}, c.orPart()
}

// orPart steps over "or part", "or part of it", "or fraction thereof".
func (c *cursor) orPart() error {
	if !c.take("or") {
		return nil
	}
	if t := c.peek(); !c.take("part", "fraction") {
		return c.refuse(t, `"or" is not followed by "part"`)
	}
	if c.take("of") {
		if t := c.peek(); !c.take("it", "one", "that") {
			return c.refuse(t, `"part of" is not followed by "it"`)
		}
		return nil
	}
	c.take("thereof")
	return nil
}
