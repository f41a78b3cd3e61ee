package deal_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// What a set of a charge drops of what the file says beside the amount is told, with how to
// keep it.
func TestASetThatDropsWhatTheChargeIsOf(t *testing.T) {
	text := []byte("purchase: {price: $150k, closing: {title: 0.5% of after-repair value, stamps: $2 per $1,000 of after-repair value}}\nvalue: {after-repair value: $230k}\ntime: {marketing: 1 month, escrow: 1 month}\nholding: {yard: $88/month during marketing, manager: 1% of after-repair value during marketing}\nloans: [{name: bank, price share: 80%, exit fee: 1% of commitment}]\n")
	for set, want := range map[[2]string]string{
		{"manager", "2% of after-repair value"}: "if the phase is to stay, write   --set 'manager=2% of after-repair value during marketing'",
		{"manager", "2% during marketing"}:      "if it stays of that, write   --set 'manager=2% of after-repair value during marketing'",
		{"title", "1%"}:                         "if it stays of that, write   --set 'title=1% of after-repair value'",
		{"title", "1% of price"}:                "",
		{"title", "$900"}:                       "",
		{"yard", "$90/month"}:                   "if the phase is to stay, write   --set 'yard=$90/month during marketing'",
		{"yard", "$90"}:                         "if the time is to stay, write   --set 'yard=$90/month during marketing'",
		{"yard", "$90/month during hold"}:       "",
		{"stamps", "$3"}:                        "if it is for each $1,000, write   --set 'stamps=$3 per $1,000 of after-repair value'",
		{"stamps", "$3 per $1,000"}:             "if it stays of that, write   --set 'stamps=$3 per $1,000 of after-repair value'",
		{"exit fee", "2%"}:                      "if it stays of that, write   --set 'exit fee=2% of commitment'",
		{"exit fee", "2% of balance"}:           "",
	} {
		_, found := deal.Read("a.yaml", text, deal.Set{Path: set[0], Value: set[1]})
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "set-loses-time" })
		if want == "" {
			require.Negative(t, i, "%v: %v", set, found)
			continue
		}
		require.Equal(t, want, found[i].Hint, set)
	}
}
