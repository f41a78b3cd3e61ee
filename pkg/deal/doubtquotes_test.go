package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// An allowance is held against what it stands for, not against the labour of putting it in. The
// starter book has a refrigerator at $1,090; cabinets along 12 ft cost thousands.
func TestAnAllowanceIsHeldAgainstItsProduct(t *testing.T) {
	for work, doubted := range map[string]bool{
		"fridge: {by: hired, count: 1, allowance: $450}":                  false,
		"fridge: {by: hired, count: 1, allowance: $0}":                    false,
		"fridge: {by: hired, count: 1, allowance: $5,460}":                true,
		"fridge: {by: hired, count: 1, allowance: $217}":                  true,
		"fridge: {by: hired, count: 1, allowance: $150, note: used}":      false,
		"fridge: {by: hired, count: 1, allowance: $150, note: white}":     true,
		"fridge: {by: hired, count: 1, allowance: $9k, note: vintage}":    true,
		"kitchen cabinets: {by: hired, count: 12 ft, allowance: $39}":     true,
		"kitchen cabinets: {by: hired, count: 12 ft, allowance: $2,600}":  false,
		"kitchen cabinets: {by: hired, count: 12 ft, allowance: $39,000}": true,
		"paint walls: {by: hired, allowance: $15}":                        false,
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, "paint walls: hired", work, 1)))
		require.False(t, found.HasErrors(), "%v", found)
		require.Equal(t, doubted, slices.Contains(codesIn(found), "quote-far"), "%s: %v", work, found)
	}
}

// A quote for a whole kitchen on one of its works is far above what that work costs; the file says
// that it holds more. That settles no quote that is far too low, and without a quote it is told. What
// comes along is paid besides, unless the file says what is left out.
func TestAQuoteMayHoldMoreThanItsWork(t *testing.T) {
	for work, doubts := range map[string]string{
		"kitchen cabinets: {quote: $45,000, count: 12 ft}":                  "quote-far",
		"kitchen cabinets: {quote: $45,000, count: 12 ft, holds more: yes}": "quote-beside",
		"kitchen cabinets: {quote: $45,000, count: 12 ft, holds more: no}":  "quote-far",
		"kitchen cabinets: {quote: $450, count: 12 ft, holds more: yes}":    "quote-far",
		"kitchen cabinets: {by: hired, count: 12 ft, holds more: yes}":      "quote-detail",
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, "paint walls: hired", work, 1)))
		require.False(t, found.HasErrors(), "%v", found)
		var got []string
		for _, d := range found {
			if strings.HasPrefix(d.Code, "quote-") {
				got = append(got, d.Code)
			}
			if d.Code == "quote-far" {
				require.Equal(t, strings.Contains(work, "$45,000, count: 12 ft}"), strings.Contains(d.Hint, "holds more: yes"), "%s", d.Hint)
			}
		}
		require.Equal(t, doubts, strings.Join(got, "; "), "%s: %v", work, found)
	}
}

// What a quote that holds more brings along, paid besides, is told where it is much.
func TestAQuoteThatHoldsMoreAndWhatComesAlong(t *testing.T) {
	for work, want := range map[string]int{
		"{tub: {quote: $9400, holds more: yes}}":                                                              1,
		"{tub: {quote: $9400, holds more: yes}}, without: []":                                                 0,
		"{tub: {quote: $9400, holds more: yes}}, without: [tub surround tile]":                                0,
		"{tub: {quote: $9400}}":                                                                               0,
		"{toilet: {quote: $2400, holds more: yes}}":                                                           0, // brings little along
		"{tile floor: {quote: $4400, holds more: yes, from: Elm}, tub surround tile: {quote: $0, from: Elm}}": 0,
	} {
		told := toldOf(t, "quote-beside", "  bath: {size: 8' x 5', fixed: {tub: 5' x 2'6\", toilet: 1}, work: "+work+"}\n", "house: {year built: 1996}\n")
		require.Len(t, told, want, "%s: %v", work, told)
		if want > 0 {
			require.Contains(t, told[0], "what else bath takes is priced besides: tub surround tile, ")
		}
	}
	for rest, want := range map[string]int{
		"}}":                              1,
		"}}, without: [laminate counter]": 1, // not put back, but it would not come along either
		"}}, without: [laminate counter, strip cabinets]":                      0,
		"}}, without: [shutoffs and supply lines]":                             0,
		", note: nothing else}}, without: [laminate counter]":                  0,
		", note: the counter but none of the rest}}, without: [stone counter]": 0,
		", note: nothing}}, without: [laminate counter, roof flashing]":        1,
		"}, paint walls: own hands}, without: [laminate counter, baseboard]":   1,
		"}, paint walls: own hands}, without: [laminate counter, paint walls]": 0,
	} {
		told := toldOf(t, "quote-beside", "  kitchen: {size: 14' x 12', doors: 1, fixed: {base cabinets: 14' x 2', wall cabinets: 12' x 1', sink: 1}, work: {kitchen cabinets: {quote: $28,000, from: Elm, holds more: yes"+rest+"}\n", "")
		require.Len(t, told, want, "%s: %v", rest, told)
	}
}

// A quote for all of some work is held against all that it is taken to hold, which may come to several
// times the work itself, as washing, scraping and priming beside painting outside: with those 1,440 sq ft
// come to over three times the $2,245.62 of the painting.
func TestAQuoteFarAboveAllThatItHolds(t *testing.T) {
	const den = "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	for quote, want := range map[string]string{
		"$12,400":                           "",
		"{quote: $12,400, holds more: no}":  "",
		"{quote: $40,000, holds more: no}":  "is over 5 times what the price book says of all that it is taken to hold, ",
		"$40,000":                           "is over 5 times what the price book says of all that it is taken to hold, ",
		"{quote: $40,000, holds more: yes}": "",
		"{quote: $15,000, covers: labour}":  "is over 5 times what the price book says, ",
		"{quote: $90, covers: labour}":      "is under a fifth of what the price book says, ",
	} {
		told := toldOf(t, "quote-far", den, "house: {year built: 1988}\noutside: {around: 160 ft, siding: 1440 sq ft, doors: 2, windows: 12, work: {outside wall paint: "+quote+"}}\n")
		if want == "" {
			require.Empty(t, told, quote)
			continue
		}
		require.Len(t, told, 1, quote)
		require.Contains(t, told[0], want, quote)
	}
}
