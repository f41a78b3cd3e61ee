package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// The wall cabinets are bought beside an allowance for cabinets; what it is for is settled either way.
// By the price book 14 ft of stock base cabinet are 14 * $122.50 = $1,715.
func TestAnAllowanceForASet(t *testing.T) {
	for _, x := range []struct {
		work string
		want int
	}{
		{"kitchen cabinets: {allowance: $4,800}", 1},
		{"kitchen cabinets: {allowance: $0}", 1},
		{"kitchen cabinets: {allowance: $600, note: thrifted}", 1},
		{"kitchen cabinets: {allowance: $4,800, quote: $1,300, covers: labour}", 1},
		{"kitchen cabinets: {allowance: $4,800, holds more: yes}", 0},
		{"kitchen cabinets: {allowance: $4,800, holds more: no}", 0},
		{"resilient plank floor: {allowance: $300}", 0}, // beside which little is bought
		{"stone counter: {allowance: $900}", 0},
		{"tile floor: {allowance: $380}", 0},
	} {
		told := toldOf(t, "allowance-part", "  kitchen: {size: 12' x 13', fixed: {base cabinets: 14' x 2', wall cabinets: 11' x 1', sink: 1}, work: {"+x.work+"}}\n", "")
		require.Len(t, told, x.want, "%s: %v", x.work, told)
		if x.want > 0 {
			require.Contains(t, told[0], "stock base cabinet alone, $1,715.00 in the price book")
		}
	}
}

// An allowance that holds more is all that its work spends on products.
func TestAnAllowanceForAllThatIsBought(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(walked+"rooms:\n  kitchen: {size: 12' x 13', fixed: {base cabinets: 14' x 2', wall cabinets: 11' x 1'}, work: {kitchen cabinets: {by: own hands, allowance: $4,800, holds more: yes}}}\n"))
	require.False(t, found.HasErrors(), "%v", found)
	got, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	for m, w := range d.Work {
		if w.Item.Name == "kitchen cabinets" {
			require.True(t, w.AllBought)
			require.Equal(t, "4800", got.Of(d.Model.Find(m, "materials")).String())
		}
	}
}

// An allowance for all that carpet and sheet goods take is held against the book too: off a roll of 12 ft
// the carpet for 18' x 19' alone is about $754, with pad and strips about $1,003.
func TestAnAllowanceForAllOfACarpet(t *testing.T) {
	for allowance, want := range map[string]int{
		"$100, holds more: yes":             1,
		"$100, holds more: yes, note: used": 0,
		"$240, holds more: yes":             0,
		"$4,900, holds more: yes":           0,
		"$9,900, holds more: yes":           1,
	} {
		require.Len(t, toldOf(t, "quote-far", "  den: {size: 18' x 19', work: {carpet: {allowance: "+allowance+"}}}\n", ""), want, allowance)
	}
}

// A price or an allowance of over 5 times the book's is settled by a note that the thing is dear.
func TestAHighEndThing(t *testing.T) {
	for _, x := range []struct {
		code, work string
		want       int
	}{
		{"price-far", "range electric: {price: $5,200}", 1},
		{"price-far", "range electric: {price: $5,200, note: high end}", 0},
		{"price-far", "range electric: {price: $52, note: high end}", 1},
		{"quote-far", "range electric: {allowance: $5,200}", 1},
		{"quote-far", "range electric: {allowance: $5,200, note: a pro-style range}", 0},
		{"quote-far", "kitchen cabinets: {allowance: $9,800}", 0}, // under 5 times the whole set
		{"quote-far", "kitchen cabinets: {allowance: $9,800, holds more: no}", 1},
		{"quote-far", "kitchen cabinets: {allowance: $9,800, holds more: no, note: high-end boxes}", 0},
		{"quote-far", "kitchen cabinets: {allowance: $48,000, holds more: yes}", 1},
		{"quote-far", "kitchen cabinets: {allowance: $480, holds more: yes}", 1},
		{"quote-far", "kitchen cabinets: {allowance: $480, holds more: yes, note: thrifted}", 0},
	} {
		told := toldOf(t, x.code, "  kitchen: {size: 12' x 13', fixed: {base cabinets: 14' x 2', wall cabinets: 11' x 1', sink: 1}, work: {"+x.work+"}}\n", "")
		require.Len(t, told, x.want, "%s: %v", x.work, strings.Join(told, "; "))
	}
}
