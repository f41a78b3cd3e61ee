package cli_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cli"
)

const (
	goodDeal = "purchase: {price: $148k}\nvalue: {after-repair value: $214k}\ntime: {marketing: 1 month}\n"
	badDeal  = "purchase: {price: lots}\n"
)

func TestExitCodes(t *testing.T) {
	for _, tt := range []struct {
		args string
		in   string
		want int
	}{
		{"", "", cli.Fine},
		{"--help", "", cli.Fine},
		{"help exit-codes", "", cli.Fine},
		{"bid -", goodDeal, cli.Fine},
		{"cash -", goodDeal, cli.Fine},
		{"check -", goodDeal, cli.Fine},
		{"why - profit", goodDeal, cli.Fine},
		{"lines profit", "", cli.Fine},
		{"bid -", badDeal, cli.BadData},
		{"cash -", badDeal, cli.BadData},
		{"why - profit", badDeal, cli.BadData},
		{"bid nowhere.yaml", "", cli.BadData},
		{"new nowhere/a.yaml", "", cli.BadData},
		{"check nowhere.yaml", "", cli.BadData},
		{"check -", badDeal, cli.CheckFailed},
		{"check - --json", badDeal, cli.CheckFailed},
		{"bid", "", cli.BadUsage},
		{"bid - --nope", goodDeal, cli.BadUsage},
		{"bid - --set price", goodDeal, cli.BadUsage},
		{"bid - --color pink", goodDeal, cli.BadUsage},
		{"why - nothing", goodDeal, cli.BadUsage},
		{"why - net_cash --month 99", goodDeal, cli.BadUsage},
		{"lines nothing", "", cli.BadUsage},
		{"nope", "", cli.BadUsage},
	} {
		out, wrong, code := run(t, tt.in, strings.Fields(tt.args)...)
		require.Equal(t, tt.want, code, "%s: %s", tt.args, wrong)
		switch tt.want {
		case cli.Fine:
			require.Empty(t, wrong, tt.args)
			require.NotEmpty(t, out, tt.args)
		case cli.CheckFailed:
			require.Empty(t, wrong, tt.args)
			require.Contains(t, out, "lots", tt.args)
		default:
			require.Empty(t, out, "%s writes nothing to standard output", tt.args)
			require.NotEmpty(t, wrong, tt.args)
		}
	}
}
