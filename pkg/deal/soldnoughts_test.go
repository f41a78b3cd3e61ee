package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A given amount or an own line with a nought too many is doubted, and a usual one is not.
func TestGivenAmountsWithANoughtTooManyAreDoubted(t *testing.T) {
	for _, c := range []struct {
		text    string
		doubted bool
	}{
		{"amounts: {car of garage: $75,000}", true}, {"amounts: {car of garage: $7,500}", false},
		{"amounts: {bath: $90,000}", true}, {"amounts: {bath: $19,000}", false},
		{"amounts: {bedroom: $80,000}", true}, {"amounts: {bedroom: $8,000}", false},
		{"amounts: {step of condition: $175,000}", true}, {"amounts: {step of condition: $37,500}", false},
		{"amounts: {year newer: $3,500}", true}, {"amounts: {year newer: $900}", false},
		{"own lines: {pool: $120,000}", true}, {"own lines: {busy street: -$120,000}", true}, {"own lines: {pool: $42,000}", false}, {"own lines: {busy street: $11,000}", true}, {"own lines: {busy street: -$11,000}", false},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1480 sq ft}\ncomps:\n  "+c.text+"\n  sold:\n"+
			"    1 Elm St: {sold: 2025-11-14, price: $341k, living area: 1480}\n    2 Elm St: {sold: 2025-10-14, price: $331k, living area: 1480}\n    3 Elm St: {sold: 2025-10-15, price: $335k, living area: 1480}\n"))
		doubted := false
		for _, f := range found {
			doubted = doubted || f.Code == "comps-amount-unusual"
		}
		require.Equal(t, c.doubted, doubted, "%s: %v", c.text, found)
	}
}
