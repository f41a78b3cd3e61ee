package workbook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// besideOf are the conditions that an input at an address is in none of some ways beside others, as far as
// they hold now. A figure that is not in this workbook tells nothing in it.
func (b *book) besideOf(c *model.Cell, all []deal.Beside) (out []func(at string) string) {
	value := func(c *model.Cell) (decimal.Decimal, bool) { return b.answer.Values.Of(c), true }
	missing := func(c *model.Cell) bool { return c == nil || b.secret(c) }
	for _, x := range all {
		if slices.ContainsFunc(x, func(s deal.Sum) bool {
			return slices.ContainsFunc(s.Parts, func(p deal.Part) bool { return missing(p.Cell) || slices.ContainsFunc(p.Or, missing) })
		}) || !x.Holds(value) {
			continue
		}
		var within, beside []string
		for _, s := range x {
			text := ""
			for _, p := range s.Parts {
				at := whereAt
				if p.Cell != c {
					var some []string
					for _, x := range append([]*model.Cell{p.Cell}, p.Or...) {
						some = append(some, b.cellRef(x))
					}
					beside = append(beside, some...)
					if at = some[0]; len(some) > 1 {
						at = "MAX(" + strings.Join(some, ",") + ")"
					}
				}
				text += signed(p.Times) + "*" + at
			}
			if !s.And.IsZero() {
				text += signed(s.And)
			}
			within = append(within, "ROUND("+text+",9)<=0")
		}
		slices.Sort(beside)
		beside = slices.Compact(beside)
		formula := "IF(COUNT(" + strings.Join(beside, ",") + ")=" + itoa(len(beside)) + ",OR(" + strings.Join(within, ",") + "),TRUE)"
		out = append(out, func(at string) string { return strings.ReplaceAll(formula, whereAt, at) })
	}
	return out
}

// signed is a number with its sign.
func signed(x decimal.Decimal) string {
	if x.IsNegative() {
		return "-" + numeral(x.Neg(), bindsAll)
	}
	return "+" + numeral(x, bindsAll)
}
