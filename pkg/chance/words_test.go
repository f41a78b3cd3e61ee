package chance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func replace(text, old, new string) string {
	if !strings.Contains(text, old) {
		panic("nothing to replace")
	}
	return strings.Replace(text, old, new, 1)
}

func TestLabels(t *testing.T) {
	text := house + `loans: [{name: first loan, price share: 50%, rate: 9%, interest on: balance, fees: {wire: $50}}]
holding: {property tax: $2k/year}
ranges: {loans.1.rate: {low: 8%, high: 10%}, property tax: {low: $1k/year, high: $3k/year}, wire: {low: $40, high: $60}}
`
	all := ranges(t, text)
	require.Equal(t, "first loan, rate", all["loans.1.rate"].Label)
	require.Equal(t, "property tax", all["holding.property tax"].Label)
	require.Equal(t, "first loan, wire", all["loans.1.fees.wire"].Label)
	require.Equal(t, "overrun over the bids", all["overrun"].Label)
}
