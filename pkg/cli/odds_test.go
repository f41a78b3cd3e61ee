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
