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
	members int
	index   [][]int32 // member id, line position: cell index + 1
}

// horizon is the line that says how many months a deal has.
const horizon = "sale_month"

// Bind lays a deal over the document. The error joins every input that is
// missing (MissingError) or is none of the document's; once there are none, every
// circle found (CircleError).
func Bind(d *Document, root *Member) (*Model, error) {
	m := &Model{Doc: d, Root: root}
	var errs []error
	bySet := map[string][]*Line{}
	for _, l := range d.Lines {
		bySet[l.Set] = append(bySet[l.Set], l)
	}
	root.walk(func(x *Member) {
		x.id = m.members
		m.members++
		row := make([]int32, len(d.Lines))
		for _, l := range slices.Concat(bySet[x.Set], bySet[x.Kind]) {
			m.Cells = append(m.Cells, &Cell{Line: l, Member: x, Index: len(m.Cells)})
			row[l.position] = int32(len(m.Cells))
		}
		m.index = append(m.index, row)
		errs = append(errs, strangers(d, x)...)
	})
	for _, c := range m.Cells {
		if err := errors.Join(m.resolve(c), m.assumption(c)); err != nil {
			errs = append(errs, err)
		}
	}
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	h := m.Find(root, horizon)
	if h == nil {
		return nil, fmt.Errorf("the document has no line %s", horizon)
	}
	m.Horizon = h.Index
	return m, m.order()
}

// Cell returns the cell of a line of a member, or nil.
func (m *Model) Cell(x *Member, l *Line) *Cell {
	if i := m.index[x.id][l.position]; i > 0 {
		return m.Cells[i-1]
	}
	return nil
}

// Find looks a name up from a member outward, or returns nil.
func (m *Model) Find(x *Member, name string) *Cell {
	for ; x != nil; x = x.Parent {
		if c := m.own(x, name); c != nil {
			return c
		}
		for _, linked := range x.Links {
			if c := m.own(linked, name); c != nil {
				return c
			}
		}
	}
	return nil
}

// own is the cell of a member's own line, or nil.
func (m *Model) own(x *Member, name string) *Cell {
	for _, set := range []string{x.Kind, x.Set} {
		if l := m.Doc.Line(set, name); l != nil {
			return m.Cell(x, l)
		}
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
	if v, ok := c.Member.Given[l.Name]; ok && l.Input {
		c.Given = &v
		return m.given(c, v)
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
		c.Expr = &Expr{Cell: r.Index}
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
}

// Constant returns the expression that is a number.
func Constant(n decimal.Decimal) *Expr {
	return &Expr{Cell: -1, Number: n, near: n.InexactFloat64()}
}

func choiceNumber(l *Line, word string) *Expr {
	return Constant(decimal.NewFromInt(int64(slices.Index(l.Choices, word) + 1)))
}

func (m *Model) expr(x *Member, n *formula.Node) (*Expr, error) {
	switch {
	case n.Name != "":
		c := m.Find(x, n.Name)
		if c == nil {
			return nil, fmt.Errorf("unknown line %q", n.Name)
		}
		return &Expr{Cell: c.Index, Node: n}, nil
	case n.Op == nil:
		e := Constant(n.Num)
		e.Node = n
		return e, nil
	}
	e := &Expr{Op: n.Op, Cell: -1, Node: n}
	contexts := []*Member{x}
	switch {
	case n.Op.OverSet:
		contexts = x.In(n.Set)
	case n.Op.Code == formula.Previous:
		p := x.Before(n.Set)
		if p == nil {
			return &Expr{Cell: -1, Node: n}, nil
		}
		return m.expr(p, n.Args[0])
	case len(n.Args) == 2 && n.Args[1].Text != "":
		c := m.Find(x, n.Args[0].Name)
		if c == nil {
			return nil, fmt.Errorf("unknown line %q", n.Args[0].Name)
		}
		word := choiceNumber(c.Line, n.Args[1].Text)
		word.Node = n.Args[1]
		e.Args = []*Expr{{Cell: c.Index, Node: n.Args[0]}, word}
		return e, nil
	}
	for _, in := range contexts {
		for _, a := range n.Args {
			sub, err := m.expr(in, a)
			if err != nil {
				return nil, err
			}
			e.Args = append(e.Args, sub)
		}
	}
	return e, nil
}
