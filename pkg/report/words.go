package report

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

func money(x decimal.Decimal) string   { return quantity.FormatMoney(x) }
func dollars(x decimal.Decimal) string { return quantity.FormatDollars(x) }
func percent(x decimal.Decimal) string { return quantity.FormatPercent(x, 1) }
func months(x decimal.Decimal) string  { return quantity.FormatMonths(x, 1) }

func rate(r solve.Rate) string {
	if !r.Found {
		return "none"
	}
	return percent(r.Value)
}

// words turns a line's name into words.
func words(line string) string { return strings.ReplaceAll(line, "_", " ") }
