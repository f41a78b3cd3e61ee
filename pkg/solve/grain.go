package solve

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A grain says what a cell's values are multiples of.
type grain int

const (
	fine  grain = iota // nothing known
	cents              // whole cents
	whole              // whole numbers
)

// edge is where a bound decides whether a value is at least 0: a whole number of
// cents that is above -1/2 cent is at least 0.
func (g grain) edge() float64 {
	if g == fine {
		return 0
	}
	return -0.005
}

// grains finds the grains of cells while the axis of a prepared question moves
// over its steps.
func grains(p *walk.Prepared, axis Axis, watched []*model.Cell) []grain {
	g := grainer{Prepared: p, moves: map[int]bool{}, known: map[int]grain{}}
	for _, s := range p.Varying {
		for _, c := range s.Cells {
			g.moves[c], g.known[c] = true, whole
		}
	}
	g.known[axis.Cell.Index] = min(ofNumber(axis.Start), ofNumber(axis.Step))
	for g.pass(axis.Cell.Index) {
	}
	out := make([]grain, len(watched))
	for i, c := range watched {
		out[i] = g.cell(c.Index)
	}
	return out
}

func ofNumber(x decimal.Decimal) grain {
	switch {
	case x.IsInteger():
		return whole
	case x.Equal(x.Round(2)):
		return cents
	}
	return fine
}

type grainer struct {
	*walk.Prepared
	moves map[int]bool
	known map[int]grain
}

// pass lowers what was thought of the moving cells and reports whether it had to.
func (g *grainer) pass(axis int) (lowered bool) {
	for _, s := range g.Varying {
		for _, c := range s.Cells {
			if x := g.expr(g.Model.Cells[c].Expr); c != axis && x < g.known[c] {
				g.known[c], lowered = x, true
			}
		}
	}
	return lowered
}

// cell is the grain of a cell; one that does not move has that of its values.
func (g *grainer) cell(c int) grain {
	x, ok := g.known[c]
	if ok || g.moves[c] {
		return x
	}
	x = ofNumber(g.Fixed.Scalar[c])
	for _, v := range g.Fixed.Month[c] {
		x = min(x, ofNumber(v))
	}
	g.known[c] = x
	return x
}

func (g *grainer) expr(x *model.Expr) grain {
	if x.Op == nil {
		if x.Cell >= 0 {
			return g.cell(x.Cell)
		}
		return ofNumber(x.Number)
	}
	switch x.Op.Code {
	case formula.Cents:
		return max(cents, g.expr(x.Args[0]))
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual, formula.And, formula.Or,
		formula.Not, formula.Ceil, formula.Floor, formula.Month, formula.FirstMonth:
		return whole
	case formula.If:
		return min(g.expr(x.Args[1]), g.expr(x.Args[2]))
	case formula.Mul:
		if a, b := g.expr(x.Args[0]), g.expr(x.Args[1]); a == whole || b == whole {
			return min(a, b)
		}
		return fine
	case formula.Div, formula.Power, formula.Root, formula.LevelPayment:
		return fine
	case formula.Ago, formula.At:
		return g.expr(x.Args[0])
	}
	least := whole // the rest add, compare or pick
	for _, a := range x.Args {
		least = min(least, g.expr(a))
	}
	return least
}
