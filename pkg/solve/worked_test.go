package solve

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

func worked(t testing.TB) ([]modeltest.Worked, []*model.Model) {
	deals, err := modeltest.ReadWorked("../../testdata/worked-deals.json")
	require.NoError(t, err)
	doc, err := model.Standard()
	require.NoError(t, err)
	var models []*model.Model
	for _, w := range deals {
		m, err := model.Bind(doc, w.Deal.Member())
		require.NoError(t, err)
		models = append(models, m)
	}
	return deals, models
}

// targets are in the order in which they are listed to the owner.
func targets(w modeltest.Worked) []string {
	var out []string
	for _, name := range []string{"profit", "margin", "roi", "cash"} {
		if _, ok := w.Deal.Targets[name]; ok {
			out = append(out, name+"_to_spare")
		}
	}
	return out
}

// The results were computed independently, in exact rationals.
func TestWorkedDealsAreSolved(t *testing.T) {
	deals, models := worked(t)
	for i, w := range deals {
		t.Run(w.About, func(t *testing.T) {
			m := models[i]
			o, err := MaxOffer(m, targets(w))
			require.NoError(t, err)
			same(t, w.Results["max_offer"], o.Price, o.Found)
			for name, find := range map[string]func(*model.Model, string) (BreakEven, error){
				"break_even_sale_price": BreakEvenSalePrice,
				"break_even_overrun":    BreakEvenOverrun,
				"break_even_months":     BreakEvenMonths,
			} {
				b, err := find(m, "owner_profit")
				require.NoError(t, err)
				same(t, w.Results[name], b.Value, b.Found)
			}
		})
	}
}

func same(t *testing.T, want any, got decimal.Decimal, found bool) {
	t.Helper()
	if want == nil {
		require.False(t, found)
		return
	}
	require.True(t, found)
	require.Equal(t, decimal.NewFromFloat(want.(float64)).String(), got.String())
}

func BenchmarkMaxOffer(b *testing.B) {
	deals, models := worked(b)
	for b.Loop() {
		MaxOffer(models[0], targets(deals[0]))
	}
}

func BenchmarkBreakEvens(b *testing.B) {
	_, models := worked(b)
	for b.Loop() {
		BreakEvenSalePrice(models[0], "owner_profit")
		BreakEvenOverrun(models[0], "owner_profit")
		BreakEvenMonths(models[0], "owner_profit")
	}
}
