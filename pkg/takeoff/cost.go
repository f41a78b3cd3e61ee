package takeoff

import (
	"cmp"
	"math/bits"
)

// A cost is what plans are compared by, in this order.
type cost struct {
	price, sticks, length int64
}

func (c cost) plus(d cost) cost {
	return cost{c.price + d.price, c.sticks + d.sticks, c.length + d.length}
}

func (c cost) times(n int64) cost {
	return cost{n * c.price, n * c.sticks, n * c.length}
}

func (c cost) minus(d cost) cost {
	return cost{c.price - d.price, c.sticks - d.sticks, c.length - d.length}
}

func (c cost) compare(d cost) int {
	return cmp.Or(cmp.Compare(c.price, d.price), cmp.Compare(c.sticks, d.sticks), cmp.Compare(c.length, d.length))
}

func (c cost) less(d cost) bool { return c.compare(d) < 0 }

// ceilDiv is a/b rounded up, for a from 0 and b from 1.
func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }

// huge stands for any bound too large to matter.
const huge = 1 << 61

// ceilMulDiv is a·b/c rounded up, or huge if that is less.
func ceilMulDiv(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return huge
	}
	q, r := bits.Div64(hi, lo, uint64(c))
	if r > 0 {
		q++
	}
	return int64(min(q, huge))
}

// above reports a/b > c/d, for numbers from 0.
func above(a, b, c, d int64) bool {
	h, l := bits.Mul64(uint64(a), uint64(d))
	hh, ll := bits.Mul64(uint64(c), uint64(b))
	return h > hh || h == hh && l > ll
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
