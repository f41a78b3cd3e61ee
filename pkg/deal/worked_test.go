package deal_test

import (
	"fmt"
	"os"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
)

const testdata = "../../testdata/"

// workedFiles are the worked deals as deal files, in the order of the JSON.
var workedFiles = []string{"drawn", "capped", "commitment", "reserve", "cash"}

// searched are results that a solver finds; they are no lines of the model.
var searched = map[string]bool{"irr": true, "max_offer": true, "break_even_sale_price": true, "break_even_overrun": true, "break_even_months": true}

func worked(t testing.TB, name string) []byte {
	b, err := os.ReadFile(testdata + "worked/" + name + ".yaml")
	require.NoError(t, err)
	return b
}

// The results were computed independently, month by month, in exact rationals
// (testdata/worked-deals.json).
func TestWorkedDealsAsFilesComeOutToTheCent(t *testing.T) {
	all, err := modeltest.ReadWorked(testdata + "worked-deals.json")
	require.NoError(t, err)
	require.Len(t, all, len(workedFiles))
	for i, w := range all {
		t.Run(workedFiles[i], func(t *testing.T) {
			d, found := deal.Read(workedFiles[i], worked(t, workedFiles[i]))
			require.NotNil(t, d, "%v", found)
			v, err := exact.Evaluate(d.Model)
			require.NoError(t, err)
			for name, want := range w.Results {
				cell := d.Model.Find(d.Root, name)
				switch want := want.(type) {
				case float64:
					if !searched[name] {
						require.Equal(t, decimal.NewFromFloat(want).String(), v.Of(cell).Round(9).String(), name)
					}
				case []any:
					for month, x := range want {
						require.Equal(t, fmt.Sprintf("%.2f", x), v.In(cell, month).StringFixed(2), "%s, month %d", name, month)
					}
				}
			}
		})
	}
}
