package cli_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/report"
)

// hopeless is a deal of which no price meets the target on cash: the work alone takes more.
const hopeless = `purchase: {price: $100k}
value: {after-repair value: $150k}
time: {renovation: 2 months, marketing: 2 months, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: roof, work: x, amount: $20k}]}
cash: {available: $5k}
`

// Where no price works, a maximum offer is none, not $0, which would be a price.
func TestOddsWithoutAPrice(t *testing.T) {
	out, _, code := run(t, hopeless, "odds", "-", "--trials", "2000")
	require.Zero(t, code)
	require.Regexp(t, `maximum offer +none +none +none +none\n`, out)
	out, _, _ = run(t, hopeless, "odds", "-", "--trials", "2000", "--json")
	var o report.OddsObject
	require.NoError(t, json.Unmarshal([]byte(out), &o))
	require.Nil(t, o.Figures["max_offer"].P50)
	require.NotNil(t, o.Figures["owner_profit"].P50)
}

// Where no price works in some of the trials only, the percentiles among them are none, and
// their offers are empty in the file of trials.
func TestOddsWithoutAPriceInSomeTrials(t *testing.T) {
	text := `purchase: {price: $100k}
value: {after-repair value: $150k}
time: {renovation: 2 months, marketing: 2 months, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: roof, work: x, amount: $20k}]}
targets: {profit: $122k}
`
	file := filepath.Join(t.TempDir(), "t.csv")
	out, wrong, code := run(t, text, "odds", "-", "--trials", "20000", "--csv", file)
	require.Zero(t, code, wrong)
	require.Regexp(t, `maximum offer +none +\$`, out)
	rows, err := os.ReadFile(file)
	require.NoError(t, err)
	all, err := csv.NewReader(bytes.NewReader(rows)).ReadAll()
	require.NoError(t, err)
	at, none := slices.Index(all[0], "max_offer"), 0
	for _, row := range all[1:] {
		require.NotEqual(t, "0.00", row[at])
		if row[at] == "" {
			none++
		}
	}
	require.Greater(t, none, 2000)
	require.Less(t, none, 10000)
}

// A seed that is none says what one is.
func TestOddsWithABadSeed(t *testing.T) {
	for _, seed := range []string{"-1", "1.5", "x"} {
		_, wrong, code := run(t, hopeless, "odds", "-", "--seed="+seed)
		require.Equal(t, 2, code)
		require.Contains(t, wrong, "want a whole number from 0", seed)
	}
}

// An empty name of a file is none.
func TestOddsWithAnEmptyName(t *testing.T) {
	_, wrong, code := run(t, hopeless, "odds", "-", "--csv", "")
	require.Equal(t, 2, code)
	require.Contains(t, wrong, "--csv has nothing behind it")
}

// Where one side is asked for that is the usual other one, that one gives way.
func TestStressWithAUsualSideTurned(t *testing.T) {
	for _, side := range [][]string{{"--across", "overrun=0%..40%/4"}, {"--down", "months late=0..4 months/4"}} {
		out, wrong, code := run(t, "", append([]string{"stress", scenarios + "/juniper-lane.yaml"}, side...)...)
		require.Zero(t, code, wrong)
		require.Regexp(t, `Across: over.*Down: months`, out)
	}
}

// A range with a likely figure or cases of its own says where the plan is something else.
func TestOddsSayWhatThePlanHasBesideARange(t *testing.T) {
	const ranges = "ranges: {after-repair value: {low: $200k, likely: $214k, high: $220k}, escrow: {cases: {1 month: 3, 2 months: 1}}}\n"
	for _, c := range []struct {
		set, value string
		off        []string
	}{
		{"arv", "$214k", nil},
		{"arv", "$205k", []string{"the plan has $205,000, and not $214,000; the trials do not draw about it"}},
		{"arv", "$230k", []string{"the plan has $230,000, outside of this; the trials do not draw about it"}},
		{"escrow", "1.5 months", []string{"the plan has 1.5 months, none of these; the trials do not draw about it"}},
		{"escrow", "2 months", nil},
	} {
		out, wrong, code := run(t, asideDeal+ranges, "odds", "-", "--trials", "1000", "--set", c.set+"="+c.value)
		require.Zero(t, code, wrong)
		require.Equal(t, len(c.off), strings.Count(flowing(out), "the plan has"), out)
		for _, words := range c.off {
			require.Contains(t, flowing(out), words)
		}
	}
}
