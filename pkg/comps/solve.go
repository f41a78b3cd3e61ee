package comps

import "math"

// symmetric is a symmetric matrix of size n, of which the upper half is used.
type symmetric struct {
	n int
	a []float64
}

func newSymmetric(n int) *symmetric { return &symmetric{n, make([]float64, n*n)} }

func (s *symmetric) at(i, j int) float64 { return s.a[min(i, j)*s.n+max(i, j)] }

// strike sets a row and its column to nothing, which leaves it out of the inverse.
func (s *symmetric) strike(j int) {
	for i := range s.n {
		s.a[min(i, j)*s.n+max(i, j)] = 0
	}
}

// add adds w x x' to the matrix.
func (s *symmetric) add(w float64, x []float64) {
	for i, xi := range x {
		if xi == 0 {
			continue
		}
		row, f := s.a[i*s.n+i:(i+1)*s.n], w*xi
		for j, xj := range x[i:] {
			row[j] += f * xj
		}
	}
}

// batch gathers four rows before they are added, so that the matrix is passed over
// once for them all.
type batch struct {
	to   *symmetric
	rows [4][]float64
	w    [4]float64
	n    int
}

func newBatch(to *symmetric) *batch {
	b := &batch{to: to}
	for i := range b.rows {
		b.rows[i] = make([]float64, to.n)
	}
	return b
}

// next returns where the next row is to be written; done adds it with its weight.
func (b *batch) next() []float64 { return b.rows[b.n] }

func (b *batch) done(w float64) {
	b.w[b.n] = w
	if b.n++; b.n == len(b.rows) {
		b.flush()
	}
}

// flush adds what was gathered.
func (b *batch) flush() {
	for i := b.n; i < len(b.rows); i++ {
		b.w[i] = 0
	}
	b.n = 0
	n := b.to.n
	for i := range n {
		f0, f1, f2, f3 := b.w[0]*b.rows[0][i], b.w[1]*b.rows[1][i], b.w[2]*b.rows[2][i], b.w[3]*b.rows[3][i]
		row := b.to.a[i*n+i : (i+1)*n]
		x0, x1, x2, x3 := b.rows[0][i:n], b.rows[1][i:n], b.rows[2][i:n], b.rows[3][i:n]
		for j := range row {
			row[j] += f0*x0[j] + f1*x1[j] + f2*x2[j] + f3*x3[j]
		}
	}
}

// tiny is the share of a diagonal under which what is left of it counts as nothing:
// the column follows from those before it.
const tiny = 1e-10

// invert returns the inverse by Cholesky's method, the matrix first brought to a
// diagonal of ones so that units play no part. A row that follows from earlier ones
// is left out: zeros in the inverse.
func (s *symmetric) invert() *symmetric {
	n := s.n
	scale := make([]float64, n)
	for i := range n {
		if d := s.at(i, i); d > 0 {
			scale[i] = 1 / math.Sqrt(d)
		}
	}
	l := make([]float64, n*n) // lower, s = l l'
	out := make([]bool, n)
	for j := range n {
		d := s.at(j, j) * scale[j] * scale[j]
		for k := range j {
			d -= l[j*n+k] * l[j*n+k]
		}
		if out[j] = d < tiny; out[j] {
			continue
		}
		l[j*n+j] = math.Sqrt(d)
		for i := j + 1; i < n; i++ {
			v := s.at(j, i) * scale[j] * scale[i]
			for k := range j {
				v -= l[i*n+k] * l[j*n+k]
			}
			l[i*n+j] = v / l[j*n+j]
		}
	}
	return fromCholesky(l, scale, out)
}

// fromCholesky returns the inverse of l l', scaled back.
func fromCholesky(l, scale []float64, out []bool) *symmetric {
	n := len(scale)
	inv := make([]float64, n*n) // of l, lower
	for j := range n {
		if out[j] {
			continue
		}
		inv[j*n+j] = 1 / l[j*n+j]
		for i := j + 1; i < n; i++ {
			if out[i] {
				continue
			}
			v := 0.0
			for k := j; k < i; k++ {
				v -= l[i*n+k] * inv[k*n+j]
			}
			inv[i*n+j] = v / l[i*n+i]
		}
	}
	r := newSymmetric(n)
	for i := range n {
		for j := i; j < n; j++ {
			v := 0.0
			for k := j; k < n; k++ {
				v += inv[k*n+i] * inv[k*n+j]
			}
			r.a[i*n+j] = v * scale[i] * scale[j]
		}
	}
	return r
}

// times returns the matrix times a vector.
func (s *symmetric) times(v []float64) []float64 {
	out := make([]float64, s.n)
	for i := range out {
		for j, x := range v {
			out[i] += s.at(i, j) * x
		}
	}
	return out
}
