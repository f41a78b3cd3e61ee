package model

import (
	"slices"

	"ledgerboard/pkg/formula"
)

// Uncut is the model without rounding to the cent: a copy, for one question to a reader,
// whose cells have the same places. What comes to the same but for cents, such as the
// interest of six months and a least interest of six, is the same in it. Cells that are
// given keep what they are given.
func (m *Model) Uncut() *Model {
	own := *m
	own.Cells = slices.Clone(m.Cells)
	known := map[*Expr]*Expr{nil: nil} // members of a shape share theirs
	for i, c := range m.Cells {
		if x := uncut(c.Expr, known); x != c.Expr {
			cell := *c // what it needs stays
			cell.Expr = x
			own.Cells[i] = &cell
		}
	}
	return &own
}

// uncut is an expression without rounding to the cent, itself where it has none.
func uncut(x *Expr, known map[*Expr]*Expr) *Expr {
	if out, is := known[x]; is {
		return out
	}
	out := x
	switch {
	case x.Op == nil:
	case x.Op.Code == formula.Cents:
		out = uncut(x.Args[0], known)
	default:
		e := *x
		e.Args, e.others = slices.Clone(x.Args), slices.Clone(x.others)
		changed := false
		for i, a := range x.Args {
			e.Args[i] = uncut(a, known)
			changed = changed || e.Args[i] != a
		}
		for i := range x.others {
			r := &e.others[i].rule
			r.expr = uncut(r.expr, known)
			changed = changed || r.expr != x.others[i].rule.expr
		}
		if changed {
			out = &e
		}
	}
	known[x] = out
	return out
}
