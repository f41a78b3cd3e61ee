package quantity

import "github.com/shopspring/decimal"

const (
	wantCount = "a plain number, e.g. 3, 1,200 or 2 1/2"
	wantHours = "a number of hours, e.g. 40, 40 hours or 1 1/2 h"
	wantYesNo = "yes or no"
	maxHours  = 1_000_000
)

// ParseCount reads a plain number: 3, 1,200, 2.5, 2 1/2, -4. A fraction without an
// end is rounded to Places decimals.
func ParseCount(text string) (decimal.Decimal, error) {
	return parse(text, wantCount, (*cursor).count)
}

func (c *cursor) count() (decimal.Decimal, error) {
	negative, _ := c.sign()
	n, err := c.rounded(Places)
	if err != nil {
		return decimal.Zero, err
	}
	if negative {
		n = n.Neg()
	}
	return n, nil
}

// ParseHours reads hours of work: 40, 40 hours, 40 h, 1.5 hrs, 1 1/2 hours. Hours
// below zero and above a million are refused.
func ParseHours(text string) (decimal.Decimal, error) {
	return parse(text, wantHours, (*cursor).hours)
}

func (c *cursor) hours() (decimal.Decimal, error) {
	first := c.peek()
	if first.name == "-" {
		return decimal.Zero, c.refuse(first, "hours cannot be below zero")
	}
	hours, err := c.rounded(Places)
	if err != nil {
		return decimal.Zero, err
	}
	if hours.GreaterThan(decimal.NewFromInt(maxHours)) {
		return decimal.Zero, c.refuseSpan(first, c.toks[c.i-1], c.want, "%q is more than a million hours", c.since(first))
	}
	c.take("h", "hr", "hrs", "hour", "hours")
	return hours, nil
}

// ParseYesNo reads yes, true or on, and no, false or off.
func ParseYesNo(text string) (bool, error) {
	return parse(text, wantYesNo, func(c *cursor) (bool, error) {
		t := c.next()
		switch t.name {
		case "yes", "true", "on":
			return true, nil
		case "no", "false", "off":
			return false, nil
		}
		return false, c.refuse(t, "%q is neither yes nor no", t.text)
	})
}
