package model

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
)

// Summary is the same deal without the members of still sets, in whose place the
// totals over them stand as numbers: value returns that of a cell of m. A search that
// moves only inputs of what is left has the same figures from it, and thousands of
// lines less to work out. A deal without such members is its own summary.
func (m *Model) Summary(value func(*Cell) decimal.Decimal) (*Model, error) {
	if !m.stirs() {
		return m, nil
	}
	s, err := Bind(m.Doc, m.Root.without(m.Doc, nil))
	if err != nil {
		return nil, err
	}
	for _, c := range s.Cells {
		if c.Line.Formula() != nil && c.Given == nil && m.Doc.addsStill(c.Line.Formula()) {
			old := m.Find(m.Root, c.Line.Name) // only lines of the deal add over still sets
			c.Expr, c.rule = Constant(value(old)), nil
		}
	}
	return s, nil
}

// stirs reports whether the deal has members that a summary leaves out.
func (m *Model) stirs() bool {
	for _, c := range m.Root.Children {
		if m.Doc.sets[c.Set].Still {
			return true
		}
	}
	return false
}

// addsStill reports whether a formula adds over a still set.
func (d *Document) addsStill(n *formula.Node) bool {
	found := false
	n.Walk(func(x *formula.Node) {
		if x.Op != nil && x.Op.OverSet && d.sets[x.Set].Still {
			found = true
		}
	})
	return found
}

// without is a copy of a member and of all below it but for still sets.
func (m *Member) without(d *Document, parent *Member) *Member {
	out := &Member{Set: m.Set, Kind: m.Kind, Label: m.Label, Parent: parent, Given: m.Given, Pos: m.Pos}
	for _, c := range m.Children {
		if !d.sets[c.Set].Still {
			out.Children = append(out.Children, c.without(d, out))
		}
	}
	return out
}
