package fast_test

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// near is how far float64 may lie from the exact value, as a share of it or in its unit:
// far less than a cent, so that a rounding that falls the other way would show.
const near = 1e-7

var wanted = []string{"rooms_cost", "rooms_at_trade_price", "disposal", "value_added", "scope_months", "room_own_hours", "all_debris", "house_floor"}

// tie is how far some roundings of just half a cent may take a sum of money.
const tie = 0.05

// Whatever is chosen in a random house, both readers agree on the work.
func TestNearExact(t *testing.T) {
	moved := 0
	modeltest.Check(t, 200, func(t *rapid.T) {
		d := modeltest.RandomHouse(t)
		doc, err := model.Standard()
		require.NoError(t, err)
		m, err := model.Bind(doc, d.Deal)
		require.NoError(t, err)
		var axes, want []*model.Cell
		for _, room := range m.Root.In("room") {
			for _, o := range room.In("option") {
				axes = append(axes, m.Find(o, "chosen"))
			}
		}
		for _, n := range wanted {
			want = append(want, m.Find(m.Root, n))
		}
		p, err := walk.Prepare(m, m.NeededBeyond(model.Indexes(axes), model.Indexes(want)...), model.Indexes(axes), nil, -1)
		require.NoError(t, err)
		program, err := fast.New(p, axes, want...)
		require.NoError(t, err)
		in, out := make([]float64, len(axes)), make([]float64, len(want))
		for range 3 {
			var changes []exact.Change
			for i, c := range axes {
				in[i] = float64(rapid.IntRange(0, 1).Draw(t, "chosen"))
				changes = append(changes, exact.Change{Cell: c, Value: decimal.NewFromFloat(in[i])})
			}
			v, err := exact.NewPlan(m, want...).Evaluate(changes...)
			require.NoError(t, err)
			program.Run(in, out)
			for i, c := range want {
				x := v.Of(c).InexactFloat64()
				most := near * math.Max(1, math.Abs(x))
				if c.Line.Unit == "$" {
					most = math.Max(most, tie) // half a cent may be rounded either way
				}
				require.InDelta(t, x, out[i], most, c.Name())
			}
			moved++
		}
	})
	require.Positive(t, moved)
}

// Running does not allocate, so that it can be done a million times.
func TestRunsWithoutAllocating(t *testing.T) {
	doc, err := model.Standard()
	require.NoError(t, err)
	root := model.NewDeal("one room")
	root.GiveNumber("price", decimal.NewFromInt(100000))
	o := root.Add("room", "outside", "outside").Add("option", "", "all")
	o.GiveNumber("value_added", decimal.NewFromInt(9000))
	m, err := model.Bind(doc, root)
	require.NoError(t, err)
	axes, want := []*model.Cell{m.Find(o, "chosen")}, []*model.Cell{m.Find(root, "after_repair_value")}
	p, err := walk.Prepare(m, m.NeededBeyond(model.Indexes(axes), model.Indexes(want)...), model.Indexes(axes), nil, -1)
	require.NoError(t, err)
	program, err := fast.New(p, axes, want...)
	require.NoError(t, err)
	require.Positive(t, program.Size())
	in, out := []float64{1}, []float64{0}
	require.Zero(t, testing.AllocsPerRun(10, func() { program.Run(in, out) }))
	require.EqualValues(t, 9000, out[0])
	in[0] = 0
	program.Run(in, out)
	require.Zero(t, out[0])
}

// Lines that run by month are refused.
func TestRefusesMonths(t *testing.T) {
	doc, err := model.Standard()
	require.NoError(t, err)
	root := model.NewDeal("by month")
	root.GiveNumber("price", decimal.NewFromInt(100000))
	root.GiveNumber("escrow", decimal.NewFromInt(2))
	m, err := model.Bind(doc, root)
	require.NoError(t, err)
	axes, want := []*model.Cell{m.Find(root, "price")}, []*model.Cell{m.Find(root, "profit")}
	p, err := walk.Prepare(m, m.Needed(want[0].Index), model.Indexes(axes), nil, 2)
	require.NoError(t, err)
	_, err = fast.New(p, axes, want...)
	require.ErrorContains(t, err, "by month")
}
