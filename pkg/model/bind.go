package model

import (
	"errors"
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
)

// A Cell is one line of one member: a single value, or one for each month.
type Cell struct {
	Line   *Line
	Member *Member
	Index  int
	Given  *Value // what the deal says, or nil
	Expr   *Expr  // how it is worked out
	When   *Expr  // when an assumed default matters; nil for always
	needs  []need
}

// Name is the line's name with the member's in front, as in "first loan: points".
func (c *Cell) Name() string {
	if p := c.Member.Path(); p != "" {
		return p + ": " + c.Line.Name
	}
	return c.Line.Name
}

// An Expr is a formula with its names resolved to cells. Without an operator it
// is the cell it refers to or, if Cell is negative, the number.
type Expr struct {
	Op     *formula.Op
	Args   []*Expr
	Cell   int
	Number decimal.Decimal
	Node   *formula.Node // what was written
	near   float64
}

// Near is the number as a float64, for readers that only need to be near.
func (e *Expr) Near() float64 { return e.near }

// A Step is cells worked out together: one cell, or several that feed each
// other from month to month.
type Step struct {
	Cells []int
	Block bool // month by month
}

// A Model is a deal laid over the document, ready for any reader.
type Model struct {
	Doc     *Document
	Root    *Member
	Cells   []*Cell
	Steps   []Step // in an order in which each needs only what came before
	Horizon int    // the cell whose value is the last month

	exprs  slab[Expr]
	args   slab[*Expr]
	values slab[Value]
	refs   []*Expr                 // by cell, what refers to it
	shared map[*formula.Node]*Expr // numbers of the document
}

// horizon is the line that says how many months a deal has.
const horizon = "sale_month"

// Bind lays a deal over the document. The error joins every input that is
// missing (MissingError) or is none of the document's; once there are none, every
// circle found (CircleError). A deal is bound once at a time.
func Bind(d *Document, root *Member) (*Model, error) {
	m := &Model{Doc: d, Root: root, shared: map[*formula.Node]*Expr{}}
	var errs []error
	all, cells := newShapes(d), slab[Cell]{}
	root.walk(func(x *Member) { x.shape = nil })
	root.walk(func(x *Member) {
		x.shape, x.first = all.of(x), len(m.Cells)
		for _, l := range x.shape.lines {
			c := cells.one()
			c.Line, c.Member, c.Index = l, x, len(m.Cells)
			m.Cells = append(m.Cells, c)
		}
		errs = append(errs, strangers(d, x)...)
	})
	m.refs = make([]*Expr, len(m.Cells))
	for _, c := range m.Cells {
		if err := errors.Join(m.resolve(c), m.assumption(c)); err != nil {
			errs = append(errs, err)
		}
	}
	if len(errs) > 0 {
		all.done = true
		return nil, errors.Join(errs...)
	}
	h := m.at(root, horizon)
	if h < 0 {
		return nil, fmt.Errorf("the document has no line %s", horizon)
	}
	m.Horizon = h
	all.done = true
	return m, m.order()
}

// Cell returns the cell of a line of a member, or nil.
func (m *Model) Cell(x *Member, l *Line) *Cell {
	if i := x.shape.place[l.position]; i > 0 {
		return m.Cells[x.first+int(i)-1]
	}
	return nil
}

// Find looks a name up from a member outward, or returns nil.
func (m *Model) Find(x *Member, name string) *Cell {
	if i := m.at(x, name); i >= 0 {
		return m.Cells[i]
	}
	return nil
}

// A MissingError is an input without a default that the deal does not give.
type MissingError struct{ Cell *Cell }

func (e *MissingError) Error() string {
	return fmt.Sprintf("%s is not given: %s", e.Cell.Name(), e.Cell.Line.Meaning)
}

func (m *Model) resolve(c *Cell) error {
	l := c.Line
	if l.Input {
		if v, ok := c.Member.Given[l.Name]; ok {
			c.Given = m.values.one()
			*c.Given = v
			return m.given(c, v)
		}
	}
	if l.Formula == nil {
		return &MissingError{c}
	}
	if l.Unit == "choice" {
		c.Expr = choiceNumber(l, l.Formula.Text)
		return nil
	}
	var err error
	c.Expr, err = m.expr(c.Member, l.Formula)
	return err
}

