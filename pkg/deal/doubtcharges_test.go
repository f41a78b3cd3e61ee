package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A point that slipped and a nought too many are told of every way to state a charge; what such charges
// may well be is not.
func TestChargesWithASlip(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for _, c := range []struct {
		keys string
		told map[string]int
	}{
		{"selling: {transfer tax: {brackets: {up to $250k: 4%, up to $500k: 0.7%, above: 1%}}}", map[string]int{"rate-falls": 1}},
		{"selling: {transfer tax: {brackets: {up to $250k: 0.4%, up to $500k: 7%, above: 1%}}}", map[string]int{"rate-falls": 1}},
		{"selling: {stamp: {slabs: {below $150k: 0.2%, below $400k: 3%, above: 0.5%}}}", map[string]int{"rate-falls": 1}},
		{"selling: {stamp: {tables: [{when: up to $350,000, brackets: {up to $100k: 5%, above: 1%}}, {when: above $350,000, amount: 1%}]}}", map[string]int{"rate-falls": 1}},
		{"selling: {transfer tax: {brackets: {up to $250k: 40%, above: 1%}}}", map[string]int{"rate-falls": 1, "share-high": 1}},
		{"selling: {stamp: $110 per $500}", map[string]int{"share-high": 1}},
		{"selling: {stamp: {slabs: {below $150k: $110 per $500, above: $110 per $500}}}", map[string]int{"share-high": 2}},
		{"selling: {transfer tax: {brackets: {up to $250k: 0.4%, up to $500k: 0.7%, above: 1%}}, title: {brackets: {up to $100k: $5.75 per $1000, above: $2.25 per $1000}}, agents: 10%}", nil},
		{"selling: {surcharge: {brackets: {up to $250k: 1%, above: 0%}}}", nil},
	} {
		for _, code := range []string{"rate-falls", "share-high", "charge-high"} {
			require.Len(t, toldOf(t, code, den, c.keys+"\n"), c.told[code], "%s: %s", code, c.keys)
		}
	}
	for charge, want := range map[string]int{
		"county: 11%": 1, "county: 1.1%": 0, "county: 5%": 0, "county: {slabs: {up to $150k: 0.1%, above: 11%}}": 1, "county: $55 per $500": 1, "county: $5.50 per $500": 0,
		"buyer's premium: 10%": 1,
	} {
		require.Len(t, toldWith(t, "share-high", "closing: {"+charge+"}"), want, charge)
	}
	for purchase, want := range map[string]int{
		"assignment fee: $42,000": 1, "assignment fee: $20,000": 0, "closing: {title: $14,500}": 1, "closing: {title: $1,450}": 0, "closing: {title: $10,000}": 0,
	} {
		require.Len(t, toldWith(t, "charge-high", purchase), want, purchase)
	}
}

// toldWith are the messages of one code in a deal whose purchase at $200,000 says more.
func toldWith(t *testing.T, code, purchase string) (out []string) {
	t.Helper()
	_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "price: $160k", "price: $200k, "+purchase, 1)))
	require.False(t, found.HasErrors(), "%s: %v", purchase, found)
	for _, d := range found {
		if d.Code == code {
			out = append(out, d.Message)
		}
	}
	return out
}
