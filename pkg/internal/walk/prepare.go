package walk

import (
	"maps"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// A Prepared question is one asked again and again while some cells, the axes,
// vary: what does not vary is worked out, and the formulas of the rest are cut down
// to what can still change.
type Prepared struct {
	Model   *model.Model // with the formulas cut down
	Fixed   *Values[decimal.Decimal]
	Varying []model.Step
}

// Prepare gets steps ready for the axes, with other inputs changed for good. Last
// is the last month that any values of the axes can lead to.
func Prepare(m *model.Model, steps []model.Step, axes []int, changed map[int]decimal.Decimal, last int) (*Prepared, error) {
	fixed, varying := m.Reached(steps, axes, slices.Collect(maps.Keys(changed))...)
	w := Walker[decimal.Decimal, Decimals]{Values: New[decimal.Decimal](m), Changed: changed}
	w.Values.Last = last
	if err := w.Steps(fixed); err != nil {
		return nil, err
	}
	w.Values.Last = last
	own := *m
	own.Cells = slices.Clone(m.Cells)
	s := simplifier{model: &own, fixed: w.Values, moves: make([]bool, len(m.Cells))}
	for _, step := range varying {
		for _, c := range step.Cells {
			s.moves[c] = true
		}
	}
	p := &Prepared{Model: &own, Fixed: w.Values}
	for _, step := range varying {
		left := model.Step{}
		for _, c := range step.Cells {
			if slices.Contains(axes, c) || !s.cell(c) {
				left.Cells = append(left.Cells, c)
			}
		}
		if len(left.Cells) > 0 {
			p.Varying = append(p.Varying, left)
		}
	}
	return p, nil
}

// A simplifier cuts formulas down by what is known.
type simplifier struct {
	model *model.Model
	fixed *Values[decimal.Decimal]
	moves []bool
	home  *model.Member // whose formula is cut down
	of    *model.Member // whom what is cut down is read from
}

// cell cuts one cell's formula down and reports whether it does not move at all.
func (s *simplifier) cell(c int) bool {
	old := s.model.Cells[c]
	s.home, s.of = old.Member, old.Member
	n := s.expr(old.Expr)
	if s.adds(n, c) {
		n = model.Constant(decimal.Decimal{})
	}
	cell := old.As(n)
	s.model.Cells[c] = cell
	if !n.IsNumber() {
		return false
	}
	s.moves[c] = false
	s.fixed.Scalar[c] = n.Number
	if cell.Line.Monthly {
		s.fixed.SetMonth(c, slices.Repeat([]decimal.Decimal{n.Number}, s.fixed.Last+1))
	}
	return true
}

// adds reports whether an expression is the cell's own value of the month before
// and nothing else, which is always 0.
func (s *simplifier) adds(x *model.Expr, self int) bool {
	return x.Op != nil && x.Op.Code == formula.Prior && x.Args[0].Op == nil && x.Args[0].Reads(s.of) == self
}

func (s *simplifier) expr(x *model.Expr) *model.Expr {
	switch {
	case x.Op == nil:
		return s.name(x)
	case x.Op.OverSet || x.Op.MayOver:
		return s.over(x)
	}
	args := make([]*model.Expr, len(x.Args))
	known := len(args) > 0
	for i, a := range x.Args {
		args[i] = s.expr(a)
		known = known && args[i].IsNumber()
	}
	out := x.With(args)
	if known && x.Op.Exact != nil {
		return s.number(out)
	}
	return s.shorter(out)
}

// name is a cell, or the number that it is known to be.
func (s *simplifier) name(x *model.Expr) *model.Expr {
	if c := x.Reads(s.of); c >= 0 && !s.moves[c] && (!s.model.Cells[c].Line.Monthly || s.always0(c)) {
		return model.Constant(s.fixed.Scalar[c])
	}
	if s.of != s.home {
		return x.From(s.of)
	}
	return x
}

// over is an operator that looks at other members, over all that it takes of them.
func (s *simplifier) over(x *model.Expr) *model.Expr {
	here := s.of
	var args []*model.Expr
	for m, a := range x.Over(here) {
		s.of = m
		args = append(args, s.expr(a))
	}
	s.of = here
	switch {
	case x.Op.OverSet:
		return s.shorter(x.With(args))
	case len(args) > 0:
		return args[0]
	}
	return model.Constant(decimal.Decimal{})
}

// always0 reports whether a monthly cell that does not move is 0 in every month.
func (s *simplifier) always0(c int) bool {
	for _, x := range s.fixed.Month(c) {
		if !x.IsZero() {
			return false
		}
	}
	return s.fixed.Scalar[c].IsZero()
}

func is0(x *model.Expr) bool { return x.IsNumber() && x.Number.IsZero() }

// number replaces an operator on known values by its result.
func (s *simplifier) number(x *model.Expr) *model.Expr {
	args := make([]decimal.Decimal, len(x.Args))
	for i, a := range x.Args {
		args[i] = a.Number
	}
	v, err := x.Op.Exact(args)
	if err != nil {
		return x // it may never be reached; if it is, it fails there
	}
	return model.Constant(v)
}

// shorter drops parts that no longer matter.
func (s *simplifier) shorter(x *model.Expr) *model.Expr {
	zero := model.Constant(decimal.Decimal{})
	switch x.Op.Code {
	case formula.If:
		if x.Args[0].IsNumber() && !is0(x.Args[0]) {
			return x.Args[1]
		}
		if is0(x.Args[0]) {
			return x.Args[2]
		}
	case formula.And, formula.Mul:
		if is0(x.Args[0]) || is0(x.Args[1]) {
			return zero
		}
	case formula.Add:
		if is0(x.Args[0]) {
			return x.Args[1]
		}
		if is0(x.Args[1]) {
			return x.Args[0]
		}
	case formula.Sub:
		if is0(x.Args[1]) {
			return x.Args[0]
		}
	case formula.Prior, formula.Sum, formula.Running:
		if is0(x.Args[0]) {
			return zero
		}
	case formula.Total:
		return s.total(x)
	}
	return x
}

func (s *simplifier) total(x *model.Expr) *model.Expr {
	sum := decimal.Decimal{}
	var left []*model.Expr
	for _, a := range x.Args {
		if a.IsNumber() {
			sum = sum.Add(a.Number)
		} else {
			left = append(left, a)
		}
	}
	if len(left) == 0 {
		return model.Constant(sum)
	}
	if !sum.IsZero() {
		left = append(left, model.Constant(sum))
	}
	x.Args = left
	return x
}
