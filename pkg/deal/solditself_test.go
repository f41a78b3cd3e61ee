package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// codesOf are what is told of a deal, counted by code.
func codesOf(t *testing.T, text string, codes ...string) map[string]int {
	t.Helper()
	d, found := deal.Read("a.yaml", []byte(text))
	require.NotNil(t, d, "%v", found)
	out := map[string]int{}
	for _, x := range found {
		for _, c := range codes {
			if x.Code == c {
				out[c]++
			}
		}
	}
	return out
}

// toldOnce holds that one of some findings says something and how to go on; none where that is "".
func toldOnce(t *testing.T, found diag.List, about func(diag.Diag) bool, says, hint string, of any) {
	t.Helper()
	got := slices.DeleteFunc(slices.Clone(found), func(d diag.Diag) bool { return !about(d) })
	if says == "" {
		require.Empty(t, got, of)
		return
	}
	require.Len(t, got, 1, "%v: %v", of, found)
	require.Contains(t, got[0].Message, says, of)
	require.Contains(t, got[0].Hint, hint, of)
	readsWell(t, got[0])
}

// The house's own earlier sale is known by its place or its number, and by all that is known of both.
func TestTheHouseItselfUnderAnotherName(t *testing.T) {
	const facts = "living area: 1,210 sq ft, lot: 7000 sq ft, bedrooms: 3, baths: 1.5, year built: 1958"
	const other = "\n    2 Oak St: {sold: 2025-10-02, price: $301k, living area: 1190, lot: 7100, bedrooms: 3, baths: 1.5, year built: 1957, distance: 0.2 mi}\n"
	for sale, want := range map[string]int{
		"P-1182: {distance: 0 mi, " + facts + ", condition: poor":               1,
		"18 N Birch St: {" + facts:                                              1,
		"18 Brich St: {" + facts:                                                1,
		"P-1182: {" + facts:                                                     0, // nothing tells where it stands
		"18 Birch St Apt 1: {" + facts:                                          1,
		"18 Willow St: {" + facts:                                               0, // of one plan
		"20 Birch St: {distance: 0 mi, " + facts:                                0,
		"20 Birch St: {" + facts:                                                0,
		"P-1182: {distance: 0 mi, living area: 1210, bedrooms: 3":               0, // too little is known
		"P-1182: {distance: 0 mi, " + strings.Replace(facts, "1958", "1957", 1): 0,
		"P-1182: {distance: 0.1 mi, " + facts:                                   0,
	} {
		text := unvalued + "house: {address: 18 Birch St, " + facts + "}\ncomps:\n  sold:\n    " + strings.Replace(sale, "{", "{sold: 2025-09-01, price: $180k, ", 1) + "}" + other
		require.Equal(t, want, codesOf(t, text, "sale-of-the-house")["sale-of-the-house"], sale)
	}
}

// Units of one building are not the house, however alike.
func TestUnitsAreNotTheHouseItself(t *testing.T) {
	const facts = "living area: 980 sq ft, bedrooms: 2, baths: 1.5, year built: 1984, type: condo"
	for _, c := range []struct {
		house, sale string
		want        int
	}{
		{"900 Lake Blvd #207", "900 Lake Blvd #101", 0}, {"900 Lake Blvd, Unit 207", "900 Lake Blvd Apt 1", 0}, {"14 Oak St Unit B", "14 Oak St Unit A", 0},
		{"900 Lake Blvd #207", "900 Lake Blvd 1A", 0}, {"900 Lake Blvd #207", "900 Lake Blvd Unit 207", 1},
		{"10 Finch Way", "10 Wren Way", 0}, {"10 Finch Way", "10 Finch Ct", 1}, {"10 Finch Way", "10 N Finch Way", 1},
	} {
		text := unvalued + "house: {address: \"" + c.house + "\", " + facts + "}\ncomps:\n  sold:\n    \"" + c.sale + "\": {sold: 2025-09-01, price: $180k, distance: 0 mi, " + facts + "}\n"
		require.Equal(t, c.want, codesOf(t, text, "sale-of-the-house")["sale-of-the-house"], c)
	}
}

// A hint can be written into the file as it stands.
func TestAHintQuotesWhatNeedsQuotes(t *testing.T) {
	const facts = "living area: 980 sq ft, bedrooms: 2, baths: 1.5, year built: 1984"
	text := unvalued + "house: {address: \"9 Lake Blvd #2\", " + facts + "}\ncomps:\n  sold:\n    \"9 Lake Blvd #2\": {sold: 2025-09-01, price: $180k, " + facts + "}\n    8 Elm St: {sold: 2025-10-01, price: $190k, " + facts + "}\n"
	_, found := deal.Read("a.yaml", []byte(text))
	own := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "sale-of-the-house" })
	require.Contains(t, found[own].Hint, `strike: ["9 Lake Blvd #2"]`)
	_, found = deal.Read("a.yaml", []byte(text+"  strike: [\"9 Lake Blvd #2\"]\n"))
	require.NotContains(t, found.Error(), "the house itself")
	_, found = deal.Read("a.yaml", []byte(text+"  strike: [9 Lake Blvd #2]\n"))
	require.Contains(t, found[0].Hint, "put a text with # in it in quotes")
}

