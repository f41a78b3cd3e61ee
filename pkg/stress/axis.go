package stress

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// An Axis is what varies along one side of a grid.
type Axis struct {
	Label  string
	Values []decimal.Decimal
	input  deal.Input   // how the values are written
	moves  []deal.Input // what they move
	adds   bool         // they are added to the plan
	beyond bool         // and the plan has some already
	days   bool         // times are written in days
	places int32        // or with so many decimals of a month
}

// Path is how the deal file names what takes the values, or "" where none does: where they
// are added to the plan's, or go to several.
func (a Axis) Path() string {
	if a.beyond || len(a.moves) > 1 {
		return ""
	}
	return a.input.Path
}

// Says writes a value of the axis as the deal file would, to the cent.
func (a Axis) Says(x decimal.Decimal) string {
	switch {
	case x.IsZero():
	case a.days:
		return quantity.Counted(int(inDays(x).IntPart()), "day")
	case a.places > 0:
		return quantity.FormatMonths(x, a.places)
	}
	return a.input.SaysCents(x)
}

// mostPlaces is with how many decimals of a month a value of an axis is written at most, which
// are those that the steps of a span have.
const mostPlaces = 6

// apart has values that differ written so that they do, with more decimals; times in days
// where all are whole days and some no tenths of a month.
func (a Axis) apart() Axis {
	if a.input.Kind != deal.Duration {
		return a
	}
	alike := func() bool {
		seen := map[string]bool{}
		for _, x := range a.Values {
			seen[a.Says(x)] = true
		}
		return len(seen) < len(a.Values)
	}
	whole := !slices.ContainsFunc(a.Values, func(x decimal.Decimal) bool { return !inDays(x).IsInteger() })
	rough := slices.ContainsFunc(a.Values, func(x decimal.Decimal) bool { return !x.Shift(1).IsInteger() })
	if a.days = whole && rough; a.days || !alike() {
		return a
	}
	for a.places = 2; alike() && a.places < mostPlaces; {
		a.places++
	}
	return a
}

// inDays are months in days, to what a day of a month is read with.
func inDays(months decimal.Decimal) decimal.Decimal {
	return formula.Divide(months.Mul(decimal.NewFromInt(365)), decimal.NewFromInt(12)).Round(4)
}

// planned reports whether a value is the plan's.
func (a Axis) planned(p *Plan, x decimal.Decimal) bool {
	if a.adds {
		return x.IsZero()
	}
	return x.Equal(p.of(a.input.Member, a.input.Line))
}

// Varying is an axis of any input.
func Varying(label string, in deal.Input, values []decimal.Decimal) Axis {
	return Axis{Label: label, Values: sorted(values), input: in, moves: []deal.Input{in}}.apart()
}

// Idle is why the axis moves nothing in the plan, or "".
func (a Axis) Idle(p *Plan) string { return chance.Idle(p.Deal, a.input) }

func sorted(values []decimal.Decimal) []decimal.Decimal {
	out := slices.Clone(values)
	slices.SortFunc(out, decimal.Decimal.Cmp)
	return slices.CompactFunc(out, decimal.Decimal.Equal)
}

// Late says where a deal runs late.
type Late string

// The ways to run late.
const (
	LateWorks Late = "works" // the works stand still
	LateSale  Late = "sale"  // the house is on the market longer
	LateBoth  Late = "both"  // both, each for as long
)

// lateLabels name the axes of months late.
var lateLabels = map[Late]string{
	LateWorks: "months the works stand still",
	LateSale:  "months longer on the market",
	LateBoth:  "months late, in the works and again on the market",
}

