package exact_test

import (
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

const workedDeals = "../../testdata/worked-deals.json"

// searched are results that a solver finds; they are no lines of the model.
var searched = map[string]bool{"irr": true, "max_offer": true, "break_even_sale_price": true, "break_even_overrun": true, "break_even_months": true}

func bind(t testing.TB, d *model.Member) *model.Model {
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	return m
}

// The results were computed independently, month by month, in exact rationals.
func TestWorkedDealsComeOutToTheCent(t *testing.T) {
	deals, err := modeltest.ReadWorked(workedDeals)
	require.NoError(t, err)
	require.Len(t, deals, 5)
	for _, w := range deals {
		t.Run(w.About, func(t *testing.T) {
			m := bind(t, w.Deal.Member())
			v, err := exact.Evaluate(m)
			require.NoError(t, err)
			for name, want := range w.Results {
				switch want := want.(type) {
				case float64:
					if searched[name] {
						continue
					}
					got := v.Of(m.Find(m.Root, name))
					require.Equal(t, decimal.NewFromFloat(want).String(), got.Round(9).String(), name)
				case []any:
					for month, x := range want {
						got := v.In(m.Find(m.Root, name), month)
						require.Equal(t, fmt.Sprintf("%.2f", x), got.StringFixed(2), "%s, month %d", name, month)
					}
				}
			}
		})
	}
}

func BenchmarkEvaluateAll(b *testing.B) {
	deals, err := modeltest.ReadWorked(workedDeals)
	require.NoError(b, err)
	m := bind(b, deals[0].Deal.Member())
	for b.Loop() {
		exact.Evaluate(m)
	}
}

func BenchmarkBind(b *testing.B) {
	deals, err := modeltest.ReadWorked(workedDeals)
	require.NoError(b, err)
	d := deals[0].Deal.Member()
	for b.Loop() {
		bind(b, d)
	}
}