// assumption resolves the condition of an input that was not given.
func (m *Model) assumption(c *Cell) (err error) {
	if c.Given == nil && c.Line.When != nil {
		c.When, err = m.expr(c.Member, c.Line.When)
	}
	return err
}

func (m *Model) given(c *Cell, v Value) error {
	switch {
	case v.Refers != "":
		r := m.Find(c.Member, v.Refers)
		switch {
		case r == nil:
			return fmt.Errorf("%s refers to %q, which is no line", c.Name(), v.Refers)
		case r.Line.Monthly && !c.Line.Monthly || !r.Line.mayStandFor(c.Line):
			return fmt.Errorf("%s refers to %q, which is in %s", c.Name(), v.Refers, r.Line.per())
		}
		c.Expr = m.refer(r.Index, nil)
	case c.Line.Unit == "choice":
		if !slices.Contains(c.Line.Choices, v.Choice) {
			return fmt.Errorf("%s: %q is not a choice", c.Name(), v.Choice)
		}
		c.Expr = choiceNumber(c.Line, v.Choice)
	default:
		c.Expr = Constant(v.Number)
	}
	return nil
}

// Give sets an input after the deal is bound: what comes from an algorithm that needed
// other lines first. Nothing that the input's default needs may depend on it.
func (m *Model) Give(c *Cell, v Value) {
	c.Member.Give(c.Line.Name, v)
	c.Given, c.Expr = &v, Constant(v.Number)
	if v.Choice != "" {
		c.Expr = choiceNumber(c.Line, v.Choice)
	}
}

// Constant returns the expression that is a number.
func Constant(n decimal.Decimal) *Expr {
	return &Expr{Cell: -1, Number: n, near: formula.Near(n)}
}

func choiceNumber(l *Line, word string) *Expr {
	return Constant(decimal.NewFromInt(int64(slices.Index(l.Choices, word) + 1)))
}

func (m *Model) expr(x *Member, n *formula.Node) (*Expr, error) {
	switch {
	case n.Name != "":
		i := m.at(x, n.Name)
		if i < 0 {
			return nil, fmt.Errorf("unknown line %q", n.Name)
		}
		return m.refer(i, n), nil
	case n.Op == nil:
		return m.number(n), nil
	case n.Op.Code == formula.Previous:
		p := x.Before(n.Set)
		if p == nil {
			return m.refer(-1, n), nil
		}
		return m.expr(p, n.Args[0])
	}
	e := m.exprs.one()
	e.Op, e.Cell, e.Node = n.Op, -1, n
	switch {
	case n.Op.OverSet:
		members := x.In(n.Set)
		e.Args = m.args.take(len(members))
		for i, in := range members {
			var err error
			if e.Args[i], err = m.expr(in, n.Args[0]); err != nil {
				return nil, err
			}
		}
		return e, nil
	case len(n.Args) == 2 && n.Args[1].Text != "":
		i := m.at(x, n.Args[0].Name)
		if i < 0 {
			return nil, fmt.Errorf("unknown line %q", n.Args[0].Name)
		}
		e.Args = m.args.take(2)
		e.Args[0], e.Args[1] = m.refer(i, n.Args[0]), m.word(m.Cells[i].Line, n.Args[1])
		return e, nil
	}
	e.Args = m.args.take(len(n.Args))
	for i, a := range n.Args {
		var err error
		if e.Args[i], err = m.expr(x, a); err != nil {
			return nil, err
		}
	}
	return e, nil
}

// refer is an expression that is another cell, one for all that read it; below 0 it is
// the number 0.
func (m *Model) refer(cell int, n *formula.Node) *Expr {
	if cell >= 0 && m.refs[cell] != nil {
		return m.refs[cell]
	}
	e := m.exprs.one()
	e.Cell, e.Node = cell, n
	if cell >= 0 {
		m.refs[cell] = e
	}
	return e
}

// number is a number of the document, one for all cells.
func (m *Model) number(n *formula.Node) *Expr {
	e := m.shared[n]
	if e == nil {
		e = Constant(n.Num)
		e.Node = n
		m.shared[n] = e
	}
	return e
}

// word is a choice of the document, one for all cells.
func (m *Model) word(l *Line, n *formula.Node) *Expr {
	e := m.shared[n]
	if e == nil {
		e = choiceNumber(l, n.Text)
		e.Node = n
		m.shared[n] = e
	}
	return e
}
