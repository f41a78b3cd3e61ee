package formula_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
)

// Each operator's slopes are what small steps of its float64 rule give, away from kinks.
func TestSlopesBySmallSteps(t *testing.T) {
	at := [][]float64{{3.3, 2.2, 1.7}, {0.4, 5.1, 2.3}, {250.4, 0.009, 36}, {250.4, 0, 36}, {-2.6, 3, 0.5}}
	seen := 0
	for _, op := range formula.Table {
		require.Equal(t, op.Float == nil, op.Slope == nil, op.Name)
		if op.Slope == nil {
			continue
		}
		seen++
		takes := max(2, op.Least)
		if op.Most == 1 {
			takes = 1
		}
		for _, x := range at {
			by := make([]float64, takes)
			op.Slope(x[:takes], by)
			for i := range takes {
				got, want := by[i], stepped(op, x[:takes], i)
				if op.Code == formula.Cents {
					want = 1 // the slope of what it rounds
				}
				if math.IsNaN(want) || op.Code == formula.Div && x[1] == 0 || op.Code == formula.LevelPayment && (x[1] < 0 || x[1] > 1 || x[1] == 0 && i == 2) {
					continue // beyond what the operator takes
				}
				if op.Code == formula.Power && x[0] < 0 && i == 1 {
					continue
				}
				require.InDelta(t, want, got, 1e-5*math.Max(1, math.Abs(want)), "%s of %v by value %d", op.Name, x[:takes], i+1)
			}
		}
	}
	require.Equal(t, 23, seen)
}

// stepped is the change of a rule for a unit of one value, by a small step to each side.
func stepped(op *formula.Op, x []float64, i int) float64 {
	h := 1e-6 * math.Max(0.01, math.Abs(x[i]))
	up, down := append([]float64{}, x...), append([]float64{}, x...)
	up[i], down[i] = x[i]+h, x[i]-h
	return (op.Float(up) - op.Float(down)) / (2 * h)
}
