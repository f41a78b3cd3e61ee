package cashflow

import "math/big"

// squareFree returns a polynomial with the roots of p, each of them once:
// p / gcd(p, p'). It is slow (Euclid's algorithm on growing coefficients) and
// only asked for when a repeated root is suspected.
func (p poly) squareFree() poly {
	a, b := p.primitive(), p.derivative().primitive()
	for len(b) > 0 {
		_, r := a.divide(b)
		a, b = b, r.primitive()
	}
	if a.degree() == 0 {
		return p
	}
	q, _ := p.divide(a)
	return q.primitive()
}

func (p poly) derivative() poly {
	d := make(poly, p.degree())
	for k := range d {
		d[k] = new(big.Int).Mul(p[k+1], big.NewInt(int64(k+1)))
	}
	return d
}

// primitive divides by what all coefficients have in common, and drops zeros at
// the high end.
func (p poly) primitive() poly {
	for len(p) > 0 && p[len(p)-1].Sign() == 0 {
		p = p[:len(p)-1]
	}
	common := new(big.Int)
	for _, v := range p {
		common.GCD(nil, nil, common, new(big.Int).Abs(v))
	}
	r := make(poly, len(p))
	for k, v := range p {
		r[k] = new(big.Int).Quo(v, common)
	}
	return r
}

// divide returns q and r, of a degree below d's, with m p = q d + r for some
// whole m that is not zero. The degree of d must not be above p's.
func (p poly) divide(d poly) (q, r poly) {
	r = p.clone()
	lead := d[d.degree()]
	q = make(poly, p.degree()-d.degree()+1)
	for k := len(q) - 1; k >= 0; k-- {
		top := new(big.Int).Set(r[k+d.degree()])
		for _, v := range r {
			v.Mul(v, lead)
		}
		for _, v := range q[k+1:] {
			v.Mul(v, lead)
		}
		for j, v := range d {
			r[k+j].Sub(r[k+j], new(big.Int).Mul(top, v))
		}
		q[k] = top
	}
	return q, r[:d.degree()]
}
