package deal_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// A house that is renovated and as new as the work is doubted: the year is likely that of the work.
// One among new houses is not, nor one without work.
func TestARenovatedHouseBuiltLatelyIsDoubted(t *testing.T) {
	for _, c := range []struct {
		built, sales int
		works        string
		doubted      bool
	}{
		{2026, 1960, "$40k", true},
		{2021, 2010, "$40k", true},
		{2005, 1960, "$40k", true},
		{2026, 2023, "$40k", false},
		{2015, 2005, "$40k", false},
		{1980, 1960, "$40k", false},
		{1955, 1960, "$40k", false},
		{2026, 1960, "$3k", false},
	} {
		text := "purchase: {price: $150k, date: 2026-03-02}\ntime: {renovation: 3 months, marketing: 1 month, escrow: 1 month}\n" +
			"renovation: {lines: [{trade: all, work: works, amount: " + c.works + "}]}\n" +
			fmt.Sprintf("house: {living area: 1200 sq ft, year built: %d}\ncomps:\n  amounts: {year newer: $300}\n  sold:\n", c.built)
		for i, name := range []string{"1 A St", "2 A St", "3 A St"} {
			text += fmt.Sprintf("    %s: {sold: 2025-11-07, price: $260k, living area: 1200, year built: %d}\n", name, c.sales-i)
		}
		_, found := deal.Read("a.yaml", []byte(text))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "house-built-lately" })
		require.Equal(t, c.doubted, i >= 0, "%v: %v", c, found)
	}
}
