package fast

import (
	"fmt"
	"math/bits"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A Program is the varying part of a deal as a flat list of instructions over slots.
type Program struct {
	slots []float64 // numbers that do not vary, and room for what does
	code  []instruction
	args  []int32 // of all instructions, in a row
	in    []int32 // the slot of each axis
	out   []int32 // the slot of each wanted cell

	values []float64 // room for the arguments of one instruction
	moves  [][]int32 // by axis, the instructions that it moves, in order
	last   []float64 // where the axes were last
	due    []bool    // by instruction
}

// An instruction puts what a rule makes of some slots into one.
type instruction struct {
	rule     func([]float64) float64 // nil for a sum of any number
	to       int32
	from, up int32 // the arguments
}

// New compiles what the wanted cells need of a prepared question while its axes vary.
// It fails if any of it runs by month.
func New(p *walk.Prepared, axes []*model.Cell, want ...*model.Cell) (*Program, error) {
	c := &compiler{model: p.Model, fixed: p.Fixed.Scalar, cells: make([]int32, len(p.Model.Cells)), varies: make([]bool, len(p.Model.Cells))}
	for _, s := range p.Varying {
		for _, i := range s.Cells {
			c.varies[i] = true
		}
	}
	for _, a := range axes {
		c.in = append(c.in, c.room(0))
		c.cells[a.Index] = c.in[len(c.in)-1] + 1
	}
	for _, w := range want {
		at, err := c.cell(w.Index)
		if err != nil {
			return nil, err
		}
		c.out = append(c.out, at)
	}
	c.findMoves()
	return &c.Program, nil
}

// findMoves finds the instructions that each axis moves, for 64 axes at a time.
func (p *Program) findMoves() {
	p.moves, p.due = make([][]int32, len(p.in)), make([]bool, len(p.code))
	for first := 0; first < len(p.in); first += 64 {
		movers := make([]uint64, len(p.slots)) // by slot, a bit for each axis
		for a, slot := range p.in[first:min(first+64, len(p.in))] {
			movers[slot] = 1 << a
		}
		for n, c := range p.code {
			var all uint64
			for _, slot := range p.args[c.from:c.up] {
				all |= movers[slot]
			}
			movers[c.to] = all
			for ; all != 0; all &= all - 1 {
				a := first + bits.TrailingZeros64(all)
				p.moves[a] = append(p.moves[a], int32(n))
			}
		}
	}
}

type compiler struct {
	Program
	model  *model.Model
	fixed  []decimal.Decimal
	cells  []int32 // by cell, its slot + 1
	varies []bool
}

// room is a new slot that holds x.
func (c *compiler) room(x float64) int32 {
	c.slots = append(c.slots, x)
	return int32(len(c.slots) - 1)
}

// cell is the slot of a cell, compiled where it varies and is not yet.
func (c *compiler) cell(i int) (int32, error) {
	if c.cells[i] > 0 {
		return c.cells[i] - 1, nil
	}
	cell := c.model.Cells[i]
	switch {
	case cell.Line.Monthly:
		return 0, fmt.Errorf("%s runs by month", cell.Name())
	case !c.varies[i]:
		c.cells[i] = c.room(formula.Near(c.fixed[i])) + 1
		return c.cells[i] - 1, nil
	}
	at, err := c.expr(cell.Expr, cell.Member)
	c.cells[i] = at + 1
	return at, err
}

// expr is the slot of the value of an expression in a formula of a member.
func (c *compiler) expr(x *model.Expr, of *model.Member) (int32, error) {
	switch {
	case x.IsNumber():
		return c.room(x.Near()), nil
	case x.Op == nil:
		return c.cell(x.Reads(of))
	}
	rule, op := x.Op.Float, x.Op
	switch {
	case op.Code == formula.Total || op.Code == formula.Add:
		rule = nil
	case op.Code == formula.Largest && len(x.Args) > 0:
		rule = formula.Table[formula.Max].Float
	case rule == nil:
		return 0, fmt.Errorf("%s runs by month", op.Name)
	}
	args := make([]int32, len(x.Args))
	if len(args) > cap(c.values) {
		c.values = make([]float64, 0, len(args))
	}
	for i, a := range x.Args {
		var err error
		if args[i], err = c.expr(a, of); err != nil {
			return 0, err
		}
	}
	i := instruction{rule: rule, to: c.room(0), from: int32(len(c.args))}
	c.args = append(c.args, args...)
	i.up = int32(len(c.args))
	c.code = append(c.code, i)
	return i.to, nil
}
