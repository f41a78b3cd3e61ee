package comps

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 200).Draw(t, "n")
		x := rapid.SliceOfN(rapid.Float64Range(0, 5), n, n).Draw(t, "x")
		known := rapid.SliceOfN(rapid.Bool(), n, n).Draw(t, "known")
		cell, cells := cells(x, make([]float64, n), known, 7)
		count := make([]int, cells)
		low, high := make([]float64, cells), make([]float64, cells)
		for i, c := range cell {
			if !known[i] {
				require.Equal(t, cells-1, c, "those without a place share the last")
				continue
			}
			if count[c] == 0 {
				low[c], high[c] = x[i], x[i]
			}
			count[c]++
			low[c], high[c] = min(low[c], x[i]), max(high[c], x[i])
		}
		for c := range cells {
			require.LessOrEqual(t, count[c], 7)
			if c > 0 && count[c] > 0 {
				require.LessOrEqual(t, high[c-1], low[c], "neighbourhoods lie side by side")
			}
		}
	})
}

func TestSmallest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.SliceOfN(rapid.Float64Range(-9, 9), 1, 60).Draw(t, "v")
		k := rapid.IntRange(0, len(v)-1).Draw(t, "k")
		require.Equal(t, slices.Sorted(slices.Values(v))[k], smallest(v, k))
	})
}
