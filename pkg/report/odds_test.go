package report

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/odds"
)

func TestFiguresFitTheirColumns(t *testing.T) {
	for x, want := range map[float64]string{0: "$0", -4882.6: "-$4,883", 999_999: "$999,999", 1_234_567: "$1.235m", -12_345_678: "-$12.346m", 987_654_321: "$987.654m", -987_654_321: "-$987.65m", -98_765_432_109: "-$98765m"} {
		require.Equal(t, want, inColumn(x))
		require.LessOrEqual(t, len(inColumn(x)), oddsColumn)
	}
	for x, want := range map[float64]string{142.2: "$142", 999.6: "1.0k", 8427: "8.4k", 11_748: "12k", 123_456: "123k", 999_600: "1.0m", 12_345_678: "12m"} {
		require.Equal(t, want, asError(x))
	}
	for x, want := range map[float64]string{0: "0.00", 0.004: "<0.01", 9.994: "9.99", 47.64: "47.6", 1563.7: "1564", 47_640: "48k"} {
		require.Equal(t, want, asHundredths(x))
	}
	for x, want := range map[float64]string{-12.34: "-12.3%", 7257.6: "7258%", 112_192: "112192%"} {
		require.Equal(t, want, asPercent(x))
	}
}

func TestSharesAreSaidInCasesOf100(t *testing.T) {
	for x, want := range map[float64]string{0: "none", 0.001: "fewer than 1", 0.167: "about 17", 0.999: "more than 99", 1: "all"} {
		require.Equal(t, want, outOf100(x))
	}
	for x, want := range map[float64]string{0: "0", 0.00002: "<0.01", 0.0004: "0.04", 0.0015: "0.2", 0.5: "50.0"} {
		require.Equal(t, want, oneIn100(x))
	}
}

// The steps are round, meet, have an edge at 0 and hold all trials.
func TestTheHistogramsSteps(t *testing.T) {
	h := odds.NewHistogram()
	for i := range 10_000 {
		h.Add([]float64{float64(i)*5 - 12_345})
	}
	all := steps(h)
	require.GreaterOrEqual(t, len(all), 7)
	sum, zero := 0.0, false
	for i, s := range all {
		sum += s.share
		zero = zero || s.from == 0
		require.Equal(t, 5000.0, s.to-s.from)
		require.True(t, i == 0 || all[i-1].to == s.from)
	}
	require.InDelta(t, 1, sum, 1e-9)
	require.True(t, zero)

	same := odds.NewHistogram()
	same.Add([]float64{500, 500, 500})
	require.Equal(t, []step{{500, 500, 1}}, steps(same), "one of what does not vary")
}
