package quantity

import (
	"strings"

	"github.com/shopspring/decimal"
)

// FormatMoney prints dollars and cents: -1234.5 is -$1,234.50. Like cents in a deal, the
// amount is rounded to 9 decimals and then to 2, both half away from zero.
func FormatMoney(d decimal.Decimal) string { return dollars(d.Round(9).Round(2), 2) }

// FormatDollars prints whole dollars: 1234.5 is $1,235. The amount is rounded to 9
// decimals and then to none, both half away from zero. Less than half a dollar is not
// nothing, and keeps its cents.
func FormatDollars(d decimal.Decimal) string {
	whole := d.Round(9).Round(0)
	if cents := d.Round(9).Round(2); whole.IsZero() && !cents.IsZero() {
		return dollars(cents, 2)
	}
	return dollars(whole, 0)
}

// FormatRate prints an amount for a period: $1,200/month, $365.50/quarter.
func FormatRate(r Rate) string { return shortDollars(r.Amount) + "/" + r.Per.String() }

// FormatStep prints a charge by steps: $0.70 per $100 or part.
func FormatStep(s Step) string {
	return shortDollars(s.Each) + " per " + shortDollars(s.Unit) + " or part"
}

// FormatPercent prints a fraction as a percentage of at most that many decimals,
// rounded half away from zero: 0.075 is 7.5%.
func FormatPercent(fraction decimal.Decimal, decimals int32) string {
	return round(fraction.Shift(2), decimals).String() + "%"
}

// FormatMonths prints months with at most that many decimals, rounded half away from
// zero: 3.75 months, 1 month. A day is not nothing: too little for so many decimals
// gets two more. What ParseDuration returned comes back unchanged with MonthPlaces.
func FormatMonths(months decimal.Decimal, decimals int32) string {
	if round(months, decimals).IsZero() {
		decimals += 2
	}
	return plural(months, decimals, "month")
}

// FormatHours prints hours with at most that many decimals, rounded half away from
// zero: 40 hours, 1 hour.
func FormatHours(hours decimal.Decimal, decimals int32) string {
	return plural(hours, decimals, "hour")
}

// FormatCount prints a number with commas and at most that many decimals, rounded
// half away from zero: 1,200, 2.5.
func FormatCount(n decimal.Decimal, decimals int32) string {
	return commas(round(n, decimals).String())
}

// FormatYesNo prints yes or no.
func FormatYesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func plural(n decimal.Decimal, decimals int32, unit string) string {
	n = round(n, decimals)
	if !n.Equal(decimal.NewFromInt(1)) {
		unit += "s"
	}
	return commas(n.String()) + " " + unit
}

func round(d decimal.Decimal, decimals int32) decimal.Decimal { return d.Round(max(decimals, 0)) }

// shortDollars leaves the cents out where there are none, and keeps all where there are.
func shortDollars(d decimal.Decimal) string {
	d = trim(d)
	if d.Exponent() >= 0 {
		return dollars(d, 0)
	}
	return dollars(d, max(-d.Exponent(), 2))
}

func dollars(d decimal.Decimal, places int32) string {
	s := "$" + commas(d.Abs().StringFixed(places))
	if d.IsNegative() {
		return "-" + s
	}
	return s
}

// commas puts commas between the thousands of a printed number.
func commas(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	before, after, point := strings.Cut(s, ".")
	for i := len(before) - 3; i > 0; i -= 3 {
		before = before[:i] + "," + before[i:]
	}
	if point {
		before += "." + after
	}
	return sign + before
}
