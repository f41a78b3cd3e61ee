package comps

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// longley is the data set Longley of the NIST Statistical Reference Datasets (US
// public domain): employment, then price deflator, GNP, unemployed, armed forces,
// population and year.
var longley = [][]float64{
	{60323, 83.0, 234289, 2356, 1590, 107608, 1947}, {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
	{60171, 88.2, 258054, 3682, 1616, 109773, 1949}, {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
	{63221, 96.2, 328975, 2099, 3099, 112075, 1951}, {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
	{64989, 99.0, 365385, 1870, 3547, 115094, 1953}, {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
	{66019, 101.2, 397469, 2904, 3048, 117388, 1955}, {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
	{68169, 108.4, 442769, 2936, 2798, 120445, 1957}, {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
	{68655, 112.6, 482704, 3813, 2552, 123366, 1959}, {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
	{69331, 115.7, 518173, 4806, 2572, 127852, 1961}, {70551, 116.9, 554894, 4007, 2827, 130081, 1962},
}

func laid(rows [][]float64) (x, y []float64, p int) {
	p = len(rows[0]) - 1
	for _, r := range rows {
		y = append(y, r[0])
		x = append(x, r[1:]...)
	}
	return x, y, p
}

func ones(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = 1
	}
	return out
}

// The certified values are those of NIST StRD, Longley (itl.nist.gov/div898/strd, from
// memory); gonum's QR says the same below.
func TestRegressionOnLongley(t *testing.T) {
	x, y, p := laid(longley)
	cell := make([]int, len(y))
	g := newGram(p, 1)
	g.sum(x, y, ones(len(y)), cell)
	inv := g.xx.invert()
	beta := inv.times(g.xy)
	left := make([]float64, len(y))
	g.residuals(x, y, cell, beta, left)
	s2 := dot(left, left) / float64(len(y)-p-1)

	require.InEpsilon(t, 304.854073561965, math.Sqrt(s2), 1e-8, "residual standard deviation")
	require.InEpsilon(t, -3482258.63459582, g.my[0]-dot(beta, g.mx[:p]), 1e-8, "level")
	for j, want := range []struct{ beta, se float64 }{
		{15.0618722713733, 84.9149257747669}, {-0.0358191792925910, 0.0334910077722432},
		{-2.02022980381683, 0.488399681651699}, {-1.03322686717359, 0.214274163161675},
		{-0.0511041056535807, 0.226073200069370}, {1829.15146461355, 455.478499142212},
	} {
		require.InEpsilon(t, want.beta, beta[j], 1e-7, "coefficient %d", j+1)
		require.InEpsilon(t, want.se, math.Sqrt(s2*inv.at(j, j)), 1e-7, "standard error %d", j+1)
	}

	full := mat.NewDense(len(y), p+1, nil)
	for i := range y {
		full.Set(i, 0, 1)
		full.SetRow(i, append([]float64{1}, x[i*p:(i+1)*p]...))
	}
	var byQR mat.VecDense
	require.NoError(t, byQR.SolveVec(full, mat.NewVecDense(len(y), y)))
	for j := range p {
		require.InEpsilon(t, byQR.AtVec(j+1), beta[j], 1e-7)
	}
}

// The robust fit with levels by neighbourhood is the weighted least squares of
// gonum, with a column of ones for each, under the weights it ended with; and its
// errors are the sandwich worked out from whole matrices.
func TestRobustFitEqualsGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	const n, p, cells = 200, 4, 5
	x, y, cell := make([]float64, n*p), make([]float64, n), make([]int, n)
	for i := range y {
		cell[i] = i % cells
		y[i] = float64(cell[i]) + r.NormFloat64()
		if i%17 == 0 {
			y[i] += 30 // far off
		}
		for j := range p {
			x[i*p+j] = r.NormFloat64() + float64(cell[i]*j)
			y[i] += x[i*p+j] * float64(j-1)
		}
	}
	f := robustFit(x, p, y, cell, cells)
	require.Less(t, f.weight[17], 0.2, "what is far off counts less")

	k := p + cells
	a, b := mat.NewDense(n, k, nil), mat.NewVecDense(n, nil)
	for i := range n {
		w := math.Sqrt(f.weight[i])
		for j := range p {
			a.Set(i, j, w*x[i*p+j])
		}
		a.Set(i, p+cell[i], w)
		b.SetVec(i, w*y[i])
	}
	var beta mat.VecDense
	require.NoError(t, beta.SolveVec(a, b))
	for j := range p {
		require.InDelta(t, beta.AtVec(j), f.beta[j], 1e-9)
		require.InDelta(t, float64(j-1), f.beta[j], 5*math.Sqrt(f.cov.at(j, j)), "the true rate")
	}

	var ata, inv, half, cov mat.Dense
	ata.Mul(a.T(), a)
	require.NoError(t, inv.Inverse(&ata))
	meat := mat.NewDense(k, k, nil)
	for i := range n {
		e := math.Sqrt(f.weight[i]) * f.left[i]
		row := mat.NewVecDense(k, mat.Row(nil, i, a))
		meat.RankOne(meat, e*e, row, row)
	}
	half.Mul(&inv, meat)
	cov.Mul(&half, &inv)
	for j := range p {
		require.InEpsilon(t, cov.At(j, j)*n/float64(n-k), f.cov.at(j, j), 1e-9)
	}
}

func TestInvertLeavesOutWhatFollows(t *testing.T) {
	s := newSymmetric(3)
	for _, x := range [][]float64{{1, 2, 0}, {2, 4, 1}, {3, 6, 5}} { // the second is twice the first
		s.add(1, x)
	}
	inv := s.invert()
	require.Zero(t, inv.at(1, 1))
	require.InDelta(t, 1, s.at(0, 0)*inv.at(0, 0)+s.at(0, 2)*inv.at(0, 2), 1e-12)
}

// What is left of a regression by normal errors is smaller by √((n-p)/n) than they are, and what
// it says of a house that it has not seen is off by √((n+p)/n) times as much.
func TestUnseenHousesLieFartherOff(t *testing.T) {
	f := &fit{left: make([]float64, 80), kept: slices.Repeat([]bool{true}, 20)}
	require.InDelta(t, math.Sqrt(100.0/60), f.unseen(), 1e-12)

	random := rand.New(rand.NewPCG(1, 2))
	const n, p, runs = 60, 15, 400
	seen, unseen := 0.0, 0.0
	for range runs {
		x, y := make([]float64, n*p), make([]float64, n)
		for i := range x {
			x[i] = random.NormFloat64()
		}
		for i := range y {
			y[i] = random.NormFloat64()
		}
		f := robustFit(x, p, y, make([]int, n), 1)
		off := random.NormFloat64() // of a house whose columns are drawn alike
		for _, b := range f.beta {
			off += b * random.NormFloat64()
		}
		unseen += off * off / runs
		for _, r := range f.left {
			seen += r * r / n / runs
		}
	}
	require.InDelta(t, math.Sqrt(float64(n+p)/(n-p)), math.Sqrt(unseen/seen), 0.15)
}
