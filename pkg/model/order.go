package model

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/formula"
)

// A need is what one cell reads of another.
type need struct {
	cell  int
	prior bool // only earlier months
	whole bool // all months at once
}

func collect(e *Expr, how need, out *[]need) {
	if e.Op == nil {
		if e.Cell >= 0 {
			how.cell = e.Cell
			*out = append(*out, how)
		}
		return
	}
	switch e.Op.Code {
	case formula.Prior:
		how.prior = true
	case formula.Sum, formula.Lowest, formula.FirstMonth, formula.At:
		how.whole, how.prior = true, false
	}
	for _, a := range e.Args {
		collect(a, how, out)
	}
}

// order finds the steps. Cells in a circle must all be monthly and at least one
// of them must look only at the month before.
func (m *Model) order() error {
	o := &orderer{model: m, needs: make([][]need, len(m.Cells)), state: make([]state, len(m.Cells))}
	var all slab[need]
	var some []need
	for i, c := range m.Cells {
		some = some[:0]
		collect(c.Expr, need{}, &some)
		c.needs = all.take(len(some))
		copy(c.needs, some)
		o.needs[i] = c.needs
	}
	m.Steps = make([]Step, 0, len(m.Cells))
	o.visit(m.Horizon) // first, for monthly cells need the number of months
	for i := range m.Cells {
		o.visit(i)
	}
	return errors.Join(o.circles...)
}

type state struct {
	number, low int // Tarjan's numbering; 0 means not seen
	onStack     bool
}

type orderer struct {
	model  *Model
	needs  [][]need
	state  []state
	count  int
	stack  []int
	groups slab[int]

	circles []error
}

func (o *orderer) visit(i int) {
	if o.state[i].number > 0 {
		return
	}
	o.count++
	o.state[i] = state{o.count, o.count, true}
	o.stack = append(o.stack, i)
	for _, n := range o.needs[i] {
		if o.state[n.cell].number == 0 {
			o.visit(n.cell)
			o.state[i].low = min(o.state[i].low, o.state[n.cell].low)
		} else if o.state[n.cell].onStack {
			o.state[i].low = min(o.state[i].low, o.state[n.cell].number)
		}
	}
	if o.state[i].low < o.state[i].number {
		return
	}
	at := len(o.stack) - 1
	for o.stack[at] != i {
		at--
	}
	group := o.groups.take(len(o.stack) - at)
	copy(group, o.stack[at:])
	o.stack = o.stack[:at]
	for _, c := range group {
		o.state[c].onStack = false
	}
	o.step(group)
}

func (o *orderer) step(group []int) {
	self := slices.ContainsFunc(o.needs[group[0]], func(n need) bool { return n.cell == group[0] })
	if len(group) == 1 && !self {
		o.model.Steps = append(o.model.Steps, Step{Cells: group})
		return
	}
	in := map[int]bool{}
	for _, c := range group {
		in[c] = true
	}
	slices.Sort(group)
	sorted, done := []int{}, map[int]bool{}
	for len(sorted) < len(group) {
		before := len(sorted)
		for _, c := range group {
			if !done[c] && o.ready(c, in, done) {
				done[c] = true
				sorted = append(sorted, c)
			}
		}
		if len(sorted) == before {
			o.circle(group, done)
			return
		}
	}
	o.model.Steps = append(o.model.Steps, Step{Cells: sorted, Block: true})
}

func (o *orderer) ready(c int, in, done map[int]bool) bool {
	if !o.model.Cells[c].Line.Monthly {
		return false
	}
	for _, n := range o.needs[c] {
		if in[n.cell] && (n.whole || !n.prior && !done[n.cell]) {
			return false
		}
	}
	return true
}

// A CircleError names cells that each need the other.
type CircleError struct{ Cells []*Cell }

func (e *CircleError) Error() string {
	names := make([]string, len(e.Cells))
	for i, c := range e.Cells {
		names[i] = c.Name()
	}
	return fmt.Sprintf("these need each other: %s", strings.Join(names, ", "))
}

func (o *orderer) circle(group []int, done map[int]bool) {
	e := &CircleError{}
	for _, c := range group {
		if !done[c] {
			e.Cells = append(e.Cells, o.model.Cells[c])
		}
	}
	o.circles = append(o.circles, e)
}
