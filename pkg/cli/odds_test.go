package cli_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cli"
)

// A hurried context is interrupted once it was asked some times.
type hurried struct {
	context.Context
	left atomic.Int64
}

func (h *hurried) Err() error {
	if h.left.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// Interrupted, odds says what it had so far and leaves no file behind.
func TestOddsInterrupted(t *testing.T) {
	folder := t.TempDir()
	deal, err := os.ReadFile(scenarios + "/juniper-lane.yaml")
	require.NoError(t, err)
	var out, wrong bytes.Buffer
	ctx := &hurried{Context: context.Background()}
	ctx.left.Store(7)
	code := cli.Run([]string{"odds", "-", "--trials", "1000000", "--csv", filepath.Join(folder, "t.csv")}, cli.Streams{
		In: bytes.NewReader(deal), Out: &out, Err: &wrong, Env: func(string) string { return "" },
		Interruptible: func() (context.Context, func()) { return ctx, func() {} },
	})
	require.Equal(t, cli.Interrupted, code)
	require.Empty(t, out.String())
	said := strings.Join(strings.Fields(wrong.String()), " ")
	require.Regexp(t, `^ledgerboard: interrupted after 2[048],\d{3} of 1,000,000 trials: profit lies between -?\$[\d,]+ and \$[\d,]+ in 8 trials of 10, and 1\d\.\d of 100 trials lose money; .*t.csv is not written$`, said)
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Empty(t, left)
}

// The table of the trials tells the same as the page.
func TestTheTableOfTrialsIsWhatThePageTells(t *testing.T) {
	path := filepath.Join(t.TempDir(), "t.csv")
	out, _, code := run(t, "", "odds", scenarios+"/juniper-lane.yaml", "--trials", "9000", "--csv", path, "--json")
	require.Zero(t, code)
	var page struct {
		Loss    struct{ Value string }
		Figures map[string]struct{ Mean struct{ Value string } }
	}
	require.NoError(t, json.Unmarshal([]byte(out), &page))
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 9001)
	profit := 5 // behind the trial and four inputs
	require.Equal(t, "owner_profit", rows[0][profit])
	sum, lost := 0.0, 0
	for _, row := range rows[1:] {
		x, err := strconv.ParseFloat(row[profit], 64)
		require.NoError(t, err)
		if sum += x; x < 0 {
			lost++
		}
	}
	mean, err := strconv.ParseFloat(page.Figures["owner_profit"].Mean.Value, 64)
	require.NoError(t, err)
	require.InDelta(t, mean, sum/9000, 0.01)
	loss, err := strconv.ParseFloat(page.Loss.Value, 64)
	require.NoError(t, err)
	require.InDelta(t, loss, float64(lost)/9000, 1e-6)
}

// A row worked out again by hand comes to the same cents.
func TestARowOfTrialsCanBeRunAgain(t *testing.T) {
	const deal = `purchase: {price: $1.5 million}
value: {after-repair value: $21 million}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: a, work: b, amount: $9 million}]}
ranges: {after-repair value: {spread: none}, standstill: {spread: none}, marketing: {spread: none}}
`
	path := filepath.Join(t.TempDir(), "t.csv")
	_, wrong, code := run(t, deal, "odds", "-", "--trials", "1000", "--csv", path)
	require.Zero(t, code, wrong)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	row := strings.Split(strings.Split(string(text), "\n")[1], ",")
	over, err := decimal.NewFromString(row[1])
	require.NoError(t, err)
	out, wrong, code := run(t, deal, "stress", "-", "--across", "overrun="+over.Shift(2).String()+"%, 300%", "--down", "late sale=0, 1 month", "--json")
	require.Zero(t, code, wrong)
	var page struct{ Grid struct{ Profit [][]string } }
	require.NoError(t, json.Unmarshal([]byte(out), &page))
	profit := decimal.RequireFromString(page.Grid.Profit[0][0])
	require.InDelta(t, profit.InexactFloat64(), decimal.RequireFromString(row[2]).InexactFloat64(), 0.011)
}

