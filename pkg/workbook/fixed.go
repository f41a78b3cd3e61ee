package workbook

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// A fixedness says whether a cell can change when an input of the workbook does.
type fixedness int8

const (
	unasked fixedness = iota
	moves
	stays
)

// fixed returns the value of an expression that no input of the workbook can change.
func (b *book) fixed(x *model.Expr, of *model.Member) (decimal.Decimal, bool) {
	var none decimal.Decimal
	if x.Op == nil {
		if i := x.Reads(of); i >= 0 {
			if c := b.model.Cells[i]; b.stays(c) {
				return b.answer.Values.Of(c), true
			}
			return none, false
		}
		return x.Number, true
	}
	switch x.Op.Code {
	case formula.If:
		yes, known := b.fixed(x.Args[0], of)
		switch {
		case !known: // both ways may come to the same
			v, one := b.fixed(x.Args[1], of)
			w, other := b.fixed(x.Args[2], of)
			return v, one && other && v.Equal(w)
		case yes.IsZero():
			return b.fixed(x.Args[2], of)
		}
		return b.fixed(x.Args[1], of)
	case formula.Mul, formula.And:
		for _, a := range x.Args {
			if v, known := b.fixed(a, of); known && v.IsZero() {
				return none, true
			}
		}
	case formula.Total, formula.Largest, formula.Previous:
		return b.fixedTotal(x, of)
	}
	if x.Op.Exact == nil {
		return none, false
	}
	var args []decimal.Decimal // most have one that is not known
	for _, a := range x.Args {
		v, known := b.fixed(a, of)
		if !known {
			return none, false
		}
		if args == nil {
			args = make([]decimal.Decimal, 0, len(x.Args))
		}
		args = append(args, v)
	}
	v, err := x.Op.Exact(args)
	return v, err == nil
}

func (b *book) fixedTotal(x *model.Expr, of *model.Member) (sum decimal.Decimal, known bool) {
	first := true
	for m, a := range x.Over(of) {
		v, known := b.fixed(a, m)
		switch {
		case !known:
			return sum, false
		case !first && x.Op.Code == formula.Largest:
			sum = decimal.Max(sum, v)
		default:
			sum = sum.Add(v)
		}
		first = false
	}
	return sum, true
}

// stays reports whether no input of the workbook can change a cell.
func (b *book) stays(c *model.Cell) bool {
	if c.Line.Monthly {
		return false
	}
	known := &b.fixedness[c.Index]
	if *known == unasked {
		*known = moves
		if !b.editable(c) && b.edgeBefore(c) == nil {
			if _, is := b.fixed(c.Expr, c.Member); is {
				*known = stays
			}
		}
	}
	return *known == stays
}

// goals are the inputs that state a target, with the line that says what is to spare of it.
var goals = map[string]string{"target_profit": "profit_to_spare", "target_margin": "margin_to_spare", "target_roi": "roi_to_spare"}

// editable reports whether a cell is an input that can be changed in the workbook: one
// that the deal gives, and of the deal and its loans also those that it does not.
func (b *book) editable(c *model.Cell) bool {
	if b.edgeBefore(c) != nil || !c.Line.Input || c.Given != nil && c.Given.Refers != "" {
		return false
	}
	if c.Given == nil && c.Line.Section == "Comparables" { // of a deal without them, or a thing not compared
		return false
	}
	if goal, is := goals[c.Line.Name]; is && c.Given == nil && !slices.Contains(solve.Targets(b.answer.Deal.Targets), goal) {
		return false // a target that the file does not state: a verdict on it takes the program
	}
	return c.Given != nil || c.Line.Set == model.Deal || c.Line.Set == "loan" || c.Assumed()
}

// edges are the inputs where a bracket or a table of rates begins, with those where it ends.
var edges = map[string]string{"lower": "upper", "base_over": "base_up_to", "from_day": "until_day"}

// edgeBefore is the end of a bracket or table of the same charge at which another begins, so that
// one edge is one input; nil where it begins at none.
func (b *book) edgeBefore(c *model.Cell) *model.Cell {
	end, begins := edges[c.Line.Name]
	if !begins || c.Given == nil {
		return nil
	}
	for _, m := range c.Member.Parent.In(c.Member.Set) {
		if v, given := m.Given.Look(end); m != c.Member && given && v.Number.Equal(c.Given.Number) {
			return b.model.Find(m, end)
		}
	}
	return nil
}
