package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A tax on what is earned is doubted among the costs, and its sum is not besides; other taxes, what is withheld
// and help with a return are not.
func TestTaxOnTheProfitIsNoCost(t *testing.T) {
	const bills = "utilities: $310/month"
	for _, line := range []string{
		"capital gains tax: 15%", "capital gains: 15%", "income tax: $9,000", "federal income tax: $29,000", "set aside for tax: $9,000", "set aside for income taxes: $9,000", "tax on profit: 25%", "tax on the gain: $9,000",
		"self-employment tax: $4,000", "tax set aside: $9,000",
	} {
		for _, beside := range []string{settle, bills} {
			told := toldBeside(t, "income-tax-as-cost", beside, beside+"\n  "+line)
			require.Len(t, told, 1, line)
			for _, code := range []string{"holding-once", "charge-high", "share-high"} {
				require.Empty(t, toldBeside(t, code, beside, beside+"\n  "+line), "%s %s", code, line)
			}
		}
	}
	for _, line := range []string{
		"county tax: 0.5%", "mansion tax: 1%", "excise tax: 1.28%", "land gains tax: $900", "state income tax withheld: 3%", "income tax return: $400", "tax preparation: $400", "nonresident withholding: 3%",
		"city tax on rental income: $90", "property tax set aside: $900", "tax escrow: $800", "gross receipts tax: 0.2%", "tax credit for income: $20", "income tax: $0",
	} {
		require.Empty(t, toldBeside(t, "income-tax-as-cost", settle, settle+"\n  "+line), line)
	}
}
