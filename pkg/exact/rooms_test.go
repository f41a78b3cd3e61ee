package exact_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

func number(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// laid lays a deal over the document and works it out.
func laid(t *testing.T, root *model.Member) (*model.Model, *exact.Values) {
	t.Helper()
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, root)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	return m, v
}

func give(m *model.Member, inputs map[string]string) *model.Member {
	for line, x := range inputs {
		m.GiveNumber(line, number(x))
	}
	return m
}

func house() *model.Member {
	return give(model.NewDeal("house"), map[string]string{"price": "100000", "after_repair_value": "150000", "escrow": "1"})
}

// TestPacksPoolOverTheHouse: two baths of 40 and 12 sq ft take tile by the box of 10
// sq ft; by hand: (40 + 12) x 1.1 = 57.2, so 6 boxes at $25 = $150 less 0, of which
// the first bath carries 44 / 57.2 = $115.38 and the second the rest, $34.62.
func TestPacksPoolOverTheHouse(t *testing.T) {
	root := house()
	trade := root.Add("trade", "", "tile")
	tile := give(root.Add("product", "", "floor tile"), map[string]string{"holds": "10", "pack_price": "25"})
	var items []*model.Member
	for _, r := range []struct{ name, length, width string }{{"bath", "8", "5"}, {"hall", "4", "3"}} {
		room := root.Add("room", "inside", r.name)
		give(room.Add("section", "", "floor"), map[string]string{"length": r.length, "width": r.width})
		item := room.Add("option", "", "gut").Add("item", "", "tile floor")
		item.Link(trade)
		item.Give("measure", model.Value{Refers: "open_floor"})
		give(item, map[string]string{"hours_each": "0.12", "hired_price": "9.5"})
		use := give(item.Add("use", "", "floor tile"), map[string]string{"takes": "1", "waste": "0.1"})
		use.Link(tile)
		items = append(items, item)
	}
	m, v := laid(t, root)
	require.Equal(t, "6", v.Of(m.Find(tile, "packs")).String())
	require.Equal(t, "2.8", v.Of(m.Find(tile, "left_over")).String())
	require.Equal(t, "115.38", v.Of(m.Find(items[0], "materials")).String())
	require.Equal(t, "34.62", v.Of(m.Find(items[1], "materials")).String())
	require.Equal(t, "380", v.Of(m.Find(items[0], "labour")).String()) // 40 x $9.50
	require.Equal(t, "644", v.Of(m.Find(root, "rooms_cost")).String())
	require.Equal(t, "6.24", v.Of(m.Find(trade, "crew_hours")).String()) // 52 x 0.12
}
