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
	way   ref
	prior bool // only earlier months
	whole bool // all months at once
}

// collect adds what an expression needs to out.
func collect(e *Expr, how need, out []need) []need {
	if e.Op == nil {
		if how.way = e.way; !e.IsNumber() {
			out = append(out, how)
		}
		return out
	}
	switch e.Op.Code {
	case formula.Prior:
		how.prior = true
	case formula.Sum, formula.Lowest, formula.FirstMonth, formula.At:
		how.whole, how.prior = true, false
	}
	for _, a := range e.Args {
		out = collect(a, how, out)
	}
	return out
}

// order finds the steps. Cells in a circle must all be monthly and at least one
// of them must look only at the month before.
func (m *Model) order() error {
	n := len(m.Cells)
	m.Steps = make([]Step, 0, n)
	o := &orderer{model: m, state: make([]state, n), order: make([]int, 0, n)}
	o.visit(m.Horizon) // first, for monthly cells need the number of months
	for i := range m.Cells {
		o.visit(i)
	}
	return errors.Join(o.circles...)
}

type state struct {
	number, low int32 // Tarjan's numbering; 0 means not seen
	onStack     bool
}

type orderer struct {
	model *Model
	state []state
	count int32
	stack []int
	order []int // the cells of all steps

	circles []error
}

func (o *orderer) visit(i int) {
	if o.state[i].number > 0 {
		return
	}
	o.count++
	o.state[i] = state{o.count, o.count, true}
	o.stack = append(o.stack, i)
	c := o.model.Cells[i]
	for _, n := range c.needs() {
		to := n.way.from(c.Member)
		if o.state[to].number == 0 {
			o.visit(to)
			o.state[i].low = min(o.state[i].low, o.state[to].low)
		} else if o.state[to].onStack {
			o.state[i].low = min(o.state[i].low, o.state[to].number)
		}
	}
	if o.state[i].low < o.state[i].number {
		return
	}
	at := len(o.stack) - 1
	for o.stack[at] != i {
		at--
	}
	first := len(o.order)
	o.order = append(o.order, o.stack[at:]...)
	group := o.order[first:len(o.order):len(o.order)]
	o.stack = o.stack[:at]
	for _, c := range group {
		o.state[c].onStack = false
	}
	o.step(group)
}

func (o *orderer) step(group []int) {
	if len(group) == 1 && !o.model.reads(group[0], group[0]) {
		o.model.Steps = append(o.model.Steps, Step{group})
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
	o.model.Steps = append(o.model.Steps, Step{sorted})
}

func (o *orderer) ready(c int, in, done map[int]bool) bool {
	cell := o.model.Cells[c]
	if !cell.Line.Monthly {
		return false
	}
	for _, n := range cell.needs() {
		if to := n.way.from(cell.Member); in[to] && (n.whole || !n.prior && !done[to]) {
			return false
		}
	}
	return true
}

// reads reports whether a cell needs another.
func (m *Model) reads(cell, other int) bool {
	c := m.Cells[cell]
	return slices.ContainsFunc(c.needs(), func(n need) bool { return n.way.from(c.Member) == other })
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
