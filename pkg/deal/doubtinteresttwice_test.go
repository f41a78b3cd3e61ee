package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// toldBeside are the messages of a code on the starter with some text in the place of other.
func toldBeside(t *testing.T, code string, changes ...string) []string {
	t.Helper()
	return toldIn(t, code, strings.NewReplacer(changes...).Replace(deal.Starter("a")))
}

// What a loan bears by its rate is doubted as a charge of its own, once and by nothing else; charges that are
// not the interest of that loan are not.
func TestInterestIsNotChargedBesideALoan(t *testing.T) {
	const bills = "utilities: $310/month"
	for _, line := range []string{
		"interest: $1,600/month", "loan interest: $1,600/month", "Hard-money interest: $1,600/month", "debt service: $1,600/month", "mortgage payment: $1,550/month",
		"mortgage: $1,550/month", "loan payment: $1,550/month", "interest: $18,000/year", "interest on the first loan: $1,550/month", "interest: $9,000", "financing costs: $1,500/month",
	} {
		told := toldBeside(t, "counted-already", bills, bills+"\n  "+line)
		require.Len(t, told, 1, line)
		require.Contains(t, told[0], "11.25%", line)
		require.Empty(t, toldBeside(t, "holding-once", bills, bills+"\n  "+line), line)
		require.Empty(t, toldBeside(t, "counted-already", bills, bills+"\n  "+line, loanRate, "rate: 0%"), "a loan without a rate: %s", line)
	}
	require.Len(t, toldBeside(t, "counted-already", settle, settle+"\n  interest: $9,000"), 1)
	for _, line := range []string{
		"second lender's interest: $300/month", "private lender interest: $300/month", "interest on aunt's money: $300/month", "heloc interest: $300/month", "loan 2 interest: $300/month",
		"interest reserve: $2,000", "loan servicing fee: $25/month", "loan payoff fee: $300", "mortgage recording tax: $900", "mortgage insurance: $90/month", "tax escrow: $200/month", "credit card interest: $90/month",
		"property tax interest: $30/month", "loan interest: $0/month", "loan interest: {amount: $100/month, credit: yes}",
	} {
		require.Empty(t, toldBeside(t, "counted-already", bills, bills+"\n  "+line), line)
	}
	require.Empty(t, toldBeside(t, "counted-already", "title and escrow: $1,850", "title and escrow: $1,850\n    prepaid interest: $700"))
	require.Empty(t, toldBeside(t, "counted-already", settle, settle+"\n  loan payoff fee: $300"))
}
