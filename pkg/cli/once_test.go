package cli_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// An option given twice, or with nothing behind it, is refused: one of the two would be
// dropped in silence.
func TestAnOptionIsGivenOnce(t *testing.T) {
	for says, args := range map[string][]string{
		`--across is given twice, the second time as "escrow=1 month"; the other side of the grid is --down`: {"--across", "overrun=0%", "--across", "escrow=1 month"},
		"--late is given twice":        {"--late", "sale", "--late", "works"},
		"--down has nothing behind it": {"--down", ""},
	} {
		_, wrong, code := run(t, asideDeal, append([]string{"stress", "-"}, args...)...)
		require.Equal(t, 2, code)
		require.Contains(t, flowing(wrong), says)
	}
	_, wrong, code := run(t, asideDeal, "bid", "-", "--json", "--json", "--set", "price=$140k", "--set", "arv=$215k")
	require.Zero(t, code, wrong)
}
