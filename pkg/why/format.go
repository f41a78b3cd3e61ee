package why

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// Decimals shown: of figures, and of factors that someone may want to multiply again.
const (
	figure = 4
	factor = 8
)

// Amounts this large stand for "as much as you like" in the defaults.
var (
	one        = decimal.NewFromInt(1)
	noLimit    = decimal.New(9, 11) // dollars
	firstYear  = decimal.New(1, 3)  // from here on a year is one of the calendar
	noLimitDay = decimal.New(1, 6)  // days
)

// Label names a line for people: "first loan: draw, month 3".
func Label(c *model.Cell, month int) string {
	if c.Line.Monthly {
		return fmt.Sprintf("%s, month %d", c.Name(), month)
	}
	return c.Name()
}

// Text is the value as people read it: $1,250.00, 11.25% a year, 3.75 months, yes.
func (t *Tree) Text() string { return t.text(figure) }

func (t *Tree) text(decimals int32) string {
	switch {
	case t.Kind == Word:
		return t.node.Text
	case t.Unit == "choice":
		if i := int(t.Value.IntPart()) - 1; i >= 0 && i < len(t.Cell.Line.Choices) {
			return t.Cell.Line.Choices[i]
		}
	case t.tellsMonth():
		return "month " + t.Value.String()
	}
	return t.naming().format(t.Value, t.Unit, decimals)
}

// tellsMonth reports whether the value is the number of a month, not a length of time.
func (t *Tree) tellsMonth() bool {
	if t.Kind != Line {
		return t.is(formula.Month, formula.FirstMonth)
	}
	if t.Unit != "month" || t.Cell.Line.Input {
		return false
	}
	found, _ := t.rule().through()
	return found.is(formula.FirstMonth)
}

// format says a value in a unit by the names that the model has for units.
func format(x decimal.Decimal, unit string, decimals int32) string {
	return naming{}.format(x, unit, decimals)
}

func (n naming) format(x decimal.Decimal, unit string, decimals int32) string {
	over, under, rate := strings.Cut(unit, "/")
	s := n.amount(x, over, decimals)
	under = n.of(under, one)
	switch {
	case !rate:
		return s
	case under == "hour":
		return s + " an hour"
	case under == "each":
		return s + " each"
	}
	return s + " a " + under
}

func (n naming) amount(x decimal.Decimal, unit string, decimals int32) string {
	base, more, compound := strings.Cut(unit, " ")
	switch {
	case base == "$" && compound:
		return money(x) + " x " + more
	case unit == "$":
		return money(x)
	case unit == "share":
		return quantity.FormatPercent(x, enough(x.Shift(2), decimals))
	case unit == "flag" && x.IsInteger() && (x.IsZero() || x.Equal(one)):
		return quantity.FormatYesNo(!x.IsZero())
	case unit == "month":
		return quantity.FormatMonths(x, enough(x, decimals))
	case unit == "hour":
		return quantity.FormatHours(x, enough(x, decimals))
	case unit == "day" && x.Abs().GreaterThanOrEqual(noLimitDay):
		return "no limit"
	case unit == "year" && x.IsInteger() && x.GreaterThanOrEqual(firstYear):
		return x.String() // of the calendar
	case unit == "day", unit == "year", unit == "quarter":
		return quantity.FormatCount(x, enough(x, decimals)) + " " + n.of(unit, x)
	}
	s := quantity.FormatCount(x, enough(x, max(decimals, 6)))
	unit = n.of(unit, x)
	if _, plain := plainUnits[unit]; plain || unit == "" || unit == "each" {
		return s
	}
	return s + " " + unit
}

// money shows cents, and up to six decimals of what is not in whole cents.
func money(x decimal.Decimal) string {
	switch {
	case x.Abs().GreaterThanOrEqual(noLimit):
		return "no limit"
	case x.Equal(x.Round(2)) || x.Round(6).Equal(x.Round(2)):
		return quantity.FormatMoney(x)
	}
	s := "$" + quantity.FormatCount(x.Abs(), 6)
	if x.IsNegative() {
		return "-" + s
	}
	return s
}

// enough is how many decimals show at least four digits of a small number.
func enough(x decimal.Decimal, decimals int32) int32 {
	if x.IsZero() {
		return decimals
	}
	first := int32(x.NumDigits()) + x.Exponent() // digits before the point, negative for 0.00…
	return min(max(decimals, 4-first), 30)
}

// source tells where an input's value comes from, "" for what is worked out.
func (t *Tree) source() string {
	c := t.Cell
	switch t.Source() {
	case FromDeal:
		return given(c)
	case Assumed:
		if c.Given != nil {
			return "assumed, as it is not given (" + said(c.Given) + ")"
		}
		if t.givenForOthers() {
			return "given with other options, so worked out for these"
		}
		return "assumed, as it is not given" + t.fromOthers()
	case ByDefault:
		return "not given" + t.fromOthers()
	}
	return ""
}

// givenForOthers reports whether the deal gives the line, but for another scope, so that one of its parts
// stands where it was.
func (t *Tree) givenForOthers() bool {
	plain := strings.NewReplacer("_", " ", "-", " ").Replace
	return slices.ContainsFunc(t.rule().Terms(), func(x Term) bool {
		given := x.Cell.Given
		return x.Kind == Line && given != nil && plain(given.Key) == plain(t.Cell.Line.Name)
	})
}

// fromOthers adds that a default is no number but comes from other lines.
func (t *Tree) fromOthers() string {
	if k := t.rule().Kind; k == Operation || k == Line {
		return ", so worked out"
	}
	return ""
}

// given quotes the deal: "house.yaml:14  price: $212,500".
func given(c *model.Cell) string {
	text := said(c.Given)
	if c.Given.Pos.Line < 1 && c.Given.Pos.File == "" {
		return "given: " + text
	}
	at := c.Given.Pos
	at.Col = 0
	return fmt.Sprintf("%s  %s: %s", at, cmp.Or(c.Given.Key, c.Line.Name), text)
}

// said is what the deal says in its own words.
func said(v *model.Value) string {
	switch {
	case v.Text != "":
		return v.Text
	case v.Choice != "":
		return v.Choice
	case v.Refers != "":
		return v.Refers
	}
	return v.Number.String()
}
