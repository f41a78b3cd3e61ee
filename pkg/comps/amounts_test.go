package comps

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/quantity"
)

func usd(v int64) decimal.Decimal { return decimal.NewFromInt(v) }

func requireUSD(t *testing.T, want int64, got decimal.Decimal) {
	t.Helper()
	require.Equal(t, usd(want).String(), got.String())
}

// Andersen, On Time Adjustments, quoted 2025-03-28: $400,000, 42 days, 12% a year
// simple, 365 days to it: $5,523. The compound figure is worked from the rule,
// 400,000 × (1.12^(42/365) − 1) = 5,250.38.
func TestTime(t *testing.T) {
	requireUSD(t, 5523, TimeSimple(usd(400_000), decimal.New(12, -2), 42))
	requireUSD(t, 5250, TimeCompound(usd(400_000), decimal.New(12, -2), 42))
	requireUSD(t, 0, TimeSimple(usd(400_000), decimal.New(12, -2), 0))
}

// Appraisal course notes, elements of comparison: 510,000 at 2% is 520,200; 499,000
// at 4% is 518,960.
func TestMarketAdjusted(t *testing.T) {
	requireUSD(t, 520_200, MarketAdjusted(usd(510_000), decimal.Zero, decimal.New(2, -2)))
	requireUSD(t, 518_960, MarketAdjusted(usd(499_000), decimal.Zero, decimal.New(4, -2)))
	// by hand: spent at once after the sale comes first, (100,000 + 10,000) × 1.1
	requireUSD(t, 121_000, MarketAdjusted(usd(100_000), usd(10_000), decimal.New(1, -1)))
}

// Licence-school examples: a pool worth $3,000 that the subject has and the sale
// lacks is +3,000 on the sale; $285,000 with a garage and $270,000 without make the
// garage worth $15,000.
func TestSigns(t *testing.T) {
	requireUSD(t, 3000, Feature(true, false, usd(3000)))
	requireUSD(t, -3000, Feature(false, true, usd(3000)))
	requireUSD(t, 0, Feature(true, true, usd(3000)))
	requireUSD(t, 15_000, Paired(usd(285_000), usd(270_000)))
}

// The rule of the California BOE Assessors' Handbook 502, p. 46: percent change over
// the months between. The figures are worked by hand: 200,000 to 212,000 in a year
// of 365 days is 6% in 12 months.
func TestResale(t *testing.T) {
	from := quantity.Date{Year: 2025, Month: 3, Day: 1}
	rate, err := Resale(usd(200_000), usd(212_000), from, from.AddDays(365))
	require.NoError(t, err)
	require.InDelta(t, 0.005, rate, 1e-12)
	_, err = Resale(usd(200_000), usd(212_000), from, from)
	require.ErrorIs(t, err, ErrNoTime)
}
