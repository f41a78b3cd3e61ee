package odds_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"

	"ledgerboard/pkg/odds"
)

// Whatever the spreads, what is drawn has the wanted rank correlation, reckoned by gonum
// from the ranks.
func TestRanksAreCorrelated(t *testing.T) {
	spreads := []odds.Spread{
		must[odds.Spread](t)(odds.PERT(odds.AtEnds, 0, 1, 5)), must[odds.Spread](t)(odds.LogNormal(0.1, 1, 9)),
		must[odds.Spread](t)(odds.Triangular(odds.AtEnds, 0, 0, 1)), must[odds.Spread](t)(odds.Normal(0.1, 0, 1)),
	}
	want := []odds.Rank{{A: 0, B: 1, Rho: 0.6}, {A: 2, B: 1, Rho: -0.4}, {A: 0, B: 3, Rho: 0.3}}
	d := odds.NewDrawer(spreads, must[*odds.Ties](t)(odds.Tie(4, want)))
	const blocks = 100
	drawn := make([][]float64, 4)
	for b := range uint64(blocks) {
		for i, x := range d.Draw(11, b) {
			drawn[i] = append(drawn[i], x...)
		}
	}
	for i := range 4 {
		drawn[i] = ranks(drawn[i])
	}
	wanted := map[[2]int]float64{}
	for _, w := range want {
		wanted[[2]int{min(w.A, w.B), max(w.A, w.B)}] = w.Rho
	}
	for i := range 4 {
		for j := range i {
			got := stat.Correlation(drawn[i], drawn[j], nil)
			require.InDelta(t, wanted[[2]int{j, i}], got, 4/math.Sqrt(blocks*odds.Block), "%d and %d", j, i)
		}
	}
}

func ranks(x []float64) []float64 {
	order := make([]int, len(x))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		if x[a] < x[b] {
			return -1
		}
		return 1
	})
	out := make([]float64, len(x))
	for rank, i := range order {
		out[i] = float64(rank)
	}
	return out
}

// Correlations are refused exactly where gonum finds their matrix not positive definite.
func TestRefusedWhereNotPositiveDefinite(t *testing.T) {
	refused, taken := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 5).Draw(t, "figures")
		m := mat.NewSymDense(n, nil)
		var want []odds.Rank
		for i := range n {
			m.SetSym(i, i, 1)
			for j := range i {
				rho := rapid.Float64Range(-0.99, 0.99).Draw(t, "rho")
				want = append(want, odds.Rank{A: i, B: j, Rho: rho})
				m.SetSym(i, j, 2*math.Sin(math.Pi*rho/6))
			}
		}
		var eigen mat.EigenSym
		require.True(t, eigen.Factorize(m, false))
		least := slices.Min(eigen.Values(nil))
		if math.Abs(least) < 1e-6 {
			return
		}
		_, err := odds.Tie(n, want)
		if least > 0 {
			require.NoError(t, err)
			taken++
			return
		}
		var tie *odds.TieError
		require.ErrorAs(t, err, &tie)
		refused++
		for i := range want {
			want[i].Rho *= tie.Most * 0.99
		}
		_, err = odds.Tie(n, want)
		require.NoError(t, err, "they fit at the share that the error names")
	})
	require.Positive(t, refused)
	require.Positive(t, taken)
}

func TestTiesRefuse(t *testing.T) {
	for want, ranks := range map[string][]odds.Rank{
		"a rank correlation of 1; take one between -1 and 1": {{A: 0, B: 1, Rho: 1}},
		"a correlation between 0 and 3; there are 3 figures": {{A: 0, B: 3, Rho: 0.1}},
		"a correlation between 1 and 1; there are 3 figures": {{A: 1, B: 1, Rho: 0.1}},
		"the correlation between 1 and 0 is given twice":     {{A: 0, B: 1, Rho: 0.1}, {A: 1, B: 0, Rho: 0.2}},
		"these correlations contradict each other: no figures have them all (the matrix is not positive definite); at 0.53 times as much each they fit together": {
			{A: 0, B: 1, Rho: 0.9}, {A: 1, B: 2, Rho: 0.9}, {A: 0, B: 2, Rho: -0.9},
		},
	} {
		_, err := odds.Tie(3, ranks)
		require.EqualError(t, err, want)
	}
}
