package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// The factors of a place are against the starter's prices: what the owner says of her
// place, in the file or by the hour, is not multiplied. 450 sq ft
// of wall in two coats, or ten hours.
func TestLocalFactorsLeaveOwnPricesAsTheyAre(t *testing.T) {
	for _, c := range []struct{ work, labour string }{
		{"{by: hired, count: 450 sq ft, hired: $2.00 per sq ft}", "1800"},
		{"{by: hired, count: 450 sq ft, hours: 10, by the hour: yes}", "600"},
	} {
		d := readDeal(t, walked+`
local prices: {labour factor: 90%, materials factor: 50%}
labour: {trades: {paint: {rate: $60/hour}}}
rooms: {den: {size: 10' x 12', work: {paint walls: `+c.work+`}}}
`)
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		labour := v.Of(d.Model.Find(d.Root.In("inside")[0].In("option")[0].In("item")[0], "labour"))
		require.Equal(t, c.labour, labour.String())
	}
	price := func(work string) string {
		d := readDeal(t, walked+`
local prices: {materials factor: 50%}
rooms: {den: {size: 10' x 12', work: {resilient plank floor: `+work+`}}}
`)
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		p := d.Root.In("product")[0]
		return v.Of(d.Model.Find(p, "product_cost")).Div(v.Of(d.Model.Find(p, "before_tax"))).String()
	}
	require.Equal(t, "0.5", price("hired"))
	require.Equal(t, "1", price("{by: hired, price: $50}"))
}

// Of sticks the factor is for the lengths alone that have the starter's price, and the cut
// list takes what costs least at the owner's place. Two runs of 7 ft with their spares go on
// two sticks of 8 ft at $6, hers, or on one of 16 ft, $16.80 in the starter book.
func TestLocalFactorGoesByTheLengthOfAStick(t *testing.T) {
	for factor, want := range map[string]string{"50%": "8.4", "100%": "12", "200%": "12"} {
		open := func(string) ([]byte, error) {
			return []byte("products: {primed baseboard 3-1/4 in: {sticks: {8 ft: $6.00, 16 ft: starter}}}"), nil
		}
		d, found := deal.ReadWith(deal.Options{Open: open}, "a.yaml", []byte(walked+`
own book: mine.yaml
local prices: {materials factor: `+factor+`}
rooms:
  den: {size: 10' x 12', work: {baseboard: {by: hired, count: 7 ft}}}
  hall: {size: 10' x 12', work: {baseboard: {by: hired, count: 7 ft}}}
`))
		require.False(t, found.HasErrors(), "%v", found)
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		for _, p := range d.Root.In("product") {
			if p.Label == "primed baseboard 3-1/4 in" {
				require.Equal(t, want, v.Of(d.Model.Find(p, "product_cost")).String(), factor)
			}
		}
	}
}

// A foot of a wider roll costs more than one of the starter's 12 ft: without a price of her
// own it is doubted, once for all rooms.
func TestAnotherRollWantsItsPrice(t *testing.T) {
	for _, c := range []struct {
		keys, work string
		times      int
	}{
		{"local prices: {roll width: 15 ft}", "carpet: own hands", 1},
		{"local prices: {roll width: 15 ft}", "carpet: hired, sheet vinyl floor: {by: hired, part: 20%}", 1},
		{"local prices: {roll width: 12 ft}", "carpet: own hands", 0},
		{"", "carpet: own hands", 0},
		{"local prices: {roll width: 15 ft}", "carpet: {by: own hands, price: $31.88}", 0},
		{"local prices: {roll width: 15 ft}", "carpet: $2,000", 0},
		{"local prices: {roll width: 15 ft}", "paint walls: hired", 0},
		{"local prices: {roll width: 15 ft}\nown book: mine.yaml", "carpet: own hands", 0},
	} {
		open := func(string) ([]byte, error) { return []byte("products: {carpet 12 ft wide: {price: $31.88}}"), nil }
		text := strings.Replace(den, "rooms:\n", c.keys+"\nrooms:\n", 1)
		_, found := deal.ReadWith(deal.Options{Open: open}, "den.yaml", []byte(strings.Replace(text, "paint walls: hired", c.work, 1)))
		require.False(t, found.HasErrors(), "%v", found)
		n := 0
		for _, code := range codesIn(found) {
			if code == "roll-price" {
				n++
			}
		}
		require.Equal(t, c.times, n, "%s %s", c.keys, c.work)
	}
}
