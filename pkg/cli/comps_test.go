package cli_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A deal whose sales give no value says why not in every verb.
func TestNoSaleToValueBySaysWhy(t *testing.T) {
	late := strings.NewReplacer("sold: 2026-03-01", "sold: 2026-06-01", "sold: 2025-12-01", "sold: 2026-07-01", "condition: good}", "condition: good, terms: sheriff}").Replace(soldDeal)
	for _, verb := range []string{"comps", "bid", "stress", "odds"} {
		out, wrong, code := run(t, late, verb, "-")
		require.Empty(t, out)
		require.Equal(t, 1, code)
		require.Contains(t, wrong, "the after-repair value is not given, and none")
		require.Contains(t, wrong, "1 A St: sold on 2026-06-01, not before")
		require.Contains(t, wrong, "3 C St: its terms speak against an open sale")
		require.Contains(t, wrong, "holds 1 mistake\n")
	}
	_, wrong, _ := run(t, soldDeal, "comps", "-", "--add", "9 X St")
	require.Contains(t, wrong, "there is no sale")
	require.NotContains(t, wrong, "is not given")
}

// What was added is not said to be left out, and what is left out stands there with why.
func TestNotUsedOnThePage(t *testing.T) {
	text := strings.Replace(soldDeal, "condition: good}", "condition: good, terms: sheriff}", 1) + "  table: |\n    address  sold on     price\n    8 H St   2026-02-30  300000\n"
	_, after, found := strings.Cut(page(t, text), "Not used\n")
	require.True(t, found)
	require.Contains(t, after, "3 C St, $325,000 on 2026-05-01: its terms")
	require.Contains(t, after, "- 1 row without a day or a price that can be read")
	require.Contains(t, after, "8 H St is left out: sold on:")
	_, after, _ = strings.Cut(page(t, text, "--add", "3 C St", "--strike", "1 A St"), "Not used\n")
	require.NotContains(t, after, "3 C St")
	require.Contains(t, after, "1 A St, $300,000 on 2026-03-01: struck")
}

// Garages are adjusted by their kind too, so the grid shows it.
func TestGaragesOnThePage(t *testing.T) {
	text := strings.NewReplacer("baths: 2}", "baths: 2, garage: attached}", "condition: average", "condition: average, garage: 2 car detached", "condition: excellent", "condition: excellent, garage: 1 car", "condition: good", "condition: good, garage: none").Replace(soldDeal)
	require.Regexp(t, `garage, cars +attached +none +1 +2 detached\n`, page(t, text))
}

func page(t *testing.T, text string, args ...string) string {
	t.Helper()
	out, wrong, code := run(t, text, append([]string{"comps", "-"}, args...)...)
	require.Zero(t, code, wrong)
	return out
}
