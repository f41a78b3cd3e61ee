package answer

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/diag"
)

// Of two lenders of whom one lends what the other leaves, the as-is value takes off both
// together what it lies under the price. By hand: 80% and then all of 200,000 lend 160,000 and
// 40,000, of 180,000 144,000 and 36,000.
func TestTheAsIsValueTakesOffOnce(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k, closing: {title: $1500}}
value: {after-repair value: $330k, as-is value: $180k}
time: {marketing: 1 month, escrow: 1 month}
loans: [{name: bank, price share: 80%, rate: 11%, interest on: balance, term: 1 year}, {name: aunt, of remainder: yes, price share: 100%, rate: 6%, interest on: balance, term: 1 year}]
`)
	bank, aunt := a.Loans()[0], a.Loans()[1]
	require.Equal(t, "16000", a.Of(bank, "cut_by_as_is").String())
	require.Equal(t, "4000", a.Of(aunt, "cut_by_as_is").String())
	require.Equal(t, "21500", a.Line("total_to_buy").String())
	i := slices.IndexFunc(a.Warnings, func(d diag.Diag) bool { return d.Code == "loan-cut-by-as-is" })
	require.Contains(t, a.Warnings[i].Hint, "have ready what of it aunt does not lend")
}
