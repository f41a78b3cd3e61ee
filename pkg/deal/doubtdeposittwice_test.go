package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Parts of the price are no charges of the purchase beside it; where the deposit has not its key, its line is all
// that is said of it.
func TestPartsOfThePriceAreNoCharges(t *testing.T) {
	const closing, before, deposit = "title and escrow: $1,850", "inspection: $525", "  earnest deposit: {amount: $3k, refundable until: 2026-02-12}\n"
	for _, line := range []string{"earnest deposit: $3,000", "Earnest money: $3,000", "earnest money deposit: $2,500", "good faith deposit: $3,000", "down payment: $8,000", "downpayment: 15%", "cash down payment: $8,000"} {
		for _, beside := range []string{closing, before} {
			require.Len(t, toldBeside(t, "counted-already", beside, beside+"\n    "+line), 1, line)
		}
	}
	require.Contains(t, toldBeside(t, "counted-already", closing, closing+"\n    earnest money: $3,000")[0], "the earnest deposit ($3k)")
	require.Empty(t, toldBeside(t, "counted-already", closing, closing+"\n    earnest money: $3,000", deposit, ""))
	for _, line := range []string{"down payment assistance fee: $500", "escrow deposit: $2,000", "utility deposit: $300", "earnest money wire fee: $30", "tax escrow: $900", "transfer tax of the county: $900", "earnest money: $0"} {
		require.Empty(t, toldBeside(t, "counted-already", closing, closing+"\n    "+line), line)
	}
}

// Points of loans that state theirs are no charges of the purchase besides; a small origination may be.
func TestPointsAreNoChargesBesideALoan(t *testing.T) {
	const closing, before = "title and escrow: $1,850", "inspection: $525"
	for _, line := range []string{"points: 2%", "loan points: $4,100", "origination: 2%", "origination fee: $4,200", "lender's points: 1%", "points on the first loan: $4,100"} {
		for _, beside := range []string{closing, before} {
			require.Len(t, toldBeside(t, "counted-already", beside, beside+"\n    "+line), 1, line)
			require.Empty(t, toldBeside(t, "counted-already", beside, beside+"\n    "+line, "    points: 2 points\n", ""), "no points: %s", line)
		}
	}
	for _, line := range []string{"origination fee: $995", "broker points: 1%", "second lender's points: $900", "points on aunt's loan: $500", "loan processing: $600", "points: $0"} {
		require.Empty(t, toldBeside(t, "counted-already", closing, closing+"\n    "+line), line)
	}
}