// A verb with nothing to tidy up says in one line that it was interrupted.
func TestInterrupt(t *testing.T) {
	var wrong bytes.Buffer
	require.Equal(t, cli.Interrupted, cli.Interrupt(cli.Streams{Err: &wrong}))
	require.Equal(t, "ledgerboard: interrupted\n", wrong.String())
}

// A count of trials is read as people write it, and what is none says what is.
func TestACountOfTrials(t *testing.T) {
	same, _, code := run(t, "", "odds", scenarios+"/juniper-lane.yaml", "--trials", "2000")
	require.Zero(t, code)
	for _, said := range []string{"2,000", "2k"} {
		out, _, code := run(t, "", "odds", scenarios+"/juniper-lane.yaml", "--trials", said)
		require.Zero(t, code, said)
		require.Equal(t, same, out)
	}
	for _, said := range []string{"1e6", "2,00", "$2k", "2000.5", ""} {
		_, wrong, code := run(t, "", "odds", scenarios+"/juniper-lane.yaml", "--trials", said)
		require.EqualValues(t, cli.BadUsage, code, said)
		require.Contains(t, wrong, "want a whole number, 1,000 to 100,000,000", said)
	}
}

// The odds say which ranges move the loans, and that they stay where none does.
func TestOddsSayWhatMovesLoans(t *testing.T) {
	const loan = asideDeal + "loan: {price share: 80%, rate: 12%, cap on after-repair value: 75%}\n"
	for ranges, says := range map[string]string{
		"": "Loans are the plan's in every trial. Lenders look",
		"ranges: {overrun: {low: 0%, high: 20%}}":                                               "Loans are the plan's in every trial. Lenders look",
		"ranges: {lender's value: {low: $150k, high: $214k}, loan.rate: {low: 11%, high: 14%}}": "in every trial, but for what these make of them: value the lender counts; loan, rate. Lenders",
	} {
		out, wrong, code := run(t, loan+ranges+"\n", "odds", "-", "--trials", "1000")
		require.Zero(t, code, wrong)
		require.Contains(t, flowing(out), says)
	}
}

// A safe offer above the maximum offer says why.
func TestASafeOfferAboveTheMaximumOfferSaysWhy(t *testing.T) {
	for ranges, higher := range map[string]bool{"arv: {low: $240k, high: $280k, likely: $260k}": true, "arv: {low: $150k, high: $215k, likely: $200k}": false} {
		out, wrong, code := run(t, asideDeal+"ranges: {"+ranges+"}\n", "odds", "-", "--trials", "1000")
		require.Zero(t, code, wrong)
		require.Equal(t, higher, strings.Contains(flowing(out), "The safe offer is the higher one"), out)
	}
}

// A spread that has no likely figure gives none as data.
func TestNoLikelyFigureOfASpreadWithout(t *testing.T) {
	for spread, has := range map[string]bool{"normal": false, "even": false, "triangular": true} {
		out, wrong, code := run(t, asideDeal+"ranges: {overrun: {low: 20%, high: 40%, spread: "+spread+"}}\n", "odds", "-", "--trials", "1000", "--json")
		require.Zero(t, code, wrong)
		var page struct {
			Ranges []struct {
				Input  string
				Likely *string
			}
		}
		require.NoError(t, json.Unmarshal([]byte(out), &page))
		require.Equal(t, "overrun", page.Ranges[0].Input)
		require.Equal(t, has, page.Ranges[0].Likely != nil, spread)
	}
}

// An option that would do nothing is refused.
func TestOddsForceIsForAFile(t *testing.T) {
	_, wrong, code := run(t, "", "odds", scenarios+"/juniper-lane.yaml", "--force")
	require.EqualValues(t, cli.BadUsage, code)
	require.Contains(t, wrong, "--force is for a file of trials")
}
