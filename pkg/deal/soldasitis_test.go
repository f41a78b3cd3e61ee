package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// A house that is renovated and compared as it stands today is doubted; not one that is sold
// without work, or after a mere repair, or whose sales say nothing of condition.
func TestARenovatedHouseComparedAsItStandsIsDoubted(t *testing.T) {
	for _, c := range []struct {
		condition, works string
		sales            string
		doubted          bool
	}{
		{"fair", "$40k", "condition: good", true},
		{"poor", "$40k", "condition: good", true},
		{"2", "$40k", "condition: good", true},
		{"average", "$40k", "condition: good", false},
		{"fair", "$3k", "condition: good", false},
		{"fair", "", "condition: good", false},
		{"fair", "$40k", "baths: 1", false},
	} {
		text := "purchase: {price: $150k, date: 2026-03-02}\ntime: {renovation: 3 months, marketing: 1 month, escrow: 1 month}\n"
		if c.works != "" {
			text += "renovation: {lines: [{trade: all, work: works, amount: " + c.works + "}]}\n"
		}
		text += "house: {living area: 1200 sq ft, condition: " + c.condition + "}\ncomps:\n  amounts: {step of condition: $14k}\n  sold:\n"
		for _, name := range []string{"1 A St", "2 A St", "3 A St"} {
			text += "    " + name + ": {sold: 2025-11-07, price: $260k, living area: 1200, " + c.sales + "}\n"
		}
		_, found := deal.Read("a.yaml", []byte(text))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "comps-condition-today" })
		require.Equal(t, c.doubted, i >= 0, "%v: %v", c, found)
		if c.doubted {
			require.True(t, strings.HasSuffix(found[i].Message, "is that how it stands today?"), found[i].Message)
		}
	}
}
