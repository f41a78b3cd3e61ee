package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Charges of one name, of the deal and of two loans of one name, have headings of their own:
// those behind the first say where they stand in the file.
func TestInputsOfOneNameAreToldApart(t *testing.T) {
	const text = `
purchase: {price: 148k, date: 2026-11-02, paid before closing: {filing: $150}, closing: {filing: $200}}
value: {after-repair value: 214k}
time: {renovation: 3 months, marketing: 4 weeks}
selling: {filing: $50}
renovation: {lines: [{work: reroof, amount: $4k}, {work: reroof, amount: $5k}]}
loans:
- {name: bank, fixed amount: $50k, rate: 10%, fees: {doc: $100}}
- {name: bank, fixed amount: $40k, rate: 10%, fees: {doc: $100}}
`
	for _, whom := range []Reader{Owner, Lender} {
		b, err := made(answered(t, text), Options{For: whom})
		require.NoError(t, err)
		var heads []string
		for _, row := range b.inputs.rows[3:] {
			if len(row) > 0 && row[0].look.role == strong {
				heads = append(heads, row[0].value.(string))
			}
		}
		for _, want := range []string{"filing", "filing (purchase.closing.filing)", "filing (selling.filing)", "reroof", "reroof (renovation.lines.2)", "bank, doc", "bank, doc (loans.2.fees.doc)", "bank (loans.2)"} {
			require.Contains(t, heads, want)
		}
		seen := map[string]bool{}
		for _, h := range heads {
			require.False(t, seen[h], h)
			seen[h] = true
		}
	}
}
