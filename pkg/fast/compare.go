package fast

import (
	"math"

	"ledgerboard/pkg/formula"
)

// Steps that compare. What lies within near of each other counts as equal, as in the
// table.
const near = formula.Near01

// flag is 1 for what holds and 0 for what does not, without a branch.
func flag(holds bool) float64 {
	var bits uint64
	if holds {
		bits = one
	}
	return math.Float64frombits(bits)
}

const one = 0x3FF0000000000000 // the bits of 1

func less(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(x[i] < y[i]-near)
	}
}

func lessNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = flag(x[i] < k-near)
	}
}

func lessEqual(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(x[i] <= y[i]+near)
	}
}

func lessEqualNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = flag(x[i] <= k+near)
	}
}

func more(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(x[i] > y[i]+near)
	}
}

func moreNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = flag(x[i] > k+near)
	}
}

func moreEqual(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(x[i] >= y[i]-near)
	}
}

func moreEqualNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = flag(x[i] >= k-near)
	}
}

func equal(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(math.Abs(x[i]-y[i]) <= near)
	}
}

func equalNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = flag(math.Abs(x[i]-k) <= near)
	}
}

func notEqual(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(math.Abs(x[i]-y[i]) > near)
	}
}

func notEqualNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = flag(math.Abs(x[i]-k) > near)
	}
}

func and(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(x[i] != 0 && y[i] != 0)
	}
}

func or(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = flag(x[i] != 0 || y[i] != 0)
	}
}

func not(m []float64, n int, s *step) {
	to, x := m[s.to:][:n], m[s.x:][:n]
	for i := range to {
		to[i] = flag(x[i] == 0)
	}
}
