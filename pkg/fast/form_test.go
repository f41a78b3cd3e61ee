package fast

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// edges are values at which rounding, comparing and choosing turn.
var edges = []float64{
	0, math.Copysign(0, -1), 1, -1, 0.005, -0.005, 0.0049999999, 0.00499999999, 0.004999999999, 2.5, -2.5, 3 - 1e-10, 3 + 1e-10, 3 + 1e-9, 1e-9, 2e-9, -1e-9,
	123456.785, -123456.785, 1e-300, 7e5, 1e12, 1e17, math.Inf(1), math.Inf(-1), math.NaN(),
}

// Every operator that a list can hold runs over blocks as by its rule in the table, with
// values in blocks and with any of them a number: portably, and as this machine does it.
func TestFormsEqualTheTable(t *testing.T) {
	quick := native
	defer func() { native = quick }()
	for name, m := range machines() {
		native = m
		t.Run(name, func(t *testing.T) {
			seen := 0
			for _, op := range formula.Table {
				if op.Float == nil {
					continue
				}
				seen++
				takes := flat.Value{Code: op.Code}.Takes()
				for mask := range 1 << takes { // which values are numbers
					for _, x := range edges {
						compareForm(t, op, takes, mask, x)
					}
				}
			}
			require.Greater(t, seen, len(forms)-fusedForms)
		})
	}
}

// fusedForms are those of pairs, which are no operators of the table.
const fusedForms = 4

// Each pair that is fused comes to what its two operators come to one after the other,
// with values in blocks and with numbers: portably, and as
// this machine does it.
func TestPairsEqualTheirOperators(t *testing.T) {
	quick := native
	defer func() { native = quick }()
	codes := map[formula.Code]bool{}
	for name, m := range machines() {
		native = m
		for p, code := range pairs {
			codes[code] = true
			for mask := range 1 << 3 {
				for _, x := range edges {
					comparePair(t, name, p, mask, x)
				}
			}
		}
	}
	require.Len(t, codes, fusedForms)
}

// comparePair runs a pair over a block. The third value is that of the second operator
// where it takes two; those of the mask are numbers.
func comparePair(t *testing.T, name string, p pair, mask int, number float64) {
	takes := 2 + flat.Value{Code: p.second}.Takes() - 1
	var l flat.List
	for k := range 3 {
		if mask>>k&1 == 1 {
			l.Values, l.In = append(l.Values, flat.Value{Code: flat.Number, Number: number}), append(l.In, -1)
		} else {
			l.Values, l.In = append(l.Values, flat.Value{Code: flat.Axis, Args: [3]int32{int32(k)}}), append(l.In, int32(k))
		}
	}
	second := flat.Value{Code: p.second}
	second.Args[p.place] = 3
	if takes == 3 {
		second.Args[1-p.place] = 2
	}
	l.Values, l.Out = append(l.Values, flat.Value{Code: p.first, Args: [3]int32{0, 1}}, second), []int32{4}
	c := newCode(&l, -1)
	require.Len(t, c.steps, map[bool]int{true: 2, false: 3}[p.second == formula.Cents || mask == 0], "one step, and the last")
	m := make([]float64, c.room)
	c.fill(m)
	for k, at := range c.in {
		for j := range block {
			if at >= 0 {
				m[int(at)+j] = lane(j, k)
			}
		}
	}
	c.run(c.steps, m, block)
	for j := range block {
		var args [3]float64
		for k := range args {
			if args[k] = lane(j, k); mask>>k&1 == 1 {
				args[k] = number
			}
		}
		first := formula.Table[p.first].Float(args[:2])
		rest := []float64{first}
		if takes == 3 {
			rest = slices.Insert([]float64{args[2]}, p.place, first)
		}
		w := formula.Table[p.second].Float(rest)
		if got := m[int(c.out[0])+j]; got != w && !(math.IsNaN(got) && math.IsNaN(w)) {
			t.Fatalf("%s: %v of %v with numbers %b: %v, not %v", name, p, args, mask, got, w)
		}
	}
}

// Machines that round to cents without a division come to the same last bit, for amounts
// of every size.
func TestCentsOfEverySize(t *testing.T) {
	quick := native
	defer func() { native = quick }()
	r := rand.New(rand.NewPCG(1, 2))
	for name, m := range machines() {
		native = m
		c := newCode(&flat.List{Values: []flat.Value{{Code: flat.Axis}, {Code: formula.Cents}}, In: []int32{0}, Out: []int32{1}}, -1)
		memory, x := make([]float64, c.room), make([]float64, block)
		for range 1000 {
			for i := range x {
				x[i] = (r.Float64() - 0.5) * math.Pow(10, 24*r.Float64()-4)
			}
			copy(memory[c.in[0]:], x)
			c.run(c.steps, memory, block)
			for i, got := range memory[c.out[0]:][:block] {
				if want := formula.Cents64(x[i]); got != want {
					t.Fatalf("%s: cents of %v are %v, not %v", name, x[i], got, want)
				}
			}
		}
	}
}

// Numbers are seen at a glance to lie between ends only where all of them do.
func TestSurelyBetweenEnds(t *testing.T) {
	quick := native
	defer func() { native = quick }()
	for name, m := range machines() {
		native = m
		inside := []float64{-1, 0, 2, math.Copysign(0, -1), 1.5, 2, -1, 1, 0.5, 2, 2}
		n := surely(inside, -1, 2)
		require.Equal(t, map[bool]int{true: 8}[m != nil], n, name)
		for at := range n {
			for _, x := range []float64{math.Nextafter(-1, -2), math.Nextafter(2, 3), math.NaN(), math.Inf(1), math.Inf(-1)} {
				some := slices.Clone(inside)
				some[at] = x
				require.Zero(t, surely(some, -1, 2), "%s: %v at %d", name, x, at)
			}
		}
		require.Zero(t, surely(inside[:3], -1, 2))
	}
}

// compareForm runs an operator over a block, the numbers among its values being one.
func compareForm(t *testing.T, op *formula.Op, takes, mask int, number float64) {
	var l flat.List
	v := flat.Value{Code: op.Code}
	for k := range takes {
		v.Args[k] = int32(k)
		if mask>>k&1 == 1 {
			l.Values, l.In = append(l.Values, flat.Value{Code: flat.Number, Number: number}), append(l.In, -1)
		} else {
			l.Values, l.In = append(l.Values, flat.Value{Code: flat.Axis, Args: [3]int32{int32(k)}}), append(l.In, int32(k))
		}
	}
	l.Values, l.Out = append(l.Values, v), []int32{int32(takes)}
	c := newCode(&l, -1)
	for _, n := range []int{1, block - 3, block} {
		m := make([]float64, c.room)
		c.fill(m)
		for k, at := range c.in {
			for j := range n {
				if at >= 0 {
					m[int(at)+j] = lane(j, k)
				}
			}
		}
		c.run(c.steps, m, n)
		for j := range n {
			var args [3]float64
			for k := range takes {
				if args[k] = lane(j, k); mask>>k&1 == 1 {
					args[k] = number
				}
			}
			got, want := m[int(c.out[0])+j], op.Float(args[:takes])
			if got != want && !(math.IsNaN(got) && math.IsNaN(want)) {
				t.Fatalf("%s of %v with numbers %b: %v, not %v", op.Name, args[:takes], mask, got, want)
			}
		}
	}
}

// lane is the value of a trial: each edge with several others.
func lane(trial, value int) float64 {
	steps := []int{1, 3, 7}
	return edges[(trial*steps[value]+trial/len(edges)*(value+1))%len(edges)]
}
