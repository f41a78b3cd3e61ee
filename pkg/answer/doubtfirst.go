package answer

import (
	"fmt"
	"slices"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// DoubtFirst says why the value by sold houses is likely drawn from a figure that was mistyped,
// which is to be told before the value: the house, the prices or one of them; nothing otherwise.
func (a *Answer) DoubtFirst() (out []string) {
	c := a.Deal.Comps
	if c == nil || c.Value == nil {
		return nil
	}
	if i := slices.IndexFunc(a.Warnings, func(d diag.Diag) bool { return d.Code == deal.MistypedHouse }); i >= 0 {
		out = append(out, a.Warnings[i].Message+"; "+a.Warnings[i].Hint)
	}
	for _, why := range []string{a.farFromPrice(), c.DoubtApart(), c.DoubtTwo()} {
		if why != "" {
			out = append(out, why)
		}
	}
	return out
}

// farFromPrice says that the value by sold houses is many times the price of this one, or a
// small part of it: a digit too many or too few in the price, or in those of all sales.
func (a *Answer) farFromPrice() string {
	value, price := a.Line("value_by_comps"), a.Line("price")
	how := ""
	switch {
	case !price.IsPositive():
		return ""
	case value.GreaterThan(price.Mul(deal.TimesThePrice)):
		how = "more than ten times"
	case value.Mul(deal.TimesThePrice).LessThan(price):
		how = "less than a tenth of"
	default:
		return ""
	}
	return fmt.Sprintf("at %s it is %s the price, %s. Look at that price and at those of the sales for a digit too many or too few, or cents without their point", quantity.FormatDollars(value), how, quantity.FormatDollars(price))
}
