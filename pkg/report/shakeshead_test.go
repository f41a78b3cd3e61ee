package report

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
)

func answered(t *testing.T, text string) *answer.Answer {
	t.Helper()
	d, found := deal.Read("house.yaml", []byte(text))
	require.NotNil(t, d, found.Error())
	a, err := answer.Of(d, found)
	require.NoError(t, err)
	return a
}

// The head says that a mishap breaks the deal only if one misses what the plan holds. By
// hand: a sale 5% lower takes 10,000 of a profit of 40,000; beside it nothing goes wrong.
func TestTheHeadOfTheMishapsSaysWhetherOneBreaksTheDeal(t *testing.T) {
	const plan = "purchase: {price: $160k}\nvalue: {after-repair value: $200k}\ntime: {escrow: 6 months}\n"
	for targets, want := range map[string]string{
		"":                        "None of the usual mishaps breaks it; the worst of them",
		"targets: {profit: $30k}": "None of the usual mishaps breaks it; the worst of them",
		"targets: {profit: $31k}": "Most likely to break it, of the usual mishaps",
		"targets: {profit: $41k}": "What would make it worse, of the usual mishaps",
		// the profit is missed already, the margin is not: 30,000 of 190,000 are 15.8%
		"targets: {profit: $41k, margin: 16%}": "Most likely to break it, of the usual mishaps",
	} {
		require.Equal(t, want, shakesHead(answered(t, plan+targets)), targets)
	}
	none := answered(t, plan)
	none.Shakes, none.Telling = nil, 0
	require.Equal(t, "None of the usual mishaps breaks it", shakesHead(none))
}

// A hold of 5.96 months reads so on every line, and is the sum of its phases.
func TestTheHoldAddsUpOnThePage(t *testing.T) {
	a := answered(t, "purchase: {price: $160k}\nvalue: {after-repair value: $200k}\ntime: {renovation: 5 months, escrow: 0.956 months}\n")
	said := map[string]string{}
	for _, e := range timing(a) {
		said[e.label] = e.figure
	}
	require.Equal(t, "5.96 months", said["hold"])
	require.Equal(t, "5 months", said["  renovation"])
	require.Equal(t, "0.96 months", said["  escrow"])
}
