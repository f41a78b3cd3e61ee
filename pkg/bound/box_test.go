package bound_test

import (
	"errors"
	"sync/atomic"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// boxed are the cells that vary at once: what the rooms cost, what the house is worth
// and how long the work takes.
var boxed = []string{"rooms_cost", "after_repair_value", "renovation"}

// at is x parts in 1024 of the way from a to b.
func between(a, b decimal.Decimal, parts int64) decimal.Decimal {
	return a.Add(b.Sub(a).Mul(decimal.NewFromInt(parts)).Div(decimal.NewFromInt(1024)))
}

// Every point of a box lies in a piece, and wherever it does the planes of the piece
// enclose what the exact reader says.
func TestPiecesEncloseEveryPointOfABox(t *testing.T) {
	var compared, cut atomic.Int64
	deals := *randomDeals / 4
	if testing.Short() {
		deals = *randomDeals // a box is cut in one deal of ten
	}
	modeltest.Check(t, deals, func(t *rapid.T) {
		d := modeltest.Random(t)
		doc, err := model.Standard()
		require.NoError(t, err)
		m, err := model.Bind(doc, d.Deal)
		require.NoError(t, err)
		var axes []*model.Cell
		for _, n := range boxed {
			axes = append(axes, m.Find(m.Root, n))
		}
		v, err := exact.Evaluate(m, axes...)
		require.NoError(t, err)
		least, most := make([]decimal.Decimal, 3), make([]decimal.Decimal, 3)
		for i, c := range axes {
			a := v.Of(c)
			wide := []int64{90000, 90000, 2}[i]
			least[i], most[i] = a, a.Add(decimal.NewFromInt(rapid.Int64Range(0, wide*100).Draw(t, "wide")).Shift(-2))
		}
		want := []*model.Cell{m.Find(m.Root, "profit"), m.Find(m.Root, "owner_profit")}
		longest, err := exact.NewPlan(m, m.Cells[m.Horizon]).Evaluate(exact.Change{Cell: axes[2], Value: most[2]})
		require.NoError(t, err)
		p, err := walk.Prepare(m, m.NeededBeyond(model.Indexes(axes), append(model.Indexes(want), m.Horizon)...), model.Indexes(axes), nil, longest.Months())
		require.NoError(t, err)
		var inputs []bound.Input
		for i, c := range axes {
			inputs = append(inputs, bound.Input{Cell: c, At: bound.Varying(i, least[i].InexactFloat64(), most[i].InexactFloat64())})
		}
		all, err := bound.NewBox(p, want...).Over(3, 500, 6, inputs...)
		if errors.Is(err, bound.ErrVaries) {
			return
		}
		require.NoError(t, err)
		if len(all) > 1 {
			cut.Add(1)
		}
		for range 4 {
			var changes []exact.Change
			u := make([]float64, 3)
			for i, c := range axes {
				n := rapid.Int64Range(0, 1024).Draw(t, "parts")
				changes = append(changes, exact.Change{Cell: c, Value: between(least[i], most[i], n)})
				u[i] = float64(n)/512 - 1
			}
			v, err := exact.NewPlan(m, want...).Evaluate(changes...)
			require.NoError(t, err)
			in := 0
			for _, piece := range all {
				if !holds(piece, u) {
					continue
				}
				in++
				for k, c := range want {
					x, y := v.Of(c).InexactFloat64(), of(piece.Want[k][0], u)
					if e := piece.Want[k][0].E + 0.05; x < y-e || x > y+e {
						t.Fatalf("%s at %v is %v; the plane says %v, give or take %v", c.Name(), u, x, y, e)
					}
				}
			}
			require.Positive(t, in, "no piece at %v", u)
			compared.Add(1)
		}
	})
	t.Logf("%d points, %d boxes cut", compared.Load(), cut.Load())
	require.Positive(t, compared.Load())
	require.Positive(t, cut.Load())
}

// of is a plane's value without its error.
func of(p bound.Plane, u []float64) float64 {
	x := p.C
	for i, s := range p.S {
		x += s * u[i]
	}
	return x
}

func holds(p bound.Piece, u []float64) bool {
	for _, w := range p.Where {
		if of(w, u) < -1e-6 {
			return false
		}
	}
	return true
}
