package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A quote for all of some work below its labour alone is told as far down as the price book is; the
// labour of 1,600 sq ft of siding, with taking off the old, wrap, and fixtures off and on, comes to
// 1,600 * (3.60 + 1.00 + 0.50) + 380 = $8,540.
func TestAQuoteBelowItsLabour(t *testing.T) {
	const den = "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	for work, want := range map[string]string{
		"$8,600":                           "is about what the labour alone of all that it is taken to hold comes to by the price book, $8,540.00",
		"$8,000":                           "is about what",
		"$6,300":                           "is well below what the labour alone of all that it is taken to hold comes to by the price book, $8,540.00",
		"$3,900":                           "is well below",
		"$2,400":                           "is well below",
		"{quote: $2,400, covers: all}":     "",
		"{quote: $2,400, covers: labour}":  "",
		"{quote: $2,400, holds more: yes}": "is well below", // it is lower than its own work
		"{quote: $4,000, allowance: $100}": "is well below",
		"$12,000":                          "",
	} {
		told := toldOf(t, "quote-half", den, "house: {year built: 1988}\noutside: {around: 160 ft, siding: 1600 sq ft, work: {vinyl siding: "+work+"}}\n")
		if want == "" {
			require.Empty(t, told, work)
			continue
		}
		require.Len(t, told, 1, work)
		require.Contains(t, told[0], want, work)
	}
}

// Where the materials are little a quote may be below the labour, as a cheap helper's; below half of
// it it is told. A few hundred dollars are what a trade that comes asks.
func TestACheapQuoteForLabour(t *testing.T) {
	for work, want := range map[string]int{ // in a room of 40' x 30' painting comes to about 1,075 of labour and 250 of paint
		"paint walls: $900": 0, "paint walls: $500": 1, "paint walls: {quote: $500, covers: all}": 0,
		"paint walls: {quote: $60, part: 20%}": 0,
	} {
		require.Len(t, toldOf(t, "quote-half", "  den: {size: 40' x 30', work: {"+work+"}}\n", ""), want, work)
	}
}

// A quote of a quarter under the price book is one that was got by asking around, and of the labour
// alone only within 1.15 times it: here $8,540, of $17,000 or so for all of it.
func TestAGoodQuoteAboveItsLabour(t *testing.T) {
	const den = "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	for quote, want := range map[string]int{"$11,000": 0, "$9,900": 0, "$9,800": 1, "$8,600": 1} {
		require.Len(t, toldOf(t, "quote-half", den, "house: {year built: 1988}\noutside: {around: 160 ft, siding: 1600 sq ft, work: {vinyl siding: "+quote+"}}\n"), want, quote)
	}
}
