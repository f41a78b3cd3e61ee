package slope_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/slope"
)

// byHand is a deal that can be worked out by hand: bought for cash, 10% works with a
// contingency of 10%, a fee of 5% of the sale price, two whole months, $100 a month.
func byHand(t *testing.T) *model.Model {
	d := model.NewDeal("by hand")
	for line, x := range map[string]int64{"price": 100_000, "after_repair_value": 150_000, "marketing": 1, "escrow": 1} {
		d.GiveNumber(line, decimal.NewFromInt(x))
	}
	d.Add("cost", "", "works").GiveNumber("lump", decimal.NewFromInt(10_000))
	agent := d.Add("fee", "selling_fee", "agent")
	agent.Give("base", model.Value{Refers: "sale_price"})
	agent.GiveNumber("share", decimal.New(5, -2))
	d.Add("fee", "holding_fee", "taxes").GiveNumber("a_month", decimal.NewFromInt(100))
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	return m
}

// By hand: profit = 0.95 value (1 + change) - price - 10,000 (1 + overrun) - 100 a month;
// the overrun is the contingency's share unless it is given, and moves with it.
func TestByHand(t *testing.T) {
	m := byHand(t)
	names := []string{"price", "after_repair_value", "market_change", "overrun", "contingency_share", "late_sale", "escrow", "target_profit"}
	var inputs []*model.Cell
	for _, n := range names {
		inputs = append(inputs, m.Find(m.Root, n))
	}
	got, err := slope.Of(m, inputs, []*model.Cell{m.Find(m.Root, "profit"), m.Find(m.Root, "profit_to_spare"), m.Find(m.Root, "sale_month")})
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{-1, 0.95, 142_500, -10_000, -10_000, -100, -100, 0}, got[0], 1e-6)
	require.InDelta(t, -1, got[1][7], 1e-9)
	require.Equal(t, make([]float64, len(names)), got[2], "what counts whole months has no slope")
}

// A deal that cannot be worked out has no slopes.
func TestNoSlopes(t *testing.T) {
	m := byHand(t)
	m.Give(m.Find(m.Root, "escrow"), model.Value{Number: decimal.NewFromInt(5000)})
	_, err := slope.Of(m, []*model.Cell{m.Find(m.Root, "late_sale")}, []*model.Cell{m.Find(m.Root, "profit")})
	require.ErrorContains(t, err, "1200 months")
	_, err = slope.Of(m, nil, []*model.Cell{m.Find(m.Root, "net_cash")})
	require.ErrorContains(t, err, "each month")
}
