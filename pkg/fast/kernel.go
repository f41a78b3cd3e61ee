package fast

import (
	"math"

	"ledgerboard/pkg/formula"
)

// block is how many trials are worked out side by side: few enough that what a deal
// keeps at once lies in the cache, many enough that finding the next operation costs
// next to nothing.
const block = 256

// A step carries one operator out over a block. The fields are places in a worker's
// memory, where each value has room for a block.
type step struct {
	kernel      uintptr // the machine code that does so, or that stops where there is none
	run         func(m []float64, n int, s *step)
	to, x, y, z int32
	number      float64 // for steps that take one
	rule        func([]float64) float64
	takes       int8
}

// A form is how an operator runs over blocks: both values in blocks, or the first or the
// second a number. What is missing is made up for by a block of that number.
type form struct {
	both, first, second func(m []float64, n int, s *step)
}

// forms has the operators that run often. The others run by their rule in the table.
var forms = map[formula.Code]form{
	formula.Add:       {both: add, first: addNumber, second: addNumber},
	formula.Sub:       {both: sub, first: subFrom, second: subNumber},
	formula.Mul:       {both: mul, first: mulNumber, second: mulNumber},
	formula.Div:       {both: div, first: divNumber, second: divBy},
	formula.Min:       {both: least, first: leastNumber, second: leastNumber},
	formula.Max:       {both: most, first: mostNumber, second: mostNumber},
	formula.Less:      {both: less, second: lessNumber},
	formula.LessEqual: {both: lessEqual, second: lessEqualNumber},
	formula.More:      {both: more, second: moreNumber},
	formula.MoreEqual: {both: moreEqual, second: moreEqualNumber},
	formula.Equal:     {both: equal, second: equalNumber},
	formula.NotEqual:  {both: notEqual, second: notEqualNumber},
	formula.Negative:  {both: negative},
	formula.Not:       {both: not},
	formula.And:       {both: and},
	formula.Or:        {both: or},
	formula.If:        {both: choose},
	formula.Cents:     {both: cents},
	formula.Ceil:      {both: ceil},
	formula.Floor:     {both: floor},
	mulCents:          {both: centsOfMul, first: centsOfMulNumber, second: centsOfMulNumber},
	addAdd:            {both: addThree},
	subAdd:            {both: subThenAdd},
	addSub:            {both: addThenSub},
}

// A machine has code of its own for some of the portable forms, which gives the same
// results to the last bit.
type machine struct {
	kernels map[formula.Code][3]uintptr // for both values in blocks, for the first a number, for the second one
	stop    uintptr
}

// native is this machine, nil where it has none.
var native = quickest()

// byRule runs an operator by its rule in the table.
func byRule(m []float64, n int, s *step) {
	var values [3]float64
	to := m[s.to:][:n]
	for i := range to {
		values[0], values[1], values[2] = m[int(s.x)+i], m[int(s.y)+i], m[int(s.z)+i]
		to[i] = s.rule(values[:s.takes])
	}
}

func negative(m []float64, n int, s *step) {
	to, x := m[s.to:][:n], m[s.x:][:n]
	for i := range to {
		to[i] = -x[i]
	}
}

func cents(m []float64, n int, s *step) {
	to, x := m[s.to:][:n], m[s.x:][:n]
	for i := range to {
		to[i] = formula.Cents64(x[i])
	}
}

func ceil(m []float64, n int, s *step) {
	to, x := m[s.to:][:n], m[s.x:][:n]
	for i := range to {
		to[i] = formula.Ceil64(x[i])
	}
}

func floor(m []float64, n int, s *step) {
	to, x := m[s.to:][:n], m[s.x:][:n]
	for i := range to {
		to[i] = formula.Floor64(x[i])
	}
}

// choose is written so that it takes no branch, which could not be foreseen.
func choose(m []float64, n int, s *step) {
	to, x, y, z := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n], m[s.z:][:n]
	for i := range to {
		bits, other := math.Float64bits(y[i]), math.Float64bits(z[i])
		if x[i] == 0 {
			bits = other
		}
		to[i] = math.Float64frombits(bits)
	}
}
