package fast

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// edges are values at which rounding, comparing and choosing turn.
var edges = []float64{0, 1, -1, 0.005, -0.005, 0.0049999999, 0.00499999999999, 2.5, 3 - 1e-10, 3 + 1e-10, 3 + 1e-9, 1e-9, 2e-9, 123456.785, -123456.785, 1e12, math.Inf(1), math.Inf(-1), math.NaN()}

// Every operator that a list can hold runs over blocks as by its rule in the table, with
// values in blocks and with either value a number.
func TestFormsEqualTheTable(t *testing.T) {
	seen := 0
	for _, op := range formula.Table {
		if op.Float == nil || op.Least == 0 && op.Binds == 0 {
			continue
		}
		seen++
		takes := flat.Value{Code: op.Code}.Takes()
		for first := range edges {
			for mask := range 1 << takes { // which values are numbers
				compareForm(t, op, takes, mask, edges[first], edges)
			}
		}
	}
	require.GreaterOrEqual(t, seen, len(forms))
}

// compareForm runs an operator with its first value x, its second each of ys, and its
// third another.
func compareForm(t *testing.T, op *formula.Op, takes, mask int, x float64, ys []float64) {
	values := func(i int) [3]float64 { return [3]float64{x, ys[i], ys[(i+5)%len(ys)]} }
	for i := range ys {
		var l flat.List
		v, want := flat.Value{Code: op.Code}, values(i)
		for k := range takes {
			v.Args[k] = int32(k)
			if mask>>k&1 == 1 {
				l.Values, l.In = append(l.Values, flat.Value{Code: flat.Number, Number: want[k]}), append(l.In, -1)
			} else {
				l.Values, l.In = append(l.Values, flat.Value{Code: flat.Axis, Args: [3]int32{int32(k)}}), append(l.In, int32(k))
			}
		}
		l.Values, l.Out = append(l.Values, v), []int32{int32(takes)}
		c := newCode(&l)
		m := make([]float64, c.room)
		c.fill(m)
		const n = 3
		for k, at := range c.in {
			for j := range n {
				if at >= 0 {
					m[int(at)+j] = want[k]
				}
			}
		}
		c.run(m, n)
		y := op.Float(want[:takes])
		for j := range n {
			got := m[int(c.out[0])+j]
			require.True(t, got == y || math.IsNaN(got) && math.IsNaN(y), "%s of %v with numbers %b: %v, not %v", op.Name, want[:takes], mask, got, y)
		}
	}
}
