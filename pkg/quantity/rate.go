package quantity

import (
	"math/big"

	"github.com/shopspring/decimal"
)

const wantRate = "dollars for a period, e.g. $1,200/month, 365.50 a quarter or $4,120 per year"

// Rate is an amount of dollars for each period.
type Rate struct {
	Amount decimal.Decimal `json:"amount"`
	Per    Period          `json:"per"`
}

// ParseRate reads an amount, as ParseMoney does, for a day, week, month, quarter or
// year: $1,200/month, 1200 a month, 1200 per month, 1200 monthly.
func ParseRate(text string) (Rate, error) { return parse(text, wantRate, (*cursor).rate) }

func (c *cursor) rate() (Rate, error) {
	amount, err := c.money(2)
	if err != nil {
		return Rate{}, err
	}
	find, missing := byAdverb, `%q is neither "per" nor a word like monthly`
	if c.take("/", "a", "an", "per", "each", "every") {
		find, missing = byNoun, "%q is not a period"
	}
	t := c.peek()
	p := find(t.name)
	switch {
	case t.kind == end:
		return Rate{}, c.refuse(t, "the period is missing")
	case p == 0:
		return Rate{}, c.refuse(t, missing, t.text)
	}
	c.next()
	return Rate{amount, p}, nil
}

// PerMonth returns the amount for one month, rounded to Places decimals and not to
// cents: a quarter's is a third of it, a year's a twelfth, a week's 365/84 of it.
func (r Rate) PerMonth() decimal.Decimal {
	months := periods[r.Per].months
	if months == nil {
		return decimal.Zero
	}
	return toDecimal(new(big.Rat).Quo(r.Amount.Rat(), months), Places)
}
