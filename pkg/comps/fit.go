package comps

import "math"

// fit is a regression with its spread.
type fit struct {
	beta   []float64
	cov    *symmetric // of beta, from the residuals as they are (HC1)
	scale  float64    // robust spread of the residuals, as a standard deviation
	weight []float64  // of each row, 1 but for those far off
	left   []float64  // residuals, neighbourhoods' levels taken off
	free   int        // degrees of freedom
	kept   []bool     // of each column, whether the sales tell it
}

// rounds is how often the weights of the rows are drawn anew.
const rounds = 3

// huber is where a residual begins to count less, in standard deviations: 95%
// efficient for normal errors (Huber 1981, from memory).
const huber = 1.345

// leastScale is a spread, of the log, under which prices are alike: what is left of equal ones
// is rounding, and nobody bargains over a thousandth (common practice, no source).
const leastScale = 0.001

// robustFit fits y on the columns of x within cells, each with a level of its own.
func robustFit(x []float64, p int, y []float64, cell []int, cellCount int) *fit {
	n := len(y)
	f := &fit{weight: make([]float64, n), left: make([]float64, n), beta: make([]float64, p), cov: newSymmetric(p)}
	for i := range f.weight {
		f.weight[i] = 1
	}
	g := newGram(p, cellCount)
	for round := range rounds {
		g.sum(x, y, f.weight, cell)
		inv := g.xx.invert()
		f.beta = inv.times(g.xy)
		g.residuals(x, y, cell, f.beta, f.left)
		f.kept = g.kept(inv)
		f.free = n - rank(f.kept) - g.used
		f.scale = madScale(f.left)
		if round == rounds-1 {
			f.cov = g.sandwich(x, cell, f.left, f.weight, inv, f.free)
			break
		}
		usual := huber * max(f.scale, leastScale)
		for i, r := range f.left {
			f.weight[i] = min(1, usual/math.Abs(r))
		}
	}
	return f
}

// unseen is how many times as far as the sales that it was fitted to a house lies from what a
// regression says that has not seen it: with n sales and p columns √((n+p)/(n-p)), as for normal
// errors, the root of their final prediction error over the mean square of what is left
// (Akaike 1969, from memory).
func (f *fit) unseen() float64 {
	n, p := float64(len(f.left)), float64(rank(f.kept))
	return math.Sqrt((n + p) / (n - p))
}

// madScale returns the median of the sizes, times 1.4826, which for normal errors is
// their standard deviation.
func madScale(r []float64) float64 {
	if len(r) == 0 {
		return 0
	}
	a := make([]float64, len(r))
	for i, v := range r {
		a[i] = math.Abs(v)
	}
	return 1.4826 * smallest(a, len(a)/2)
}

// gram sums squares and products within cells.
type gram struct {
	p    int
	xx   *symmetric
	xy   []float64
	w    []float64 // by cell
	mx   []float64 // by cell, weighted means of x
	my   []float64
	sq   []float64 // by column, weighted squares
	used int       // cells with anything in them
}

func newGram(p, cells int) *gram {
	return &gram{p: p, xx: newSymmetric(p), xy: make([]float64, p),
		sq: make([]float64, p), w: make([]float64, cells), mx: make([]float64, p*cells), my: make([]float64, cells)}
}

// sum sums the squares and products around the means of the cells.
func (g *gram) sum(x, y, w []float64, cell []int) {
	p := g.p
	clear(g.xx.a)
	clear(g.xy)
	clear(g.w)
	clear(g.mx)
	clear(g.sq)
	clear(g.my)
	for i, c := range cell {
		g.w[c] += w[i]
		g.my[c] += w[i] * y[i]
		m := g.mx[c*p : (c+1)*p]
		for j, v := range x[i*p : (i+1)*p] {
			m[j] += w[i] * v
			g.sq[j] += w[i] * v * v
		}
	}
	g.used = 0
	for c, total := range g.w {
		if total == 0 {
			continue
		}
		g.used++
		g.my[c] /= total
		for j := range p {
			g.mx[c*p+j] /= total
		}
	}
	rows := newBatch(g.xx)
	for i, c := range cell {
		m, d := g.mx[c*p:(c+1)*p], rows.next()
		for j, v := range x[i*p : (i+1)*p] {
			d[j] = v - m[j]
		}
		dy := w[i] * (y[i] - g.my[c])
		for j, v := range d {
			g.xy[j] += v * dy
		}
		rows.done(w[i])
	}
	rows.flush()
	for j, sq := range g.sq {
		if g.xx.at(j, j) < flat*sq {
			g.xx.strike(j)
		}
	}
}

// flat is the share of a column's squares under which those around the means of the cells
// are only rounding: it varies within none of them.
const flat = 1e-20

func (g *gram) residuals(x, y []float64, cell []int, beta, to []float64) {
	p := g.p
	level := make([]float64, len(g.w))
	for c := range level {
		level[c] = g.my[c] - dot(beta, g.mx[c*p:(c+1)*p])
	}
	for i, c := range cell {
		to[i] = y[i] - level[c] - dot(beta, x[i*p:(i+1)*p])
	}
}

// kept returns which columns the inverse kept, and rank how many those are.
func (g *gram) kept(inv *symmetric) []bool {
	out := make([]bool, g.p)
	for i := range out {
		out[i] = inv.at(i, i) > 0
	}
	return out
}

func rank(kept []bool) (n int) {
	for _, k := range kept {
		if k {
			n++
		}
	}
	return n
}

// sandwich returns the covariance of the coefficients that holds whatever the
// spread of single rows is (White 1980, with the n/(n-k) of HC1; from memory).
func (g *gram) sandwich(x []float64, cell []int, left, w []float64, inv *symmetric, free int) *symmetric {
	p := g.p
	meat := newSymmetric(p)
	rows := newBatch(meat)
	for i, c := range cell {
		m, d := g.mx[c*p:(c+1)*p], rows.next()
		for j, v := range x[i*p : (i+1)*p] {
			d[j] = v - m[j]
		}
		e := w[i] * left[i]
		rows.done(e * e)
	}
	rows.flush()
	out := newSymmetric(p)
	half := make([]float64, p*p) // inv times meat
	for i := range p {
		for k := range p {
			a := inv.at(i, k)
			for j := range p {
				half[i*p+j] += a * meat.at(k, j)
			}
		}
	}
	grow := 1.0
	if free > 0 {
		grow = float64(len(left)) / float64(free)
	}
	for i := range p {
		for j := i; j < p; j++ {
			v := 0.0
			for k := range p {
				v += half[i*p+k] * inv.at(k, j)
			}
			out.a[i*p+j] = v * grow
		}
	}
	return out
}
