package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A deal of lines whose values are stated, with permits by their share and a loan that can be extended.
const valuedDeal = `
house: {year built: 1948}
purchase: {price: $163k, closing: {title: $1,380}}
value: {after-repair value: $271k, low: $249k, lender's value: $262k, as-is value: $160k, expected discount: 2%}
time: {renovation: 4 months, marketing: 6 weeks, escrow: 1 month}
renovation: {contingency: 20%, lines: [{trade: masonry, work: stoop, materials: $9,100, labour: $14k, own hours: 20}], general: {building permits: 1.3%}}
loans: [{name: bank, price share: 70%, renovation share: 80%, rate: 9%, points: 2%, interest on: balance, term: 12 months, cap on after-repair value: 70%, extension: {each: 3 months, fee: 0.5%}}]
holding: {property tax: $2,910/year, vacant insurance: $1,420/year}
selling: {listing agent: {amount: 2.5%, at least: $3,500}, transfer tax: 0.55%, settlement: $1,300}
partner: {share: 40%, split: 40%}
targets: {profit: $5k}
cash: {available: $170k}
`

// What has lost a nought or has one too many among the values, a share of permits, a renovation of
// weeks and a term that ends before the work are to be looked at again; half as much more is not.
func TestValuesAreDoubtedBesideOthers(t *testing.T) {
	look := itoa(int(unusual))
	var over typedOver
	for name, inputs := range map[string][]typed{
		"beyond": {
			{"", "sale_price", 2.71e6, look}, {"", "low_value", 24900.0, look}, {"", "lender_value", 26200.0, look}, {"", "as_is_value", 16000.0, look},
			{"building permits", "share", 0.065, look}, {"", "renovation", 16.0, look}, {"bank", "term", 1.0, look},
		},
		"low": {
			{"", "expected_discount", 0.0002, look}, {"bank", "points_share", 0.0002, look}, {"", "partner_split", 0.04, look}, {"listing agent", "least", 35000.0, look},
			{"transfer tax", "share", 0.055, look}, {"masonry: stoop", "own_hours", 200.0, look},
			{"", "sale_price", 27100.0, look}, {"building permits", "share", 0.13, look},
		},
		"within": {
			{"", "expected_discount", 0.0025, "0"}, {"bank", "points_share", 0.0025, "0"}, {"", "partner_split", 0.1, "0"}, {"listing agent", "least", 5000.0, "0"},
			{"transfer tax", "share", 0.015, "0"}, {"masonry: stoop", "own_hours", 60.0, "0"},
			{"", "sale_price", 390e3, "0"}, {"", "low_value", 165e3, "0"}, {"", "lender_value", 140e3, "0"}, {"", "as_is_value", 90e3, "0"},
			{"building permits", "share", 0.04, "0"}, {"", "renovation", 9.0, "0"}, {"bank", "term", 9.0, "0"}, {"bank", "value_cap", 0.0, "0"},
		},
	} {
		b, err := made(answered(t, valuedDeal), Options{Uncached: true})
		require.NoError(t, err)
		over.add(t, name, b, inputs...)
	}
	for path, f := range over.recomputed(t) {
		page := printed(t, f, "The deal")
		require.Equal(t, strings.Contains(path, "within"), strings.Contains(page, flawless), path)
		require.Equal(t, !strings.Contains(path, "beyond"), strings.Contains(page, noneCapped), path)
		if strings.Contains(path, "beyond") { // 70% of 16,000 and 80% of 23,100 and its fifth and 1.3%, within 70% of 26,200
			require.Contains(t, page, "bank: the lender's cap takes off ")
		}
	}
}
