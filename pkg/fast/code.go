package fast

import (
	"math"
	"slices"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// A code is a list as steps over the memory of a worker.
type code struct { // it never changes once it is made
	steps   []step // and one more, at which a machine stops
	again   []step // those that follow the sought axis, if there is one, likewise
	native  *machine
	in      []int32  // where the block of each axis starts, or -1
	out     []int32  // and that of each wanted cell
	numbers []filled // blocks of one number, which hold as long as the code runs
	room    int      // how much memory it takes
	kept    []int32  // the blocks of the other steps that those again read
}

type filled struct {
	at     int32
	number float64
}

// A coder gives the values of a list their places: one that is needed no more leaves its
// place to the next, so that little memory is in use at once.
type coder struct {
	code
	list *flat.List
	ops  []operation // by value
	at   []int32     // by value, its place, or -1
	last []int32     // by value, the last that needs it
	free []int32
}

// never is the last use of what is needed until the end.
const never = int32(1<<31 - 1)

// newCode is the code of a list, in which what follows the sought axis, if there is one,
// comes last and may be carried out again and again.
func newCode(l *flat.List, sought int) *code {
	c := &coder{code: code{native: native}, list: l, at: make([]int32, len(l.Values)), last: make([]int32, len(l.Values))}
	for i := range c.at {
		c.at[i] = -1
	}
	follows := following(l, sought)
	c.ops = fused(l, follows)
	c.needs(follows)
	for _, i := range l.In {
		if i >= 0 {
			c.at[i] = c.place()
		}
		c.in = append(c.in, at(c.at, i))
	}
	c.steps = c.made(follows, false)
	c.again = c.made(follows, true)
	for i, last := range c.last {
		if last == never && !follows[i] && l.Values[i].Code != flat.Number {
			c.kept = append(c.kept, c.at[i])
		}
	}
	for _, o := range l.Out {
		c.out = append(c.out, c.block(o))
	}
	return &c.code
}

// made are the steps of the values that follow the sought axis, or of those that do not.
func (c *coder) made(follows []bool, so bool) (steps []step) {
	for i := range c.ops {
		if c.ops[i].code >= 0 && follows[i] == so {
			steps = append(steps, c.value(int32(i)))
		}
	}
	return append(steps, c.kernel(step{}, flat.Number, 0))
}

// following marks the values that follow an axis.
func following(l *flat.List, axis int) []bool {
	out := make([]bool, len(l.Values))
	for i, v := range l.Values {
		out[i] = v.Code == flat.Axis && int(v.Args[0]) == axis
		for _, a := range v.Args[:v.Takes()] {
			out[i] = out[i] || out[a]
		}
	}
	return out
}

// needs finds the last value that needs each. The sought axis, what those that follow it
// read of other values and what is wanted is needed until the end.
func (c *coder) needs(follows []bool) {
	for i, op := range c.ops {
		for _, a := range op.args {
			switch {
			case follows[i] && !follows[a]:
				c.last[a] = never
			case c.last[a] != never:
				c.last[a] = int32(i)
			}
		}
	}
	for i, v := range c.list.Values {
		if v.Code == flat.Axis && follows[i] {
			c.last[i] = never
		}
	}
	for _, o := range c.list.Out {
		c.last[o] = never
	}
}

func at(all []int32, i int32) int32 {
	if i < 0 {
		return -1
	}
	return all[i]
}

// place is room for a block.
func (c *coder) place() int32 {
	if n := len(c.free); n > 0 {
		at := c.free[n-1]
		c.free = c.free[:n-1]
		return at
	}
	c.room += block
	return int32(c.room - block)
}

// block is where a value's block is; a number has one made for it, once.
func (c *coder) block(i int32) int32 {
	if c.at[i] < 0 {
		c.room += block // a place of its own: it is filled before any step runs
		c.at[i] = int32(c.room - block)
		c.numbers = append(c.numbers, filled{c.at[i], c.list.Values[i].Number})
	}
	return c.at[i]
}

// value is the step that makes a value.
func (c *coder) value(i int32) step {
	op := c.ops[i]
	s := c.step(op)
	for k, a := range op.args {
		if c.last[a] == i && c.list.Values[a].Code != flat.Number && !slices.Contains(op.args[:k], a) {
			c.free = append(c.free, c.at[a])
		}
	}
	s.to = c.place()
	c.at[i] = s.to
	return s
}

func (c *coder) step(op operation) step {
	f, args := forms[op.code], op.args
	if len(args) == 2 {
		if x, ok := c.number(args[1]); ok && f.second != nil {
			return c.kernel(step{run: f.second, x: c.block(args[0]), number: x}, op.code, 2)
		}
		if x, ok := c.number(args[0]); ok && f.first != nil {
			return c.kernel(step{run: f.first, x: c.block(args[1]), number: x}, op.code, 1)
		}
	}
	s := step{run: f.both}
	for k, to := range []*int32{&s.x, &s.y, &s.z}[:len(args)] {
		*to = c.block(args[k])
	}
	if s.run == nil {
		s.run, s.rule, s.takes = byRule, formula.Table[op.code].Float, int8(len(args))
	}
	return c.kernel(s, op.code, 0)
}

// kernel gives a step the machine's code for its operator in a form, or what stops where
// there is none, as at the end.
func (c *coder) kernel(s step, code formula.Code, form int) step {
	if c.native == nil {
		return s
	}
	s.kernel = c.native.kernels[code][form]
	if s.kernel == 0 {
		s.kernel = c.native.stop
	}
	return s
}

// number is the number that a value is; what is no number is none either.
func (c *coder) number(i int32) (float64, bool) {
	v := c.list.Values[i]
	return v.Number, v.Code == flat.Number && !math.IsNaN(v.Number)
}

// run carries steps out over n trials, at most a block.
func (c *code) run(steps []step, m []float64, n int) {
	for i := 0; i < len(steps)-1; i++ {
		if c.native != nil {
			i += carryOut(&m[0], n, &steps[i])
		}
		s := &steps[i]
		if s.run == nil {
			return
		}
		s.run(m, n, s)
	}
}

// fill writes the numbers that blocks are made of.
func (c *code) fill(m []float64) {
	for _, f := range c.numbers {
		to := m[f.at:][:block]
		for i := range to {
			to[i] = f.number
		}
	}
}
