package model

import (
	"errors"
	"fmt"
	"slices"
)

// A Cell is one line of one member: a single value, or one for each month.
type Cell struct {
	Line   *Line
	Member *Member
	Index  int
	Given  *Value // what the deal says, or nil
	Expr   *Expr  // how it is worked out
	rule   *rule  // what the formula needs, or nil for nothing
}

// Name is the line's name with the member's in front, as in "first loan: points".
func (c *Cell) Name() string {
	if p := c.Member.Path(); p != "" {
		return p + ": " + c.Line.Name
	}
	return c.Line.Name
}

// Assumed reports whether the deal does not say an input that moves money.
func (c *Cell) Assumed() bool {
	if c.Given != nil {
		return c.Given.Unsaid
	}
	return c.Line.Assumed
}

// When is the condition under which an assumed default matters; nil for always, and
// where the default is not used.
func (c *Cell) When() *Expr {
	if c.Given != nil || c.rule == nil {
		return nil
	}
	return c.rule.when
}

// As is the cell worked out by another formula.
func (c *Cell) As(e *Expr) *Cell {
	out := *c
	out.Expr, out.rule = e, &rule{needs: collect(e, need{}, nil)}
	return &out
}

// A Step is cells worked out together: one cell, or several that feed each
// other from month to month.
type Step struct{ Cells []int }

// A Model is a deal laid over the document, ready for any reader.
type Model struct {
	Doc     *Document
	Root    *Member
	Cells   []*Cell
	Horizon int // the cell whose value is the last month
	Monthly int // how many cells have a value for each month
	shapes  *shapes
	inOrder []int // the cells, those of a step side by side
	// together are the steps of several cells, by each of them.
	together map[int]Step
	rows     []int32
	later    []int
}

// Later are the cells that were given after the deal was bound, in order.
func (m *Model) Later() []int { return m.later }

// Row is the place of a cell among those with a value for each month, or -1.
func (m *Model) Row(cell int) int { return int(m.rows[cell]) }

// horizon is the line that says how many months a deal has.
const horizon = "sale_month"

// Bind lays a deal over the document. The error joins every input that is
// missing (MissingError) or is none of the document's; once there are none, every
// circle found (CircleError). A deal is bound once at a time: formulas find their cells
// by its members, so a model is of no use once they are bound anew.
func Bind(d *Document, root *Member) (*Model, error) {
	return bind(d, root, func(b *binder) (errs []error) {
		for _, c := range b.Cells {
			if err := b.resolve(c); err != nil {
				errs = append(errs, err)
			}
		}
		return errs
	})
}

// BindFor is Bind for whoever asks for some lines alone, which takes a part of the time: the
// others have no formula unless those need it, and can be asked for nothing.
func BindFor(d *Document, root *Member, wanted func(*Line) bool) (*Model, error) {
	return bind(d, root, func(b *binder) (errs []error) {
		for _, c := range b.Cells {
			if wanted(c.Line) || c.Index == b.Horizon {
				errs = b.reach(c, errs)
			}
		}
		return errs
	})
}

func bind(d *Document, root *Member, resolve func(*binder) []error) (*Model, error) {
	m := &Model{Doc: d, Root: root, shapes: newShapes(d)}
	b := &binder{Model: m}
	errs := b.lay()
	m.Horizon = m.at(root, horizon)
	errs = append(errs, resolve(b)...)
	b.shapes.done = true
	switch {
	case len(errs) > 0:
		return nil, errors.Join(errs...)
	case m.Horizon < 0:
		return nil, fmt.Errorf("the document has no line %s", horizon)
	}
	return m, m.order()
}

// A binder finds the formulas of cells while a deal is bound.
type binder struct {
	*Model
	exprs slab[Expr]
	args  slab[*Expr]
}

// lay makes the cells of all members.
func (b *binder) lay() (errs []error) {
	n := 0
	b.Root.walk(func(x *Member) { x.shape = nil })
	b.Root.walk(func(x *Member) {
		x.shape, x.first = b.shapes.of(x), n
		x.shape.members = append(x.shape.members, x)
		n += len(x.shape.lines)
		errs = append(errs, strangers(b.Doc, x)...)
	})
	cells := make([]Cell, n)
	b.Cells, b.rows = make([]*Cell, n), make([]int32, n)
	b.Root.walk(func(x *Member) {
		for i, l := range x.shape.lines {
			at := x.first + i
			cells[at] = Cell{Line: l, Member: x, Index: at}
			b.Cells[at] = &cells[at]
			if b.rows[at] = -1; l.Monthly {
				b.rows[at] = int32(b.Monthly)
				b.Monthly++
			}
		}
	})
	return errs
}

// Own are the cells of the deal's own lines.
func (m *Model) Own() []int {
	own := make([]int, len(m.Root.shape.lines))
	for i := range own {
		own[i] = m.Root.first + i
	}
	return own
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

func (b *binder) resolve(c *Cell) (err error) {
	l := c.Line
	if l.Input {
		if c.Given = c.Member.Given.find(l.Name); c.Given != nil {
			return b.given(c, *c.Given)
		}
	}
	if l.Formula() == nil {
		return &MissingError{c}
	}
	if c.rule, err = b.rule(c); err == nil {
		c.Expr = c.rule.expr
	}
	return err
}

// reach resolves a cell and all that it needs.
func (b *binder) reach(c *Cell, errs []error) []error {
	if c.Expr != nil {
		return errs
	}
	if err := b.resolve(c); err != nil {
		return append(errs, err)
	}
	b.needs(c.Index, func(to int, _ need) bool {
		errs = b.reach(b.Cells[to], errs)
		return true
	})
	return errs
}

func (b *binder) given(c *Cell, v Value) error {
	switch {
	case v.Refers != "":
		r := b.Find(c.Member, v.Refers)
		switch {
		case r == nil:
			return fmt.Errorf("%s refers to %q, which is no line", c.Name(), v.Refers)
		case r.Line.Monthly && !c.Line.Monthly || !r.Line.mayStandFor(c.Line):
			return fmt.Errorf("%s refers to %q, which is in %s", c.Name(), v.Refers, r.Line.per())
		}
		c.Expr = b.one(Expr{way: toCell(r.Index)})
		c.rule = &rule{needs: []need{{way: c.Expr.way}}}
	case c.Line.Unit == "choice":
		if !slices.Contains(c.Line.Choices, v.Choice) {
			return fmt.Errorf("%s: %q is not a choice", c.Name(), v.Choice)
		}
		c.Expr = b.one(choiceNumber(c.Line, v.Choice))
	default:
		c.Expr = b.one(constant(v.Number))
	}
	return nil
}

// Give sets an input after the deal is bound: what comes from an algorithm that needed
// other lines first. Nothing that the input's default needs may depend on it.
func (m *Model) Give(c *Cell, v Value) {
	c.Member.Give(c.Line.Name, v)
	m.later = append(m.later, c.Index)
	c.Given, c.Expr = &v, Constant(v.Number)
	if v.Choice != "" {
		e := choiceNumber(c.Line, v.Choice)
		c.Expr = &e
	}
}
