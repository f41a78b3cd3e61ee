package report

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// A month is 365/12 days, so 2 weeks are 14 x 12 / 365 of one.
func TestShortTimesAreSaidInWeeksOrDays(t *testing.T) {
	days := func(n int64) decimal.Decimal {
		return decimal.NewFromInt(12*n).DivRound(decimal.NewFromInt(365), 18)
	}
	require.Equal(t, "2 weeks", span(days(14)))
	require.Equal(t, "1 week", span(days(7)))
	require.Equal(t, "10 days", span(days(10)))
	require.Equal(t, "1 month", span(decimal.NewFromInt(1)))
	require.Equal(t, "4.5 months", span(decimal.New(45, -1)))
	require.Equal(t, "1.25 months", span(decimal.New(125, -2)))
}

func TestAShareUnderItsTargetIsSeenToBe(t *testing.T) {
	target := decimal.New(8, -2)
	require.Equal(t, "5%", under(decimal.New(5, -2), target))
	require.Equal(t, "7.9%", under(decimal.New(791, -4), target))
	require.Equal(t, "7.9996%", under(decimal.New(79996, -6), target))
}

// A gain of ten days, taken for a year, is a number of 34 digits; no page is as wide.
func TestAShareBeyondReasonIsNotWrittenOut(t *testing.T) {
	require.Equal(t, "over 1,000,000%", percent(decimal.New(425, 31)))
	require.Equal(t, "1000000%", percent(decimal.NewFromInt(10_000)))
	a := answered(t, `
purchase: {price: $200k}
value: {after-repair value: $260k}
time: {renovation: 0 months, escrow: 10 days}
renovation: {lines: [{work: cleaning, amount: $900}]}
loans: {name: flash, price share: 100%, rate: 12%, points: 1%, term: 1 month}
`)
	var out bytes.Buffer
	require.NoError(t, Bid(&out, a, Style{}, false))
	for line := range strings.Lines(out.String()) {
		require.LessOrEqual(t, utf8.RuneCountInString(line), 81, line)
	}
}

func TestSumsAreAsExactAsFits(t *testing.T) {
	x := decimal.RequireFromString("-1851024294.40")
	require.Equal(t, []string{"-$1,851,024,294.40", "-$1,851,024,294", "-$1,851m"}, []string{within(x, 18), within(x, 17), within(x, 14)})
}

// A name from a file does nothing to the terminal; the colours of the page stay.
func TestNoControlCharacterReachesAPage(t *testing.T) {
	var out bytes.Buffer
	p := newPage(&out, Style{Color: true})
	p.title("a\x1b[2Jb\x07c\nd\u009be")
	require.NoError(t, p.flush())
	require.Equal(t, bold+"a\uFFFD[2Jb\uFFFDc d\uFFFDe"+plain+"\n", out.String())
}

// A word that is wider than a page is broken, and no letter is lost.
func TestALongWordIsBroken(t *testing.T) {
	long := strings.Repeat("x", 100)
	require.Equal(t, []string{"a", long[:30], long[30:60], long[60:90], long[90:] + " b"}, wrap("a "+long+" b", 30))
}

func TestInWeeks(t *testing.T) {
	for x, want := range map[string]string{"0": "0 weeks", "1": "1 week", "0.96": "1 week", "1.04": "1 week", "1.1": "1.1 weeks", "12": "12 weeks"} {
		require.Equal(t, want, inWeeks(decimal.RequireFromString(x)), x)
	}
}

// What is shown of an estimate is rounded once.
func TestEstimatesAreRoundedOnce(t *testing.T) {
	require.Equal(t, "1.7%", percentOf(0.017496))
	require.Equal(t, "1.8%", percentOf(0.0175))
	require.Equal(t, "$1,010", asDollars(1010.497))
	require.Equal(t, "$0.50", asDollars(0.497))
}
