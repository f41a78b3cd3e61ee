package deal_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// The low value is that of the house when the work is done: one under the value before work is told,
// but for a house to which the work adds little, and for one of which a digit is missing.
func TestALowValueOfTheHouseAsItStands(t *testing.T) {
	for _, c := range []struct {
		value, adds string
		want        bool
	}{
		{"before work: $220k, low: $200k", "$60k", true}, // 71% of $280k
		{"before work: $220k, low: $201k", "$3k", false}, // 90.1% of $223k
		{"before work: $220k, low: $230k", "$60k", false},
		{"before work: $220k, low: $150k", "$60k", false}, // told as a digit left out
		{"after-repair value: $280k, before work: $220k, low: $200k", "$60k", false},
	} {
		text := "purchase: {price: $200k}\nvalue: {" + c.value + "}\ntime: {marketing: 5 weeks, escrow: 1 month}\n" +
			"rooms:\n  den: {size: 12' x 13', options: {fresh: {adds: " + c.adds + ", work: {paint walls: hired}}}}\n"
		for _, set := range [][]deal.Set{nil, {{Path: "scope", Value: "as it is"}}} {
			_, found := deal.Read("a.yaml", []byte(text), set...)
			told := slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == "low-below-before" })
			require.Equal(t, c.want, told, "%s, adds %s %v", c.value, c.adds, set)
		}
	}
}
