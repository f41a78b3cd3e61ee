package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A garage of which nothing is said but that there is one is not named twice.
func TestAGarageOfNoKindReadsWell(t *testing.T) {
	for garage, want := range map[string][2]string{
		"yes":      {"the house has a garage and does not say for how many cars, so it counts as one for one car", "write for how many, e.g.   garage: 2 car"},
		"attached": {"the house has a garage, attached, and does not say for how many cars, so it counts as one for one car", "write for how many, e.g.   garage: 2 car attached"},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1480 sq ft, garage: "+garage+"}\ncomps:\n  amounts: {car of garage: $7,500}\n  sold:\n"+
			"    1 Elm St: {sold: 2025-11-14, price: $341k, garage: 2 cars}\n    2 Elm St: {sold: 2025-10-14, price: $331k, garage: 1 car}\n"))
		said := false
		for _, f := range found {
			if f.Code == "garage-counts-as-one" {
				said = true
				require.Equal(t, want, [2]string{f.Message, f.Hint})
			}
		}
		require.True(t, said, found)
	}
}
