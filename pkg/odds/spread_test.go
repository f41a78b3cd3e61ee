package odds_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"ledgerboard/pkg/odds"
)

// score is the normal score that the share p of the cases lies below.
func score(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

func must[T any](t testing.TB) func(T, error) T {
	return func(x T, err error) T {
		t.Helper()
		require.NoError(t, err)
		return x
	}
}

// Apache Commons Statistics, commons-statistics-distribution, test.triangular.1.properties:
// lower -3, mode 2, upper 12.
func TestTriangularAsPublished(t *testing.T) {
	s := must[odds.Spread](t)(odds.Triangular(odds.AtEnds, -3, 2, 12))
	require.InDelta(t, 3.6666666666666665, s.Mean(), 1e-14)
	cdf := map[float64]float64{-2: 0.013333333333333, -1: 0.053333333333333, 0: 0.12, 1: 0.213333333333333, 2: 0.333333333333333, 3: 0.46, 4: 0.573333333333333, 10: 0.973333333333333, 11: 0.993333333333333}
	for x, p := range cdf {
		require.InDelta(t, x, s.At(score(p)), 15e-6, "a millionth of the spread")
	}
}

// Project-management tutorial, PERT part 2: optimistic, most likely and pessimistic, and
// the mean (o + 4m + p) ÷ 6. That the variance of the beta is (mean-o)(p-mean) ÷ 7 is
// worked out by hand from its shape.
func TestPERTAsPublished(t *testing.T) {
	for _, x := range [][4]float64{{3, 5, 7, 5}, {2, 6, 7, 5.5}, {3, 6, 11, 19. / 3}} {
		s := must[odds.Spread](t)(odds.PERT(odds.AtEnds, x[0], x[1], x[2]))
		require.InDelta(t, x[3], s.Mean(), 1e-12)
		mean, variance := moments(s)
		require.InDelta(t, x[3], mean, 1e-5)
		require.InDelta(t, (x[3]-x[0])*(x[2]-x[3])/7, variance, 1e-4)
	}
}

// moments are the mean and the variance of what a spread has at evenly spaced shares.
func moments(s odds.Spread) (mean, variance float64) {
	const n = 200_000
	for i := range n {
		x := s.At(score((float64(i) + 0.5) / n))
		mean, variance = mean+x/n, variance+x*x/n
	}
	return mean, variance - mean*mean
}

// What low and high mean holds for every spread.
func TestMeaningsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		means := odds.Meaning(rapid.Float64Range(0.01, 0.4).Draw(t, "share"))
		low := rapid.Float64Range(1, 1000).Draw(t, "low")
		width := rapid.Float64Range(1, 1000).Draw(t, "width")
		likely := math.Min(low+width, low+width*rapid.Float64Range(0, 1).Draw(t, "likely"))
		for name, make := range map[string]func() (odds.Spread, error){
			"uniform":    func() (odds.Spread, error) { return odds.Uniform(means, low, low+width) },
			"triangular": func() (odds.Spread, error) { return odds.Triangular(means, low, likely, low+width) },
			"PERT":       func() (odds.Spread, error) { return odds.PERT(means, low, likely, low+width) },
			"normal":     func() (odds.Spread, error) { return odds.Normal(means, low, low+width) },
			"lognormal":  func() (odds.Spread, error) { return odds.LogNormal(means, low, low+width) },
		} {
			s, err := make()
			require.NoError(t, err, name)
			require.InDelta(t, low, s.At(score(float64(means))), 1e-4*width, name)
			require.InDelta(t, low+width, s.At(score(1-float64(means))), 1e-4*width, name)
			least, most := s.Ends()
			require.Less(t, least, low, name)
			require.Greater(t, most, low+width, name)
		}
	})
}

// Between the values of a table a spread is that of gonum, to a millionth.
func TestTablesAsGonum(t *testing.T) {
	for name, s := range map[string]struct {
		odds.Spread
		quantile func(float64) float64
	}{
		"triangular": {must[odds.Spread](t)(odds.Triangular(odds.AtEnds, 10, 12, 20)), distuv.NewTriangle(10, 20, 12, nil).Quantile},
		"uniform":    {must[odds.Spread](t)(odds.Uniform(odds.AtEnds, 10, 20)), distuv.Uniform{Min: 10, Max: 20}.Quantile},
		"PERT":       {must[odds.Spread](t)(odds.PERT(odds.AtEnds, 10, 12, 20)), func(p float64) float64 { return 10 + 10*distuv.Beta{Alpha: 1.8, Beta: 4.2}.Quantile(p) }},
		"normal":     {must[odds.Spread](t)(odds.Normal(odds.OneInTen, 10, 20)), distuv.Normal{Mu: 15, Sigma: 5 / 1.2815515655446004}.Quantile},
		"lognormal":  {must[odds.Spread](t)(odds.LogNormal(odds.OneInTen, 10, 20)), distuv.LogNormal{Mu: math.Log(200) / 2, Sigma: math.Log(2) / 2 / 1.2815515655446004}.Quantile},
	} {
		for i := 1; i < 5000; i++ {
			p := float64(i) / 5000
			require.InDelta(t, s.quantile(p), s.At(score(p)), 1e-5, "%s at %v", name, p)
		}
	}
}

func TestDiscrete(t *testing.T) {
	s := must[odds.Spread](t)(odds.Discrete(odds.Case{Value: 3, Weight: 1}, odds.Case{Value: 0, Weight: 7}, odds.Case{Value: 1, Weight: 2}, odds.Case{Value: 9, Weight: 0}))
	require.InDelta(t, 0.5, s.Mean(), 1e-12)
	for p, x := range map[float64]float64{0.001: 0, 0.699: 0, 0.701: 1, 0.899: 1, 0.901: 3, 0.999: 3} {
		require.Equal(t, x, s.At(score(p)), "%v", p)
	}
	least, most := s.Ends()
	require.Equal(t, []float64{0, 3}, []float64{least, most})
	require.Equal(t, 4.0, odds.Fixed(4).At(2))
}

func TestSpreadsRefuse(t *testing.T) {
	for want, make := range map[string]func() (odds.Spread, error){
		"the figures are [3 2 5]; they must not fall from low to high": func() (odds.Spread, error) { return odds.PERT(odds.AtEnds, 3, 2, 5) },
		"low and high are both 3; there is no spread":                  func() (odds.Spread, error) { return odds.Triangular(odds.AtEnds, 3, 3, 3) },
		"0.6 of the cases cannot lie below the low figure; take 0 to 0.4": func() (odds.Spread, error) {
			return odds.Uniform(0.6, 1, 2)
		},
		"a bell curve has no ends; say which share of the cases lies below 1": func() (odds.Spread, error) { return odds.Normal(odds.AtEnds, 1, 2) },
		"the low figure is -1, and a lognormal one is above 0":                func() (odds.Spread, error) { return odds.LogNormal(0.1, -1, 2) },
		"NaN is no figure": func() (odds.Spread, error) { return odds.PERT(odds.AtEnds, 1, math.NaN(), 2) },
		"the weights add up to 0; some value must weigh more than 0": func() (odds.Spread, error) { return odds.Discrete(odds.Case{Value: 1}) },
		"the weight of 1 is -1; take 0 or more":                      func() (odds.Spread, error) { return odds.Discrete(odds.Case{Value: 1, Weight: -1}) },
	} {
		_, err := make()
		require.EqualError(t, err, want)
	}
}
