package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A sale written out that has none of the own lines keeps that beside its row of a list.
func TestASaleThatHasNothingElseKeepsThat(t *testing.T) {
	const rows = "address,sale date,price,living area,pool\n1 Elm St,2025-10-01,300000,1400,yes\n2 Elm St,2025-10-05,305000,1420,yes\n"
	likely := func(has, file string) string {
		text := unvalued + "house: {living area: 1400 sq ft, has: [pool]}\ncomps:\n" + file + "  amounts: {square foot: $90}\n  own lines: {pool: $12,000}\n  sold:\n" +
			"    1 Elm St: {sold: 2025-10-01, price: $300,000, living area: 1400 sq ft" + has + "}\n    2 Elm St: {sold: 2025-10-05, price: $305,000, living area: 1420 sq ft" + has + "}\n"
		d, found := deal.ReadWith(deal.Options{Open: func(string) ([]byte, error) { return []byte(rows), nil }}, "a.yaml", []byte(text))
		require.NotNil(t, d, "%v", found)
		return d.Comps.Value.Likely.String()
	}
	const file = "  file: s.csv\n"
	for _, none := range []string{", has: []", ", has: none"} {
		require.Equal(t, likely(none, ""), likely(none, file), none)
	}
	require.Equal(t, likely(", has: [pool]", ""), likely("", file), "left unsaid, it is taken from the row")
	require.NotEqual(t, likely(", has: []", file), likely("", file))
}
