package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// With a partner no page in front calls a figure profit alone: it says whose it is. Without
// one there is a single profit, and it is called that.
func TestAProfitSaysWhoseItIs(t *testing.T) {
	for name, partnered := range map[string]bool{"orchard-street": true, "juniper-lane": false} {
		b, err := made(scenario(t, name), Options{})
		require.NoError(t, err)
		seen := map[string]int{}
		for _, page := range []string{"The deal", "Offers"} {
			for _, words := range texts(sheetOf(b, page)) {
				seen[words]++
			}
		}
		require.Equal(t, !partnered, seen["profit"] > 0, name)
		require.Equal(t, partnered, seen["profit of the deal"] > 0 && seen["your profit"] > 0 && seen["  your profit"] > 0, name)
		require.Equal(t, partnered, seen["nothing is left of your profit (break-even)"] == 1, name)
	}
}

// With a partner the first page tells what is hers of the cash that both bring.
func TestCashToBuyIsOfBoth(t *testing.T) {
	b := bookOf(t, "../../scenarios/orchard-street.yaml", Options{})
	shown := map[string]bool{}
	for _, e := range b.yourCash() {
		shown[strings.TrimSpace(e.label)] = true
	}
	for _, label := range []string{"total to buy, by both", "of it yours", "of it your partner's", "cash to close, both bring"} {
		require.True(t, shown[label], label)
	}
	for _, e := range bookOf(t, "../../scenarios/juniper-lane.yaml", Options{}).yourCash() {
		require.NotContains(t, e.label, "both")
	}
}
