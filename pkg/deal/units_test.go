package deal_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// A good is called by what its product is counted in, a unit by what the work is.
func TestUnitWords(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/walnut-row.yaml")
	require.NoError(t, err)
	d, found := deal.Read("walnut-row.yaml", text)
	require.NotNil(t, d, found)
	asked := map[string]bool{}
	for _, c := range d.Model.Cells {
		x := c.Member
		for _, want := range []struct{ set, label, unit, one, several string }{
			{"product", "wall paint", "good", "gal", "gal"}, {"product", "wall paint", "pack", "can", "cans"},
			{"use", "wall paint", "good", "gal", "gal"}, {"use", "wall paint", "unit", "sq ft", "sq ft"},
			{"product", "outlet and switch plate", "good", "piece", "pieces"}, {"product", "outlet and switch plate", "pack", "", ""},
			{"product", "primed shoe moulding", "good", "ft", "ft"}, {"product", "scaffold rental", "good", "week", "weeks"},
			{"item", "paint trim", "unit", "ft", "ft"}, {"item", "toilet", "unit", "each", "each"},
			{"room", "kitchen", "good", "", ""}, {"room", "kitchen", "unit", "", ""}, {"room", "kitchen", "sqft", "", ""},
		} {
			if x.Set != want.set || x.Label != want.label {
				continue
			}
			one, several := d.UnitWords(x, want.unit)
			require.Equal(t, []string{want.one, want.several}, []string{one, several}, "%s, %s", x.Path(), want.unit)
			asked[want.set+" "+want.label] = true
		}
	}
	require.Greater(t, len(asked), 6)
	one, several := d.UnitWords(model.NewDeal("x"), "good")
	require.Empty(t, one+several)
}
