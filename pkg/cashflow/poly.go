package cashflow

import "math/big"

// poly is a polynomial with whole coefficients, that of x^k at index k. Methods
// leave their receiver alone but may share its numbers.
type poly []*big.Int

// trimmed drops zeros at both ends: the high ones say nothing, the low ones
// are roots at zero, which no rate stands for.
func (p poly) trimmed() poly {
	for len(p) > 0 && p[len(p)-1].Sign() == 0 {
		p = p[:len(p)-1]
	}
	for len(p) > 0 && p[0].Sign() == 0 {
		p = p[1:]
	}
	return p
}

func (p poly) degree() int { return len(p) - 1 }

func (p poly) clone() poly {
	c := make(poly, len(p))
	for k, v := range p {
		c[k] = new(big.Int).Set(v)
	}
	return c
}

// reversed returns x^n p(1/x): its roots are the reciprocals.
func (p poly) reversed() poly {
	r := make(poly, len(p))
	for k, v := range p {
		r[len(p)-1-k] = v
	}
	return r
}

// signChanges counts changes of sign from one coefficient to the next, zeros
// left out: by Descartes' rule the number of positive roots, each as often as
// it repeats, or an even number more.
func (p poly) signChanges() int {
	changes, last := 0, 0
	for _, v := range p {
		if s := v.Sign(); s != 0 {
			if s == -last {
				changes++
			}
			last = s
		}
	}
	return changes
}

// shifted returns p(x+1).
func (p poly) shifted() poly {
	r := p.clone()
	for k := range r.degree() {
		for j := r.degree() - 1; j >= k; j-- {
			r[j].Add(r[j], r[j+1])
		}
	}
	return r
}

// halved returns 2^n p(x/2).
func (p poly) halved() poly {
	r := make(poly, len(p))
	for k, v := range p {
		r[k] = new(big.Int).Lsh(v, uint(p.degree()-k))
	}
	return r
}

// without divides by the line through root as often as root is one.
func (p poly) without(root dyadic) poly {
	for p.degree() > 0 && p.zeroAt(root) {
		p = p.over(root)
	}
	return p
}

// over returns p / (2^exp x - num) for a root num/2^exp in lowest terms. By
// Gauss's lemma the quotient has whole coefficients.
func (p poly) over(root dyadic) poly {
	q := make(poly, p.degree())
	carry := new(big.Int)
	for k := p.degree(); k > 0; k-- {
		v := new(big.Int).Add(p[k], carry)
		q[k-1] = v.Rsh(v, root.exp)
		carry.Mul(q[k-1], root.num)
	}
	return q
}

// unitChanges is Descartes' bound for the roots strictly between 0 and 1: exact
// if it is 0 or 1, else too high by an even number or by repeated roots. p must
// not be zero at 0 or 1.
func (p poly) unitChanges() int {
	switch p.signChanges() {
	case 0:
		return 0
	case 1: // one positive root; the ends tell on which side of 1
		if p.sum().Sign() == p[0].Sign() {
			return 0
		}
		return 1
	}
	return p.reversed().shifted().signChanges()
}

// sum is p(1).
func (p poly) sum() *big.Int {
	s := new(big.Int)
	for _, v := range p {
		s.Add(s, v)
	}
	return s
}