// MonthsLate is an axis of months beyond the plan; ok is false for another word.
func (p *Plan) MonthsLate(where Late, values []decimal.Decimal) (a Axis, ok bool) {
	works, _ := p.Deal.InputNamed("time.standstill")
	sale, _ := p.Deal.InputNamed("late sale")
	a = Axis{Label: lateLabels[where], Values: sorted(values), input: works, adds: true}
	switch where {
	case LateWorks:
		a.moves = []deal.Input{works}
	case LateSale:
		a.moves, a.input = []deal.Input{sale}, sale
	case LateBoth:
		a.moves = []deal.Input{works, sale}
	}
	for _, in := range a.moves {
		a.beyond = a.beyond || p.of(in.Member, in.Line).IsPositive()
	}
	if a.beyond {
		a.Label += ", beyond the plan"
	}
	return a.apart(), a.moves != nil
}

// Overruns is an axis of spending over the bids, with the contingency among the values.
func (p *Plan) Overruns(values []decimal.Decimal) Axis {
	in, _ := p.Deal.InputNamed("overrun")
	return Varying("over the bids", in, append(slices.Clone(values), p.Line("contingency_share")))
}

// Overrun reports whether the axis is the overrun over the bids.
func (a Axis) Overrun() bool { return a.Moves("overrun") }

// Moves reports whether the axis is of a line of the deal itself, and of no other, so that
// its values are the line's.
func (a Axis) Moves(line string) bool {
	return !a.adds && len(a.moves) == 1 && a.moves[0].Line == line && a.moves[0].Member.Parent == nil
}

// Contingency is the place of the first value at which the contingency is used up, or -1: also
// where the other side varies the contingency, which then is used up elsewhere in each line.
func (a Axis) Contingency(p *Plan, other Axis) int {
	c := p.Line("contingency_share")
	if !a.Overrun() || !p.Line("contingency").IsPositive() || other.Moves("contingency_share") {
		return -1
	}
	return slices.IndexFunc(a.Values, c.LessThanOrEqual)
}

// Clash is what the deal file would say against values of both sides together, by their ends,
// or nil; and which two they are.
func (p *Plan) Clash(a, b Axis) (*diag.Diag, decimal.Decimal, decimal.Decimal) {
	if a.adds || b.adds {
		return nil, decimal.Decimal{}, decimal.Decimal{}
	}
	for _, x := range []decimal.Decimal{a.Values[0], a.Values[len(a.Values)-1]} {
		for _, y := range []decimal.Decimal{b.Values[0], b.Values[len(b.Values)-1]} {
			if d := p.Deal.Clash(deal.Tried{Input: a.input, Value: x}, deal.Tried{Input: b.input, Value: y}); d != nil {
				return d, x, y
			}
		}
	}
	return nil, decimal.Decimal{}, decimal.Decimal{}
}

// Planned is the place of the plan's value, or -1.
func (a Axis) Planned(p *Plan) int {
	return slices.IndexFunc(a.Values, func(x decimal.Decimal) bool { return a.planned(p, x) })
}

// Apart fails where two axes move the same input, or one that has no effect beside another.
func (a Axis) Apart(b Axis) error {
	for _, x := range a.moves {
		for _, y := range b.moves {
			switch {
			case x.Is(y):
				return fmt.Errorf("%w: %s", ErrSame, x.Path)
			case x.Cancels(y):
				return fmt.Errorf("%w: %s and %s", ErrSame, x.Path, y.Path)
			}
		}
	}
	return nil
}

// A mover sets a cell by the value of an axis.
type mover struct {
	cell *model.Cell
	base decimal.Decimal // what the value is added to
}

func (a Axis) movers(p *Plan) []mover {
	out := make([]mover, len(a.moves))
	for i, in := range a.moves {
		out[i].cell = p.input(in)
		if a.adds {
			out[i].base = p.of(in.Member, in.Line)
		}
	}
	return out
}

// changes are what the axis changes at a value.
func (a Axis) changes(p *Plan, x decimal.Decimal) (out []exact.Change) {
	for _, m := range a.movers(p) {
		out = append(out, exact.Change{Cell: m.cell, Value: m.base.Add(x)})
	}
	return out
}
