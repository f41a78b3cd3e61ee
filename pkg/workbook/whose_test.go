package workbook

import (
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
