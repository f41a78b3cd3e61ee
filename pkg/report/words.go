package report

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

func money(x decimal.Decimal) string   { return quantity.FormatMoney(x) }
func dollars(x decimal.Decimal) string { return quantity.FormatDollars(x) }

// mostShare is the largest share that is written out: a gain of days, taken for a whole
// year, may have more digits than a page has columns.
var mostShare = decimal.NewFromInt(10_000)

func percent(x decimal.Decimal) string {
	if x.GreaterThan(mostShare) {
		return "over 1,000,000%"
	}
	return quantity.FormatPercent(x, 1)
}

// percentOf is the same of an estimate, rounded once.
func percentOf(x float64) string { return percent(decimal.NewFromFloat(x)) }

// months writes a time in hundredths of a month, on every page, so that a figure reads the
// same wherever it stands.
func months(x decimal.Decimal) string     { return quantity.FormatMonths(x, 2) }
func hundredths(x decimal.Decimal) string { return x.Round(2).String() }

// capital is a text that begins a line.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

// span is a time that a file gives: in months where a tenth of one says it all, else in
// whole weeks or days where it comes to them.
func span(x decimal.Decimal) string {
	days := formula.Divide(x.Mul(decimal.NewFromInt(365)), decimal.NewFromInt(12)).Round(9)
	switch week := decimal.NewFromInt(7); {
	case x.Equal(x.Round(1)):
		return months(x)
	case days.IsInteger() && days.Mod(week).IsZero():
		return inWeeks(days.Div(week))
	case days.IsInteger():
		return days.String() + " " + plural("day", days)
	}
	return quantity.FormatMonths(x, 2)
}

// inWeeks is a time in weeks, to a tenth.
func inWeeks(x decimal.Decimal) string {
	x = x.Round(1)
	return exactly(x) + " " + plural("week", x)
}

func rate(r solve.Rate) string {
	if !r.Found {
		return "none"
	}
	return percent(r.Value)
}

// within is a sum as exactly as fits: with cents, in dollars or in millions.
func within(x decimal.Decimal, width int) string {
	for _, said := range []string{money(x), dollars(x)} {
		if len(said) <= width {
			return said
		}
	}
	return dollars(x.Shift(-6)) + "m"
}

// words turns a line's name into words.
func words(line string) string { return strings.ReplaceAll(line, "_", " ") }
