package model

import (
	"fmt"

	"ledgerboard/pkg/formula"
)

// A rule is how a cell that is not given is worked out, the same for all members of a
// shape.
type rule struct {
	expr, when *Expr
	needs      []need
}

// rule is that of a cell.
func (b *binder) rule(c *Cell) (*rule, error) {
	s, l := c.Member.shape, c.Line
	known := &s.rules[c.Index-c.Member.first]
	if *known != nil {
		return *known, nil
	}
	r := &rule{}
	var err error
	if l.Unit == "choice" {
		r.expr = b.one(choiceNumber(l, l.Formula().Text))
	} else if r.expr, err = b.expr(s, l.Formula()); err != nil {
		return nil, err
	}
	if l.When != nil {
		if r.when, err = b.expr(s, l.When); err != nil {
			return nil, err
		}
	}
	r.needs = collect(r.expr, need{}, nil)
	*known = r
	return r, nil
}

// expr resolves the names of a formula for the members of a shape.
func (b *binder) expr(s *shape, n *formula.Node) (*Expr, error) {
	switch {
	case n.Name != "":
		way := s.find(b.Doc, s.members[0], n.Name)
		if way.place < 0 {
			return nil, fmt.Errorf("unknown line %q", n.Name)
		}
		return b.one(Expr{Node: n, way: way}), nil
	case n.Op == nil:
		e := constant(n.Num)
		e.Node = n
		return b.one(e), nil
	case n.Op.OverSet || n.Op.MayOver:
		return b.over(s, n)
	}
	e := b.one(Expr{Op: n.Op, Node: n, Args: b.args.take(len(n.Args))})
	for i, a := range n.Args {
		if a.Text != "" {
			e.Args[i] = b.word(s, n.Args[0], a)
			continue
		}
		var err error
		if e.Args[i], err = b.expr(s, a); err != nil {
			return nil, err
		}
	}
	return e, nil
}

// over is an operator that looks at other members: for each shape that they can have,
// it has what is taken of them.
func (b *binder) over(s *shape, n *formula.Node) (*Expr, error) {
	e := b.one(Expr{Op: n.Op, Node: n})
	for _, x := range b.shapes.all {
		if n.Op.OverSet && !x.isUnder(s, n.Set) || n.Op.MayOver && !x.isBeside(s, n.Set) {
			continue
		}
		of, err := b.expr(x, n.Args[0])
		if err != nil {
			return nil, err
		}
		e.others = append(e.others, other{x, rule{expr: of}})
	}
	return e, nil
}

// word is a word that is compared with a line of choice, as its number.
func (b *binder) word(s *shape, line, n *formula.Node) *Expr {
	var e Expr
	if i := b.at(s.members[0], line.Name); i >= 0 { // else the line is refused where it stands
		e = choiceNumber(b.Cells[i].Line, n.Text)
	}
	e.Node = n
	return b.one(e)
}

func (b *binder) one(e Expr) *Expr {
	to := b.exprs.one()
	*to = e
	return to
}
