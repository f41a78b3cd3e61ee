package quantity

import (
	"math/big"
	"slices"

	"github.com/shopspring/decimal"
)

// Period is what an amount is paid for: a day, a week, a month, a quarter or a year.
type Period int

// The zero Period is none of them.
const (
	Day Period = iota + 1
	Week
	Month
	Quarter
	Year
)

// period is what is known of a Period. A month is 365/12 days.
type period struct {
	name          string
	months        *big.Rat // its length
	nouns, adverb []string // what may be written: behind "a", "per" or "/", and alone
}

// periods is never written to.
var periods = map[Period]period{
	Day:     {"day", big.NewRat(12, 365), []string{"day"}, []string{"daily"}},
	Week:    {"week", big.NewRat(84, 365), []string{"week", "wk"}, []string{"weekly"}},
	Month:   {"month", big.NewRat(1, 1), []string{"month", "mo", "mth"}, []string{"monthly"}},
	Quarter: {"quarter", big.NewRat(3, 1), []string{"quarter", "qtr"}, []string{"quarterly"}},
	Year:    {"year", big.NewRat(12, 1), []string{"year", "yr", "annum"}, []string{"yearly", "annually"}},
}

// String returns "day", "week", "month", "quarter" or "year".
func (p Period) String() string { return periods[p].name }

// MarshalText returns the word.
func (p Period) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// Months returns how long the period is in months, rounded to MonthPlaces decimals; a day
// is 12/365 of a month. It is 0 for the zero Period.
func (p Period) Months() decimal.Decimal {
	if periods[p].months == nil {
		return decimal.Zero
	}
	return toDecimal(periods[p].months, MonthPlaces)
}

// byNoun and byAdverb return the Period a word names, or 0.
func byNoun(name string) Period {
	return periodWhere(func(p period) bool { return slices.Contains(p.nouns, name) })
}

func byAdverb(name string) Period {
	return periodWhere(func(p period) bool { return slices.Contains(p.adverb, name) })
}

func periodWhere(is func(period) bool) Period {
	for p := Day; p <= Year; p++ {
		if is(periods[p]) {
			return p
		}
	}
	return 0
}
