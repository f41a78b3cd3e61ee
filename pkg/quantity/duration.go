package quantity

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

const (
	wantDuration = "a length of time with its unit, e.g. 10 days, 6 weeks or 3 1/2 months"
	maxMonths    = 1200

	// MonthPlaces is how many decimals are kept of a length in months that has no
	// end; a day (0.0328…) so has more than 40 significant digits.
	MonthPlaces = 45
)

// units are the months in a unit of time, under every name it may have. Never written to.
var units = unitNames(map[Period][]string{
	Day:   {"day", "days", "d"},
	Week:  {"week", "weeks", "wk", "wks", "w"},
	Month: {"month", "months", "mo", "mos", "mth", "mths"},
	Year:  {"year", "years", "yr", "yrs", "y"},
})

func unitNames(names map[Period][]string) map[string]Period {
	units := map[string]Period{}
	for p, list := range names {
		for _, name := range list {
			units[name] = p
		}
	}
	return units
}

// Before reports whether a time in months ends before another, by more than what parts of a
// month that have no end are rounded by: 100 days and 80 days are no less than 180.
func Before(a, b decimal.Decimal) bool {
	const places = MonthPlaces / 2
	return a.Round(places).LessThan(b.Round(places))
}

// ParseDuration reads a length of time and returns it in months: 6 weeks,
// 3.75 months, 3 1/2 months, 1 year, or a sum such as 1 month, 10 days. A month is
// 365/12 days; what has no end is rounded to 45 decimals, what has one is exact. A
// number without a unit is refused, except 0, and so is more than 100 years.
func ParseDuration(text string) (decimal.Decimal, error) {
	return parse(text, wantDuration, (*cursor).duration)
}

func (c *cursor) duration() (decimal.Decimal, error) {
	first := c.peek()
	if first.name == "-" {
		return decimal.Zero, c.refuse(first, "a length of time cannot be below zero")
	}
	total, seen := new(big.Rat), map[Period]bool{}
	for {
		figure := c.peek()
		n, err := c.mixed(MonthPlaces)
		if err != nil {
			return decimal.Zero, err
		}
		if n.Sign() == 0 && len(seen) == 0 && c.peek().kind == end {
			return toDecimal(n, 0), nil
		}
		unit, err := c.unit(figure)
		if err != nil {
			return decimal.Zero, err
		}
		if seen[unit] {
			return decimal.Zero, c.refuse(c.toks[c.i-1], "%ss are given twice", unit)
		}
		seen[unit] = true
		total.Add(total, n.Mul(n, periods[unit].months))
		if !c.take(",", "and", "+") && c.peek().kind == end {
			break
		}
	}
	if total.Cmp(big.NewRat(maxMonths, 1)) > 0 {
		return decimal.Zero, c.refuseSpan(first, c.toks[c.i-1], c.want, "%q is longer than 100 years", c.since(first))
	}
	return toDecimal(total, MonthPlaces), nil
}

// unit reads the unit of the number that began at figure.
func (c *cursor) unit(figure token) (Period, error) {
	bare, t := c.since(figure), c.peek()
	if unit, ok := units[t.name]; ok {
		c.next()
		return unit, nil
	}
	switch {
	case t.name == "m":
		return 0, c.refuseFor(t, fmt.Sprintf("the unit in letters: %s months", bare), "%q could be months or minutes", t.text)
	case t.kind == word:
		return 0, c.refuse(t, "%q is not a unit of time used here", t.text)
	case t.name == "-" && c.ahead(1).kind == number:
		return 0, c.refuseSpan(figure, c.toks[len(c.toks)-2], "one length of time with its unit, e.g. 6 weeks or 3 1/2 months",
			"%q is not one length of time", c.text[figure.at:c.toks[len(c.toks)-2].end()])
	case t.kind != end && t.name != ",":
		last := c.toks[len(c.toks)-2]
		return 0, c.refuseSpan(t, last, c.want, "%q is not a unit of time", c.text[t.at:last.end()])
	}
	want := fmt.Sprintf("its unit: %s days, %[1]s weeks or %[1]s months", bare)
	if bare == "1" {
		want = "its unit: 1 day, 1 week or 1 month"
	}
	return 0, c.refuseSpan(figure, c.toks[c.i-1], want, "%q has no unit", bare)
}
