package cashflow

import "math/big"

// rateBits is the width to which a root is narrowed, relative to its distance
// from 0 and from 1: 47 bits finer than rateDigits, so that the middle rounds
// as the root itself does but for one root in some hundred trillions.
const rateBits = 160

// bracket holds one simple root of p between lo/2^exp and hi/2^exp.
type bracket struct {
	p      poly
	lo, hi *big.Int
	exp    uint
	atLo   dyadic // near p(lo), its sign exact
	atHi   dyadic
}

// narrow returns the root in a cell that holds exactly one, simple and not on
// an edge. It is Abbott's quadratic interval refinement: guess by a straight
// line in which of 2^e parts the root lies, prove it by the signs at the part's
// ends, and on success square the number of parts, else take its root. With
// two parts it is plain bisection, which can't fail.
func (p poly) narrow(c dyadic) dyadic {
	b := bracket{p: p, lo: c.num, hi: new(big.Int).Add(c.num, big.NewInt(1)), exp: c.exp}
	b.atLo, b.atHi = p.at(dyadic{b.lo, b.exp}), p.at(dyadic{b.hi, b.exp})
	for e := uint(1); ; {
		missing := b.missingBits()
		if missing <= 0 {
			break
		}
		e = min(e, uint(missing))
		if b.split(e) {
			e *= 2
		} else {
			e = max(1, e/2)
		}
	}
	return dyadic{new(big.Int).Add(b.lo, b.hi), b.exp + 1}
}

// missingBits is how much narrower the bracket must become.
func (b *bracket) missingBits() int {
	width := new(big.Int).Sub(b.hi, b.lo)
	if width.Sign() == 0 {
		return 0
	}
	above := new(big.Int).Lsh(big.NewInt(1), b.exp)
	above.Sub(above, b.hi)
	near := min(b.lo.BitLen(), above.BitLen())
	if near == 0 {
		return 1 // still touching 0 or 1: the distance isn't known
	}
	return width.BitLen() + rateBits - near
}

// split narrows the bracket to the guessed one of 2^e parts, if the root is
// there, and else to what the signs allow.
func (b *bracket) split(e uint) bool {
	part := new(big.Int).Sub(b.hi, b.lo) // in the units of the finer grid
	b.lo, b.hi, b.exp = new(big.Int).Lsh(b.lo, e), new(big.Int).Lsh(b.hi, e), b.exp+e
	guess := new(big.Int).Mul(part, guessPart(b.atLo, b.atHi, e))
	guess.Add(guess, b.lo)
	switch b.cut(guess) {
	case 0:
		return true
	case 1: // the root is above the guess
		next := new(big.Int).Add(guess, part)
		return next.Cmp(b.hi) >= 0 || b.cut(next) <= 0
	default:
		next := new(big.Int).Sub(guess, part)
		return next.Cmp(b.lo) <= 0 || b.cut(next) >= 0
	}
}

// cut moves an end of the bracket to the point at, and returns the side of it
// on which the root is: 1 above, -1 below, 0 exactly there.
func (b *bracket) cut(at *big.Int) int {
	v := b.p.at(dyadic{at, b.exp})
	switch v.num.Sign() {
	case 0:
		b.lo, b.hi = at, at
		return 0
	case b.atLo.num.Sign():
		b.lo, b.atLo = at, v
		return 1
	default:
		b.hi, b.atHi = at, v
		return -1
	}
}

// guessPart returns the edge among 1 … 2^e - 1 nearest to where a straight line
// between the values crosses zero.
func guessPart(lo, hi dyadic, e uint) *big.Int {
	a, z := new(big.Int).Abs(lo.num), new(big.Int).Abs(hi.num)
	exp := max(lo.exp, hi.exp)
	a.Lsh(a, exp-lo.exp)
	z.Lsh(z, exp-hi.exp)
	z.Add(z, a)
	a.Lsh(a, e+1)
	a.Add(a, z)
	a.Quo(a, z.Lsh(z, 1)) // rounded 2^e a / (a + z)
	last := new(big.Int).Lsh(big.NewInt(1), e)
	last.Sub(last, big.NewInt(1))
	switch {
	case a.Sign() == 0:
		return big.NewInt(1)
	case a.Cmp(last) > 0:
		return last
	}
	return a
}
