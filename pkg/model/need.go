package model

import "ledgerboard/pkg/formula"

// A need is what one cell reads of another, or of those that an operator looks at.
type need struct {
	way   ref
	over  *Expr // the operator, or nil
	prior bool  // only earlier months
	whole bool  // all months at once
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
	for i := range e.others {
		r := &e.others[i].rule
		r.needs = collect(r.expr, how, nil)
	}
	if e.others != nil {
		out = append(out, need{over: e})
	}
	for _, a := range e.Args {
		out = collect(a, how, out)
	}
	return out
}

// needs yields the cells that a cell reads, with how it does.
func (m *Model) needs(cell int, yield func(to int, how need) bool) {
	if c := m.Cells[cell]; c.rule != nil {
		c.rule.each(c.Member, yield)
	}
}

// each yields what a rule needs of a member; it is false if that was broken off.
func (r *rule) each(x *Member, yield func(to int, how need) bool) bool {
	for _, n := range r.needs {
		if n.over == nil {
			if !yield(n.way.from(x), n) {
				return false
			}
			continue
		}
		for m := range n.over.Over(x) {
			if !n.over.other(m).each(m, yield) {
				return false
			}
		}
	}
	return true
}

// reads reports whether a cell needs another for which something holds.
func (m *Model) reads(cell int, holds func(to int) bool) (found bool) {
	m.needs(cell, func(to int, _ need) bool {
		found = holds(to)
		return !found
	})
	return found
}
