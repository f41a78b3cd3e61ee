package quantity

import (
	"math/big"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// Expected texts are rounded by hand, half away from zero.
func TestFormat(t *testing.T) {
	tests := []struct{ got, want string }{
		{FormatMoney(dec("-1234.5")), "-$1,234.50"},
		{FormatMoney(dec("0")), "$0.00"},
		{FormatMoney(dec("-0.004")), "$0.00"},
		{FormatMoney(dec("-0.005")), "-$0.01"},
		{FormatMoney(dec("999.995")), "$1,000.00"},
		{FormatMoney(dec("0.0049999999999")), "$0.01"}, // 9 decimals first: 0.005
		{FormatMoney(dec("285e3")), "$285,000.00"},
		{FormatMoney(dec("1234567.1")), "$1,234,567.10"},
		{FormatDollars(dec("1234.5")), "$1,235"},
		{FormatDollars(dec("-1234.5")), "-$1,235"},
		{FormatDollars(dec("-0.4")), "-$0.40"},
		{FormatDollars(dec("-0.004")), "$0"},
		{FormatMonths(dec("0.0329"), 1), "0.033 months"},
		{FormatDollars(dec("999.5")), "$1,000"},
		{FormatRate(Rate{dec("1200"), Month}), "$1,200/month"},
		{FormatRate(Rate{dec("365.5"), Quarter}), "$365.50/quarter"},
		{FormatStep(Step{dec("0.7"), dec("100")}), "$0.70 per $100 or part"},
		{FormatStep(Step{dec("0.115"), dec("1e3")}), "$0.115 per $1,000 or part"},
		{FormatPercent(dec("0.075"), 2), "7.5%"},
		{FormatPercent(dec("0.12345"), 2), "12.35%"},
		{FormatPercent(dec("-0.12345"), 2), "-12.35%"},
		{FormatPercent(dec("0.5"), 0), "50%"},
		{FormatPercent(dec("12"), -3), "1200%"},
		{FormatMonths(dec("3.75"), 2), "3.75 months"},
		{FormatMonths(dec("1"), 2), "1 month"},
		{FormatMonths(dec("0.999"), 2), "1 month"},
		{FormatMonths(dec("0"), 2), "0 months"},
		{FormatMonths(dec("1200"), 2), "1,200 months"},
		{FormatHours(dec("1.00"), 2), "1 hour"},
		{FormatHours(dec("40"), 0), "40 hours"},
		{FormatCount(dec("-1200"), 2), "-1,200"},
		{FormatCount(dec("2.555"), 2), "2.56"},
		{FormatYesNo(true), "yes"},
		{FormatYesNo(false), "no"},
		{Date{2026, time.May, 4}.Long(), "May 4, 2026"},
	}
	for _, tt := range tests {
		assert.Equal(t, tt.want, tt.got)
	}
}

// drawDecimal draws a decimal between 0 and most, of at most places decimals.
func drawDecimal(t *rapid.T, most int64, places int32) decimal.Decimal {
	n := rapid.Int64Range(0, most).Draw(t, "whole")
	p := rapid.Int32Range(0, min(places, 18)).Draw(t, "places")
	return trim(decimal.NewFromInt(n).Add(decimal.New(rapid.Int64Range(0, pow10(p)-1).Draw(t, "decimals"), -p)))
}

func pow10(n int32) int64 { return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil).Int64() }

func drawSigned(t *rapid.T, most int64, places int32) decimal.Decimal {
	d := drawDecimal(t, most, places)
	if rapid.Bool().Draw(t, "minus") {
		return d.Neg()
	}
	return d
}

func drawDate(t *rapid.T) Date {
	return Date{1900, time.January, 1}.AddDays(rapid.IntRange(0, 109_571).Draw(t, "day"))
}

func TestRoundTrip(t *testing.T) {
	const trillion = 999_999_999_999_999 // fifteen digits; two figures of 12 decimals more fit into what is read
	draws := map[string]func(*rapid.T) any{
		"money": func(t *rapid.T) any { return drawSigned(t, trillion, 2) },
		"rate": func(t *rapid.T) any {
			return Rate{drawSigned(t, trillion, 2), Period(rapid.IntRange(1, 5).Draw(t, "per"))}
		},
		"percent":  func(t *rapid.T) any { return trim(drawSigned(t, trillion, 18).Shift(-2)) },
		"duration": func(t *rapid.T) any { return drawDecimal(t, maxMonths-1, 18) },
		"count":    func(t *rapid.T) any { return drawSigned(t, trillion, 18) },
		"hours":    func(t *rapid.T) any { return drawDecimal(t, maxHours-1, 18) },
		"step": func(t *rapid.T) any {
			return Step{drawDecimal(t, trillion, 4), drawDecimal(t, trillion-1, 2).Add(decimal.NewFromInt(1))}
		},
		"date":   func(t *rapid.T) any { return drawDate(t) },
		"yesno":  func(t *rapid.T) any { return rapid.Bool().Draw(t, "yes") },
		"length": func(t *rapid.T) any { return drawLength(t) },
		"size":   func(t *rapid.T) any { return drawSides(t) },
		"openings": func(t *rapid.T) any {
			return openings{rapid.IntRange(1, maxOpenings).Draw(t, "count"), drawSides(t)}
		},
		"area":   func(t *rapid.T) any { return drawLength(t).Times(drawLength(t)) },
		"days":   func(t *rapid.T) any { return drawDecimal(t, trillion, 18) },
		"pounds": func(t *rapid.T) any { return drawDecimal(t, trillion, 18) },
		"volume": func(t *rapid.T) any { return Volume{drawDecimal(t, 764_554_856, 18)} },
		"pitch": func(t *rapid.T) any {
			return Pitch{drawDecimal(t, trillion, 12), drawDecimal(t, trillion-1, 12).Add(decimal.NewFromInt(1))}
		},
		"per": func(t *rapid.T) any {
			if money := rapid.Bool().Draw(t, "money"); money {
				return Per{drawDecimal(t, trillion, 4), true, "", drawUnit(t)}
			}
			return Per{drawDecimal(t, trillion, 12), false, rapid.SampledFrom([]Unit{"", drawUnit(t)}).Draw(t, "top"), drawUnit(t)}
		},
		"pack": func(t *rapid.T) any {
			word := rapid.StringMatching(`[a-z]{2,20}`).Draw(t, "word")
			return Pack{word, drawDecimal(t, trillion-1, 12).Add(decimal.NewFromInt(1)), drawUnit(t)}
		},
	}
	require.Len(t, draws, len(kinds))
	for name, draw := range draws {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) { checkRoundTrip(t, kinds[name], draw(t)) })
		})
	}
}

func TestISORoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDate(t)
		got, err := ParseDate(d.String())
		require.NoError(t, err)
		assert.Equal(t, d, got)
	})
}

func TestCountedThings(t *testing.T) {
	assert.Equal(t, []string{"1 entry", "0 entries", "2 sales", "1,200 boxes"}, []string{Counted(1, "entry"), Counted(0, "entry"), Counted(2, "sale"), Counted(1200, "box")})
}
