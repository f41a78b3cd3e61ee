package answer

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// A cost that brings money is added; the first line of the way has no sign.
func TestAStepHasTheSignOfItsAmount(t *testing.T) {
	for _, c := range []struct {
		line   string
		amount int64
		want   string
	}{{"rule_offer", 87_404, ""}, {"rule_allowance", 51_300, "+ "}, {"purchase_extras", 24_385, "+ "}, {"purchase_extras", -900, "- "}, {"owner_profit", 0, "- "}} {
		require.Equal(t, c.want, Step{c.line, decimal.NewFromInt(c.amount)}.Sign(), c.line)
	}
}
