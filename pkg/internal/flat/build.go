package flat

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A builder makes one list of a prepared question.
type builder struct {
	model  *model.Model
	fixed  *walk.Values[decimal.Decimal]
	varies []bool // by cell
	list   List
	spans  []span          // by value
	known  map[Value]int32 // what stands in the list
	shifts map[int]int32   // by cell, the place of what is added to it
	cells  []int32         // by cell of one value, its place + 1
	rows   [][]int32       // by row of the model and month, the same
	last   int             // the month of the sale, or -1 while it is not known
	hold   int             // the cell that is rounded up to it, or -1
}

func newBuilder(p *walk.Prepared, axes []Along, last, hold int) *builder {
	b := &builder{
		model: p.Model, fixed: p.Fixed, varies: varies(p), known: map[Value]int32{}, shifts: map[int]int32{}, last: last, hold: hold,
		cells: make([]int32, len(p.Model.Cells)), rows: make([][]int32, p.Model.Monthly),
	}
	b.list.In = make([]int32, len(axes))
	for i, a := range axes {
		at, c := b.add(Value{Code: Axis, Args: [3]int32{int32(i)}}), a.Cell.Index
		b.spans[at] = span{a.Least, a.Most}
		if a.Shift {
			b.shifts[c] = at
			continue
		}
		if b.cells[c] = at + 1; c == b.hold && last >= 0 {
			b.narrow(at)
		}
	}
	if last >= 0 {
		b.cells[p.Model.Horizon] = b.number(float64(last)) + 1
	}
	return b
}

// varies marks the cells of a prepared question that vary.
func varies(p *walk.Prepared) []bool {
	out := make([]bool, len(p.Model.Cells))
	for _, s := range p.Varying {
		for _, c := range s.Cells {
			out[c] = true
		}
	}
	return out
}

// made is the list of wanted cells.
func (b *builder) made(want []int) (*List, error) {
	for _, w := range want {
		at, err := b.cell(w, 0)
		if err != nil {
			return nil, err
		}
		b.list.Out = append(b.list.Out, at)
	}
	b.list.shorten()
	return &b.list, nil
}

// add puts a value into the list, unless it stands there.
func (b *builder) add(v Value) int32 {
	if at, known := b.known[v]; known {
		return at
	}
	at := int32(len(b.list.Values))
	b.known[v] = at
	b.list.Values = append(b.list.Values, v)
	s := anything
	switch {
	case v.Code == Number && !math.IsNaN(v.Number):
		s = span{v.Number, v.Number}
	case v.Code >= 0:
		s = spanOf(v.Code, b.spans[v.Args[0]], b.spans[v.Args[1]], b.spans[v.Args[2]])
	}
	b.spans = append(b.spans, s)
	return at
}

func (b *builder) number(x float64) int32 { return b.add(Value{Code: Number, Number: x}) }

// cell is the place of a cell's value in a month; outside the months it is 0.
func (b *builder) cell(i, month int) (int32, error) {
	at, err := b.place(i, month)
	if at == nil || err != nil {
		return b.number(0), err
	}
	if *at > 0 {
		return *at - 1, nil
	}
	c := b.model.Cells[i]
	if !b.varies[i] {
		x := b.fixed.Scalar[i]
		if c.Line.Monthly {
			x = b.fixed.Month(i)[month]
		}
		*at = b.number(float.Near(x)) + 1
		return *at - 1, nil
	}
	made, err := b.expr(c.Expr, c.Member, month)
	if err != nil {
		return 0, err
	}
	if by, shifted := b.shifts[i]; shifted {
		made = b.make(formula.Add, made, by)
	}
	if i == b.hold && b.last >= 0 {
		b.narrow(made)
	}
	*at = made + 1
	return made, nil
}

// place is where the place of a cell's value is kept; nil outside the months.
func (b *builder) place(i, month int) (*int32, error) {
	row := b.model.Row(i)
	switch {
	case row < 0:
		return &b.cells[i], nil
	case b.last < 0:
		return nil, fmt.Errorf("%s runs by month", b.model.Cells[i].Name())
	case month < 0 || month > b.last:
		return nil, nil
	}
	if b.rows[row] == nil {
		b.rows[row] = make([]int32, b.last+1)
	}
	return &b.rows[row][month], nil
}

// narrow says of the length of the hold what its number of months tells: rounded to 9
// decimals it lies above the last whole month before the sale.
func (b *builder) narrow(at int32) {
	n := float64(b.last)
	b.spans[at] = b.spans[at].meet(span{n - 1 + 4e-10, n + 6e-10})
}

// expr is the place of an expression's value in a formula of a member, in a month.
func (b *builder) expr(x *model.Expr, of *model.Member, month int) (int32, error) {
	if x.Op == nil {
		if c := x.Reads(of); c >= 0 {
			return b.cell(c, month)
		}
		return b.number(x.Near()), nil
	}
	switch {
	case x.Op.Code == formula.If:
		return b.branch(x, of, month)
	case x.Op.Code == formula.Total || x.Op.Code == formula.Largest:
		return b.members(x, of, month)
	case x.Op.Exact == nil:
		return b.across(x, of, month)
	}
	var args [8]int32 // no operator takes more
	for i, a := range x.Args {
		at, err := b.expr(a, of, month)
		if err != nil {
			return 0, err
		}
		args[i] = at
	}
	if n := takes(x.Op.Code); n < len(x.Args) {
		return b.fold(x.Op.Code, args[:len(x.Args)]), nil
	}
	return b.make(x.Op.Code, args[:len(x.Args)]...), nil
}

// branch makes only what can be taken.
func (b *builder) branch(x *model.Expr, of *model.Member, month int) (int32, error) {
	cond, err := b.expr(x.Args[0], of, month)
	switch {
	case err != nil:
		return 0, err
	case b.is(cond, 0):
		return b.expr(x.Args[2], of, month)
	case b.sure(cond):
		return b.expr(x.Args[1], of, month)
	}
	yes, err := b.expr(x.Args[1], of, month)
	if err != nil {
		return 0, err
	}
	no, err := b.expr(x.Args[2], of, month)
	if err != nil {
		return 0, err
	}
	return b.make(formula.If, cond, yes, no), nil
}

// fold puts values together two at a time.
func (b *builder) fold(code formula.Code, args []int32) int32 {
	all := args[0]
	for _, a := range args[1:] {
		all = b.make(code, all, a)
	}
	return all
}

func (b *builder) members(x *model.Expr, of *model.Member, month int) (int32, error) {
	code := formula.Add
	if x.Op.Code == formula.Largest {
		code = formula.Max
	}
	args := make([]int32, len(x.Args))
	for i, a := range x.Args {
		var err error
		if args[i], err = b.expr(a, of, month); err != nil {
			return 0, err
		}
	}
	if len(args) == 0 {
		return b.number(0), nil
	}
	for len(args) > 1 { // by pairs, so that few follow where one member moves
		half := args[:0]
		for i := 0; i < len(args); i += 2 {
			half = append(half, b.fold(code, args[i:min(i+2, len(args))]))
		}
		args = half
	}
	return args[0], nil
}
