package cashflow

import "math/big"

// zeroAt reports whether x is a root.
func (p poly) zeroAt(x dyadic) bool { return p.at(x).num.Sign() == 0 }

// at returns the value at x, from 0 to 1, near enough that its sign is exact.
// It first works with a few more bits than x has and doubles them while the
// sign is in doubt, at last to the number with which the value is exact.
func (p poly) at(x dyadic) dyadic {
	exact := x.exp * uint(p.degree())
	doubt := big.NewInt(int64(len(p)))
	for bits := min(exact, x.exp+64); ; bits = min(exact, 2*bits) {
		v := p.horner(x, bits)
		if bits == exact || v.CmpAbs(doubt) > 0 {
			return dyadic{v, bits}
		}
	}
}

// horner returns 2^bits p(x). Each step rounds down by less than 1, and as x is
// at most 1 no later step makes more of it: the error is below the degree.
func (p poly) horner(x dyadic, bits uint) *big.Int {
	v, t := new(big.Int), new(big.Int)
	for k := p.degree(); k >= 0; k-- {
		t.Mul(v, x.num)
		v.Rsh(t, x.exp)
		t.Lsh(p[k], bits)
		v.Add(v, t)
	}
	return v
}
