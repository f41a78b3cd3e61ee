package stress

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// A Plan is a deal as it is planned.
type Plan struct {
	Deal   *deal.Deal
	Values *exact.Values // of the deal's model
	Model  *model.Model  // that is asked: the deal without its rooms

	members map[*model.Member]*model.Member // of the asked model by those of the deal
	held    []exact.Change                  // the loans as they are closed
	looked  []exact.Change                  // what lenders look at before the works and the sale
}

// NewPlan prepares a deal that is worked out; small is the summary that is asked.
func NewPlan(d *deal.Deal, v *exact.Values, small *model.Model) (*Plan, error) {
	p := &Plan{Deal: d, Values: v, Model: small, members: map[*model.Member]*model.Member{}}
	p.match(d.Root, small.Root)
	var err error
	if p.held, err = solve.Held(small); err != nil {
		return nil, err
	}
	p.looked, err = chance.Planned(small)
	return p, err
}

// match pairs the members of the deal with those of the asked model, which has the same in
// the same order but for whole sets.
func (p *Plan) match(all, some *model.Member) {
	p.members[all] = some
	next := some.Children
	for _, c := range all.Children {
		if len(next) > 0 && next[0].Set == c.Set && next[0].Label == c.Label && next[0].Kind == c.Kind {
			p.match(c, next[0])
			next = next[1:]
		}
	}
}

// Line is the value of a line of the deal in the plan.
func (p *Plan) Line(name string) decimal.Decimal { return p.of(p.Deal.Root, name) }

func (p *Plan) of(m *model.Member, name string) decimal.Decimal {
	return p.Values.Of(p.Deal.Model.Find(m, name))
}

func (p *Plan) cell(line string) *model.Cell { return p.Model.Find(p.Model.Root, line) }

// input is the cell of an input; nil if the asked model is without it.
func (p *Plan) input(in deal.Input) *model.Cell {
	m := p.members[in.Member]
	if m == nil {
		return nil
	}
	return p.Model.Find(m, in.Line)
}

// asking is a plan whose model follows all of some inputs: that of the whole deal, if what
// one of them moves stands as a number in the asked model.
func (p *Plan) asking(inputs ...deal.Input) (*Plan, error) {
	if p.Model == p.Deal.Model {
		return p, nil
	}
	frozen := p.frozen()
	steps := p.Deal.Model.Needed(frozen...)
	for _, in := range inputs {
		_, moved := p.Deal.Model.Reached(steps, []int{p.Deal.Model.Find(in.Member, in.Line).Index})
		moves := slices.ContainsFunc(moved, func(s model.Step) bool {
			return slices.ContainsFunc(s.Cells, func(c int) bool { return slices.Contains(frozen, c) })
		})
		if moves || p.input(in) == nil {
			return NewPlan(p.Deal, p.Values, p.Deal.Model)
		}
	}
	return p, nil
}

// frozen are the lines of the deal that are numbers in the asked model: totals over what
// that leaves out.
func (p *Plan) frozen() (out []int) {
	number := func(c *model.Cell) bool { return c.Expr != nil && c.Expr.Op == nil && c.Expr.Reads(c.Member) < 0 }
	for _, c := range p.Model.Cells {
		if c.Member == p.Model.Root && c.Given == nil && number(c) {
			if whole := p.Deal.Model.Find(p.Deal.Root, c.Line.Name); whole.Expr != nil && !number(whole) {
				out = append(out, whole.Index)
			}
		}
	}
	return out
}

// closed are the changes that keep the loans as they are in the plan while some inputs
// vary. If all of them come out only after the closing, the loans keep their size. If not,
// they are sized anew, but by the value and the budget that the lender counted.
func (p *Plan) closed(inputs ...deal.Input) []exact.Change {
	if !slices.ContainsFunc(inputs, chance.Known) {
		return p.held
	}
	var lines []string
	for _, in := range inputs {
		lines = append(lines, in.Line)
	}
	return p.sizedBy(lines...)
}

// sizedBy is what lenders look at as it is in the plan, but for what some lines change of it.
func (p *Plan) sizedBy(lines ...string) []exact.Change {
	return slices.DeleteFunc(slices.Clone(p.looked), func(c exact.Change) bool {
		if c.Cell.Line.Name == lenderValue.line {
			return slices.Contains(lines, lenderValue.line)
		}
		return ofBudget(c) && slices.Contains(lines, lenderBudget.line)
	})
}

// ofBudget reports whether the contingency moves what is looked at before the closing.
func ofBudget(c exact.Change) bool {
	return c.Cell.Line.Name != lenderValue.line && (!ofCharge(c) || c.Cell.Given.Refers == "budget")
}

// ofCharge reports whether it is what a charge is reckoned on.
func ofCharge(c exact.Change) bool { return c.Cell.Line.Name == "base" }

// budgets are what is looked at before the closing at the contingency that some changes state,
// with all else as planned: she sets it before the works turn out otherwise.
func (p *Plan) budgets(moves []exact.Change) ([]exact.Change, error) {
	i := slices.IndexFunc(moves, func(c exact.Change) bool { return c.Cell == p.cell(lenderBudget.line) })
	if i < 0 {
		return nil, nil
	}
	out := slices.DeleteFunc(slices.Clone(p.looked), func(c exact.Change) bool { return !ofBudget(c) })
	var cells []*model.Cell
	for _, c := range out {
		cells = append(cells, c.Cell)
	}
	v, err := exact.NewPlan(p.Model, cells...).Evaluate(moves[i])
	if err != nil {
		return nil, err
	}
	for k, c := range cells {
		out[k].Value = v.Of(c)
	}
	return out, nil
}

// ChargesKept reports whether a charge of the closing, reckoned on what comes out later, stays
// as planned: all of them, or those that no contingency moves.
func (p *Plan) ChargesKept(contingencyVaries bool) bool {
	return slices.ContainsFunc(p.looked, func(c exact.Change) bool {
		return ofCharge(c) && !(contingencyVaries && ofBudget(c))
	})
}

// ChargesFollow reports whether a charge of the closing is reckoned on the budget.
func (p *Plan) ChargesFollow() bool {
	return slices.ContainsFunc(p.looked, func(c exact.Change) bool { return ofCharge(c) && ofBudget(c) })
}

// What a lender counts, by the line that moves it before the closing.
var (
	lenderValue  = counted{"lender_value", "value"}
	lenderBudget = counted{"contingency_share", "budget"}
)

type counted struct{ line, what string }

// kept is what of a lender's count stays as planned where some inputs come out only after the
// closing.
func kept(inputs []deal.Input) (out []string) {
	if !slices.ContainsFunc(inputs, func(in deal.Input) bool { return !chance.Known(in) }) {
		return nil
	}
	for _, c := range []counted{lenderValue, lenderBudget} {
		if !slices.ContainsFunc(inputs, func(in deal.Input) bool { return in.Line == c.line }) {
			out = append(out, c.what)
		}
	}
	return out
}

// setsAside reports whether an input is the contingency of the deal.
func setsAside(in deal.Input) bool { return in.Line == lenderBudget.line }
