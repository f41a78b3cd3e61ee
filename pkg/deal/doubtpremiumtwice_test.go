package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A premium at the closing of about a year's cover that is under holding too ($1900/year in the starter) is
// doubted; one of another sum or of other cover is not.
func TestAFirstPremiumIsPaidOnce(t *testing.T) {
	const closing, before, cover = "title and escrow: $1,850", "inspection: $525", "vacant-house insurance: {amount: $1900/year, premium paid ahead: 12 months, insurer keeps at least: 25%}"
	for line, want := range map[string]int{
		"insurance: $1,900": 1, "builder's risk premium, insurance: $1,750": 1, "homeowner's insurance: $2,090": 1,
		"insurance: $2,100": 0, "insurance: $1,700": 0, "insurance binder: $150": 0, "title insurance: $1,900": 0, "lender's title policy: $1,900": 0, "flood insurance: $1,900": 0, "liability insurance: $1,900": 0, "recording tax: $1,900": 0, "insurance: $0": 0,
	} {
		for _, beside := range []string{closing, before} {
			require.Len(t, toldBeside(t, "counted-already", beside, beside+"\n    "+line), want, line)
		}
	}
	require.Len(t, toldBeside(t, "counted-already", closing, closing+"\n    insurance: $1,900", cover, "insurance: $160/month"), 1)
	require.Len(t, toldBeside(t, "counted-already", closing, closing+"\n    flood insurance: $700", cover, cover+"\n  flood insurance: $700/year"), 1)
	require.Empty(t, toldBeside(t, "counted-already", closing, closing+"\n    insurance: $1,900", cover, "insurance: $1900"), "one that is paid once")
}