// A house that stands outside all its sales is doubted, not one at their edge, nor one with two.
func TestAHouseOutsideItsSales(t *testing.T) {
	for _, c := range []struct {
		x, sales string
		want     int
	}{
		{"10000", "100|900|2600", 1},
		{"4500", "100|900|2600", 0}, // nearer than they are wide
		{"3000", "100|300|700", 1},
		{"2000", "100|300|700", 0}, // under a mile
		{"10000", "100|900", 0},
		{"500", "100|900|2600", 0},
	} {
		text := unvalued + "house: {x: " + c.x + ", y: 50, living area: 1200 sq ft}\ncomps:\n  amounts: {square foot: $80}\n  table: |\n    address | sold on | price | x | y | living area\n"
		for i, x := range strings.Split(c.sales, "|") {
			text += fmt.Sprintf("    %d Elm St | 2025-10-%d | 30%d,000 | %s | 50 | 1200\n", i+1, 10+i, i, x)
		}
		require.Equal(t, c.want, codesOf(t, text, deal.MistypedHouse)[deal.MistypedHouse], c)
	}
}

// A digit too many or too few in a lot is told, of the house and of a sale.
func TestASlippedLotIsTold(t *testing.T) {
	for _, c := range []struct {
		house string
		sales string
		want  map[string]int
	}{
		{"7000", "7200|6500|8000|7100", map[string]int{}},
		{"7000", "70000|6500|8000|7100", map[string]int{"sale-odd-size": 1}},
		{"7000", "700|6500|8000|7100", map[string]int{"sale-odd-size": 1}},
		{"7000", "36000|6500|8000|7100", map[string]int{}},
		{"1000", "6500|7000|8200|7100", map[string]int{"house-beyond-sales": 1}},
		{"25000", "6500|7000|8200|7100", map[string]int{"house-beyond-sales": 1}},
		{"20000", "6500|7000|8200|7100", map[string]int{"house-beyond-sales": 1}}, // at $1 a sq ft, 4% of the value
		{"12000", "6500|7000|8200|7100", map[string]int{}},
		{"70000", "6500|7000|8200|7100", map[string]int{deal.MistypedHouse: 1}},
		{"45000", "6500|7000|40000|7100", map[string]int{}}, // one has such a lot
	} {
		text := unvalued + "house: {living area: 1200 sq ft, lot: " + c.house + " sq ft}\ncomps:\n  amounts: {square foot: $80, square foot of lot: $1}\n  table: |\n    address | sold on | price | living area | lot\n"
		for i, lot := range strings.Split(c.sales, "|") {
			text += fmt.Sprintf("    %d Elm St | 2025-10-%d | 30%d,000 | 12%d0 | %s\n", i+1, 10+i, i, i, lot)
		}
		require.Equal(t, c.want, codesOf(t, text, "sale-odd-size", "house-beyond-sales", deal.MistypedHouse), "%s beside %s", c.house, c.sales)
	}
}

// A house that is to be better than all sales that weigh something is told.
func TestAHouseInBetterConditionThanItsSales(t *testing.T) {
	for _, c := range []struct {
		house, sales string
		want         int
	}{
		{"excellent", "good|average|good", 1}, {"excellent", "good|average|excellent", 0}, {"good", "good|average|average", 0},
		{"average", "good|average|poor", 0}, {"good", "fair|poor|average", 1}, {"excellent", "-|-|-", 0},
		{"4.5", "good|average|good", 1}, {"good", "3.5|average|3.5", 1}, {"4.5", "4.5|average|good", 0},
	} {
		text := unvalued + "house: {living area: 1200 sq ft, condition: " + c.house + "}\ncomps:\n  amounts: {square foot: $80, step of condition: $9k}\n  table: |\n    address | sold on | price | living area | condition\n"
		for i, x := range strings.Split(c.sales, "|") {
			text += fmt.Sprintf("    %d Elm St | 2025-10-%d | 30%d,000 | 12%d0 | %s\n", i+1, 10+i, i, i, x)
		}
		require.Equal(t, c.want, codesOf(t, text, "house-beyond-sales")["house-beyond-sales"], c)
		if c.house == "4.5" && c.want > 0 {
			_, found := deal.Read("a.yaml", []byte(text))
			require.True(t, slices.ContainsFunc(found, func(d diag.Diag) bool {
				return strings.Contains(d.Message, "said to be in good to excellent condition, and the best of the sales was in good:")
			}), "%v", found)
		}
	}
}

// A sale far off the others is told though lying apart takes its weight away.
func TestASaleFarOffIsToldHoweverFar(t *testing.T) {
	for price, want := range map[string]int{"300,000": 0, "228,000": 1, "205,000": 1, "180,000": 1, "120,000": 1, "480,000": 1} {
		text := unvalued + "house: {living area: 1200 sq ft}\ncomps:\n  amounts: {market a month: 0%, square foot: $80}\n  table: |\n    address | sold on | price | living area\n"
		for i := range 8 {
			p := fmt.Sprintf("30%d,000", i)
			if i == 3 {
				p = price
			}
			text += fmt.Sprintf("    %d Elm St | 2025-10-%d | %s | 12%d0\n", i+1, 10+i, p, i)
		}
		require.Equal(t, want, codesOf(t, text, "sale-far-off")["sale-far-off"], price)
	}
}
