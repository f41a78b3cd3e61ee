package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// inWords says a line's default as the file would, and whether it is told where used.
func inWords(l *model.Line, k Kind) string {
	formula := l.Formula().String()
	first, _, _ := strings.Cut(strings.TrimSuffix(formula, " / 1 week"), " ")
	n, err := decimal.NewFromString(first)
	said := "the " + strings.ReplaceAll(formula, "_", " ")
	switch word := strings.Trim(formula, `"`); {
	case word != formula:
		said = word
	case err == nil && !strings.Contains(formula, "("):
		said = numberInWords(n, k)
	}
	if l.Assumed {
		return said + " is assumed"
	}
	return said
}

// numberInWords says a number of the model as a field of that kind takes it.
func numberInWords(n decimal.Decimal, k Kind) string {
	switch k {
	case Money:
		return quantity.FormatDollars(n)
	case HourRate:
		return quantity.FormatDollars(n) + "/hour"
	case Percent:
		return quantity.FormatPercent(n, 4)
	case YesNo:
		return quantity.FormatYesNo(!n.IsZero())
	case Length, Ceiling:
		if n.IsZero() {
			return "0"
		}
		return quantity.Feet(n).String()
	case Volume:
		return quantity.FormatCount(n, 4) + " cu ft"
	case Weight:
		return quantity.FormatCount(n, 4) + " lb"
	}
	return quantity.FormatCount(n, 4)
}
