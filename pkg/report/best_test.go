package report

import (
	"bytes"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/best"
)

// A search that had to stop says so where it says what is best, and by how much it may be off.
func TestABestThatIsNotProvedSaysSo(t *testing.T) {
	a := answered(t, "purchase: {price: $200k}\nvalue: {after-repair value: $260k}\ntime: {escrow: 1 month}\n")
	page := func(f best.Found) string {
		f.Best = &best.Choice{Profit: a.Line("owner_profit")}
		p := bestPage{newPage(&bytes.Buffer{}, Style{}), &BestPage{Best: a, Own: a, Found: &f}}
		return p.answer() + "\n" + p.sure()
	}
	cents := a.Line("owner_profit").Shift(2).IntPart()
	proved := page(best.Found{Choices: 4e6, Worked: 9, Proved: true, SecondProved: true, Bounded: true})
	require.Contains(t, proved, "These options bring the most profit, $")
	require.NotContains(t, proved, "missed")
	stopped := page(best.Found{Choices: 4e6, Worked: 9, Looked: 2_000_000, Bounded: true, Most: cents + 123_45})
	require.Contains(t, stopped, "bring the most profit of all that were found, $")
	require.Contains(t, stopped, "does. A better choice may have been missed, by no more than $123.45.\n")
	require.Contains(t, stopped, "stopped at its limit, after 2,000,000 looks at a part of a choice. A better choice")
}

// Another limit of cash than the file's is in the offers beside it.
func TestOffersOfBestSayWhatCashTheyKeep(t *testing.T) {
	a := answered(t, "purchase: {price: $200k}\nvalue: {after-repair value: $260k}\ntime: {escrow: 1 month}\ncash: {available: $300k, keep back: $20k}\n")
	for cash, says := range map[int64]string{280_000: "maximum offer", 270_000: "maximum offer in that cash"} {
		x := decimal.NewFromInt(cash)
		require.Equal(t, says, bestPage{nil, &BestPage{Own: a, Limits: best.Limits{Cash: &x}}}.offerWords())
	}
}
