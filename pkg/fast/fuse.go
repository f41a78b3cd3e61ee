package fast

import (
	"slices"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// An operation is what one step carries out on some values: an operator, or a pair of them.
type operation struct {
	code formula.Code // below 0 where there is nothing to carry out
	args []int32
}

// Codes of pairs that are carried out in one step, so that what the first comes to is
// neither written nor read again. The results are those of two steps to the last bit.
const (
	mulCents formula.Code = 1<<16 + iota // cents(x * y)
	addAdd                               // (x + y) + z
	subAdd                               // (x - y) + z
	addSub                               // (x + y) - z
)

// A pair is an operator that takes what another comes to as the argument at a place.
type pair struct {
	second, first formula.Code
	place         int
}

// pairs are those that deals are full of.
var pairs = map[pair]formula.Code{
	{formula.Cents, formula.Mul, 0}: mulCents,
	{formula.Add, formula.Add, 0}:   addAdd,
	{formula.Add, formula.Add, 1}:   addAdd,
	{formula.Add, formula.Sub, 0}:   subAdd,
	{formula.Add, formula.Sub, 1}:   subAdd,
	{formula.Sub, formula.Add, 0}:   addSub,
}

// fused are the operations of a list by value, those whose result one other alone takes
// as a part of that one where the pair has a code. What follows the sought axis is not
// fused with what does not.
func fused(l *flat.List, follows []bool) []operation {
	ops, uses := make([]operation, len(l.Values)), make([]int, len(l.Values))
	for i, v := range l.Values {
		ops[i] = operation{v.Code, l.Values[i].Args[:v.Takes()]}
		for _, a := range ops[i].args {
			uses[a]++
		}
	}
	for _, o := range l.Out {
		uses[o]++
	}
	for i := range ops {
		for k, a := range ops[i].args {
			first := &ops[a]
			code, known := pairs[pair{ops[i].code, first.code, k}]
			if !known || uses[a] > 1 || follows[i] != follows[a] {
				continue
			}
			args := slices.Concat(first.args, ops[i].args[:k], ops[i].args[k+1:])
			isNumber := func(v int32) bool { return l.Values[v].Code == flat.Number }
			if code != mulCents && slices.ContainsFunc(args, isNumber) {
				continue // a number takes less where it stays one
			}
			ops[i], *first = operation{code, args}, operation{code: flat.Number}
			break
		}
	}
	return ops
}

func centsOfMul(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = formula.Cents64(float64(x[i] * y[i]))
	}
}

func centsOfMulNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = formula.Cents64(float64(x[i] * k))
	}
}

func addThree(m []float64, n int, s *step) {
	to, x, y, z := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n], m[s.z:][:n]
	for i := range to {
		to[i] = x[i] + y[i] + z[i]
	}
}

func subThenAdd(m []float64, n int, s *step) {
	to, x, y, z := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n], m[s.z:][:n]
	for i := range to {
		to[i] = x[i] - y[i] + z[i]
	}
}

func addThenSub(m []float64, n int, s *step) {
	to, x, y, z := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n], m[s.z:][:n]
	for i := range to {
		to[i] = x[i] + y[i] - z[i]
	}
}
