package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A hired price is the labour alone, so one that is about labour and materials buys these twice. The
// starter book lays gutters at $6.20 a ft, and 120 ft take 1.85 * 1.05 + 32 / 25 / 2 + 2 * 46 / 120 +
// 0.03 * 8.60 = $3.61 a ft besides. Up to 1.25 times the labour nothing is doubted, in a dear place of that labour.
func TestAHiredPriceWithMaterialsInIt(t *testing.T) {
	den := "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	for detail, want := range map[string]int{
		"by: hired, hired: $9.90 per ft":                   1,
		"by: hired, hired: $11 per ft":                     1,
		"by: hired, hired: $8.60 per ft":                   1, // within 15% of both
		"by: hired, hired: $7.75 per ft":                   0, // 1.25 times the labour
		"by: hired, hired: $14 per ft":                     2, // with downspouts, splash blocks and a look at the fascia
		"by: hired, hired: $29 per ft":                     0, // neither the one nor the other
		"by: hired, hired: $9.90 per ft, covers: labour":   0,
		"by: own hands, hired: $9.90 per ft":               0,
		"quote: $1,190, covers: all, hired: $9.90 per ft":  0,
		"by: hired, hired: $9.90 per ft, by the hour: yes": 0,
	} {
		out := "outside: {gutters: 120 ft, work: {gutters: {" + detail + "}}}\n"
		told := toldOf(t, "hired-with-materials", den, out)
		require.Len(t, told, min(want, 1), detail)
		if want == 1 {
			require.Contains(t, told[0], "$9.81 per ft", detail)
		}
		if want == 2 {
			require.Contains(t, told[0], "with what it brings of its trade (downspouts", detail)
		}
		if strings.Contains(detail, "covers: labour") {
			require.Empty(t, toldOf(t, "quote-detail", den, out), detail)
		}
	}
	dear := "local prices: {labour factor: 150%}\noutside: {gutters: 120 ft, work: {gutters: {by: hired, hired: $9.90 per ft}}}\n"
	require.Empty(t, toldOf(t, "hired-with-materials", den, dear))
	require.Len(t, toldOf(t, "quote-detail", den, "outside: {gutters: 120 ft, work: {gutters: {by: hired, covers: labour}}}\n"), 1)
}

// The price of an own book is held against all work that goes by it, and settled by who says it.
func TestAHiredPriceOfABookWithMaterialsInIt(t *testing.T) {
	for book, want := range map[string]bool{
		"items: {paint walls: {hired: $0.72 per sq ft}}":                                         false, // paint is little beside labour
		"items: {laminate counter: {hired: $26 per sq ft, hired source: Mason Tops}}":            true,
		"items: {laminate counter: {hired: $14 per sq ft, hired source: Mason Tops}}":            false,
		"items: {laminate counter: {hired: $26 per sq ft, hired source: 'Mason, labour alone'}}": false,
		"items: {laminate counter: {hired: $26 per sq ft, hired source: 'Mason, Labor'}}":        false,
	} {
		d, found := booked(book, "laminate counter: {by: hired, count: 40 sq ft}, paint walls: hired")
		require.NotNil(t, d, "%v", found)
		told := false
		for _, x := range found {
			if x.Code == "hired-with-materials" {
				told = true
				readsWell(t, x)
			}
		}
		require.Equal(t, want, told, "%s: %v", book, found)
	}
}

// An all-in price of a unit has in it what the work brings of its trade: the tear-off and underlayment
// of a roof, the wrap of siding, the finishing of wall board. A price that is dear for labour alone is
// not told, nor what the file says is that.
func TestAHiredPriceWithWhatItBringsInIt(t *testing.T) {
	const den = "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	roof := "house: {year built: 1988}\noutside: {around: 160 ft, siding: 1600 sq ft, roof: [{size: 44' x 32', pitch: 6/12, overhang: 1'}], work: {%s}}\n"
	for work, want := range map[string]string{
		"shingle roof gable: {by: hired, hired: $4.00 per sq ft}":                 "about what labour and materials come to, $3.",
		"shingle roof gable: {by: hired, hired: $5.50 per sq ft}":                 "with what it brings of its trade (roof tear-off",
		"shingle roof gable: {by: hired, hired: $6.50 per sq ft}":                 "with what it brings of its trade (roof tear-off",
		"shingle roof gable: {by: hired, hired: $2.50 per sq ft}":                 "",
		"shingle roof gable: {by: hired, hired: $6.50 per sq ft, covers: labour}": "",
		"vinyl siding: {by: hired, hired: $7.50 per sq ft}":                       "about what labour and materials come to with what it brings of its trade (siding tear-off",
		"vinyl siding: {by: hired, hired: $12 per sq ft}":                         "more than labour and materials come to with what it brings",
		"vinyl siding: {by: hired, hired: $4.40 per sq ft}":                       "",
	} {
		told := toldOf(t, "hired-with-materials", den, strings.Replace(roof, "%s", work, 1))
		if want == "" {
			require.Empty(t, told, work)
			continue
		}
		require.Len(t, told, 1, work)
		require.Contains(t, told[0], want, work)
	}
	for work, want := range map[string]int{
		"hang wall board: {by: hired, hired: $3.20 per sq ft}": 1,
		"paint walls: {by: hired, hired: $0.60 per sq ft}":     0,
	} {
		require.Len(t, toldOf(t, "hired-with-materials", "  den: {size: 14' x 13', work: {"+work+"}}\n", ""), want, work)
	}
}
