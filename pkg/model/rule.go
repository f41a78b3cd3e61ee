package model

import (
	"fmt"

	"ledgerboard/pkg/formula"
)

// A rule is how a cell that is not given is worked out. All members of a shape have the
// same one, unless it looks at other members: over a set or at the one before.
type rule struct {
	expr, when *Expr
	needs      []need
}

// rule is that of a cell.
func (b *binder) rule(c *Cell) (*rule, error) {
	known := &c.Member.shape.rules[c.Index-c.Member.first]
	if *known != nil {
		return *known, nil
	}
	r, shared, always, l := b.rules.one(), true, true, c.Line
	var err error
	if l.Unit == "choice" {
		r.expr = b.one(choiceNumber(l, l.Formula().Text))
	} else if r.expr, shared, err = b.expr(c.Member, l.Formula(), false); err != nil {
		return nil, err
	}
	if l.When != nil {
		if r.when, always, err = b.expr(c.Member, l.When, false); err != nil {
			return nil, err
		}
	}
	b.some = collect(r.expr, need{}, b.some[:0])
	r.needs = b.needs.take(len(b.some))
	copy(r.needs, b.some)
	if shared && always {
		*known = r
	}
	return r, nil
}

// expr resolves the names of a formula of a member, and says whether what it returns
// serves all members of the shape. Where it is fixed, it is for formulas of others.
func (b *binder) expr(x *Member, n *formula.Node, fixed bool) (e *Expr, shared bool, err error) {
	if e = x.shape.exprs[n]; e != nil && !fixed {
		return e, true, nil
	}
	switch shared = !fixed; {
	case n.Name != "":
		e, err = b.name(x, n, fixed)
	case n.Op == nil:
		e = b.number(n, constant(n.Num))
	case n.Op.Code == formula.Previous:
		if p := x.Before(n.Set); p != nil {
			e, _, err = b.expr(p, n.Args[0], true)
			return e, false, err
		}
		return b.one(Expr{Node: n, way: nowhere}), false, nil
	case n.Op.OverSet:
		e, err = b.over(x, n)
		return e, false, err
	default:
		e = b.one(Expr{Op: n.Op, Node: n, Args: b.args.take(len(n.Args))})
		for i, a := range n.Args {
			same := true
			if a.Text != "" {
				e.Args[i] = b.word(x, n.Args[0], a)
			} else if e.Args[i], same, err = b.expr(x, a, fixed); err != nil {
				return nil, false, err
			}
			shared = shared && same
		}
	}
	if shared && err == nil {
		x.shape.exprs[n] = e
	}
	return e, shared, err
}

func (b *binder) name(x *Member, n *formula.Node, fixed bool) (*Expr, error) {
	way := x.shape.find(b.Doc, x, n.Name)
	switch {
	case way.place < 0:
		return nil, fmt.Errorf("unknown line %q", n.Name)
	case fixed:
		way = toCell(way.from(x))
	}
	return b.one(Expr{Node: n, way: way}), nil
}

// over is an operator over the members of a set.
func (b *binder) over(x *Member, n *formula.Node) (*Expr, error) {
	members := x.In(n.Set)
	e := b.one(Expr{Op: n.Op, Node: n, Args: b.args.take(len(members))})
	for i, in := range members {
		var err error
		if e.Args[i], _, err = b.expr(in, n.Args[0], true); err != nil {
			return nil, err
		}
	}
	return e, nil
}

// word is the number of a word that is compared with a line of choice.
func (b *binder) word(x *Member, line, n *formula.Node) *Expr {
	var e Expr
	if i := b.at(x, line.Name); i >= 0 { // else the line is refused where it stands
		e = choiceNumber(b.Cells[i].Line, n.Text)
	}
	return b.number(n, e)
}

// number is a number or a word of the document, one for all cells.
func (b *binder) number(n *formula.Node, e Expr) *Expr {
	if b.numbers[n] == nil {
		e.Node = n
		b.numbers[n] = b.one(e)
	}
	return b.numbers[n]
}

func (b *binder) one(e Expr) *Expr {
	to := b.exprs.one()
	*to = e
	return to
}
