package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Furniture for the sale that is paid by the month through the work is doubted; not where the line says when it
// is paid, nor what is called staging on a site.
func TestStagingIsPaidFromTheListing(t *testing.T) {
	const bills = "utilities: $310/month"
	for line, want := range map[string]int{
		"staging: $1,900/month": 1, "Home staging: {amount: $1,900/month}": 1, "stager: $5,700/quarter": 1,
		"staging: $1,900/month during marketing": 0, "staging: {amount: $1,900/month, during: hold}": 0, "staging: {amount: $1,900/month, during: escrow}": 0,
		"staging: $1,900": 0, "staging area: $200/month": 0, "staging and scaffold: $200/month": 0, "staging: $0/month": 0,
	} {
		require.Len(t, toldBeside(t, "staging-early", bills, bills+"\n  "+line), want, line)
	}
	require.Empty(t, toldBeside(t, "staging-early", settle, settle+"\n  staging: $3,800"))
	require.Len(t, toldOf(t, "staging-early", "  den: {size: 12' x 13', work: {paint walls: hired}}\n", "holding: {staging: $900/month}\n"), 1, "the work takes its own time")
}
