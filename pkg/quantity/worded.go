package quantity

import (
	"strings"

	"github.com/shopspring/decimal"
)

// ParseDays reads days of waiting: 2 days, 1 1/2 days, 2 weeks. Days below zero are
// refused.
func ParseDays(text string) (decimal.Decimal, error) {
	return worded(text, "days or weeks, e.g. 15 days", map[string]int64{"day": 1, "days": 1, "week": 7, "weeks": 7})
}

// ParsePounds reads a weight in pounds: 6000 lb, 3 tons of 2,000 lb each. Weights below
// zero are refused.
func ParsePounds(text string) (decimal.Decimal, error) {
	return worded(text, "pounds or tons, e.g. 6000 lb or 3 tons",
		map[string]int64{"lb": 1, "lbs": 1, "pound": 1, "pounds": 1, "ton": 2000, "tons": 2000})
}

// worded reads a number and the word behind it, which says how many it stands for.
func worded(text, want string, words map[string]int64) (decimal.Decimal, error) {
	trimmed := strings.TrimSpace(text)
	at := strings.LastIndex(trimmed, " ")
	x, err := ParseCount(trimmed[:max(at, 0)])
	times, known := words[strings.ToLower(trimmed[at+1:])]
	if err != nil || !known || x.IsNegative() {
		return x, &Error{Found: text, Why: "it is no number with its unit", Want: want}
	}
	return trim(x.Mul(decimal.NewFromInt(times))), nil
}
