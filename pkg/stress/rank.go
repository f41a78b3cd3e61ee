package stress

import (
	"cmp"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/slope"
)

// A Swing is what a realistic swing of one input does to the owner's profit, exactly.
type Swing struct {
	deal.Input
	Label     string
	Plan      decimal.Decimal
	Low, High decimal.Decimal // how far it may come out
	AtLow     decimal.Decimal // the owner's profit there
	AtHigh    decimal.Decimal
	Slope     float64         // for each Unit, how steeply the profit moves at the plan, without jumps
	Step      decimal.Decimal // where that is flat, what one whole Unit more does, jumps included
	Unit      decimal.Decimal // a natural step: $1,000, a point, a month
	Assumed   bool            // the deal file does not say how far
	Why       string          // what is assumed rests on
	Narrows   string          // what tells more about it; "" where nothing is known
}

// Size is how far the profit swings.
func (s Swing) Size() decimal.Decimal { return s.AtHigh.Sub(s.AtLow).Abs() }

// UnitWords is the unit of the slope in words: $1,000, 1%, 1 month.
func (s Swing) UnitWords() string { return s.Says(s.Unit) }

// Ranking ranks what may come out otherwise by what its swing does to the owner's profit:
// what the deal file has ranges of, the usual causes of trouble, and all its other figures
// that have a swing in common practice.
func (p *Plan) Ranking() ([]Swing, error) {
	all, err := p.swings()
	if err != nil {
		return nil, err
	}
	var inputs []deal.Input
	for _, s := range all {
		inputs = append(inputs, s.Input)
	}
	if p, err = p.asking(inputs...); err != nil {
		return nil, err
	}
	profits := exact.NewPlan(p.Model, p.cell("owner_profit"))
	errs := make([]func() error, len(all))
	for i := range all {
		errs[i] = func() error { return p.swing(profits, &all[i]) }
	}
	if err := together.Run(append(errs, func() error { return p.slopes(all) })...); err != nil {
		return nil, err
	}
	for i := range all {
		if err := p.step(profits, &all[i]); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(all, func(a, b Swing) int { return b.Size().Cmp(a.Size()) })
	return all, nil
}

// swings are the inputs with how far each may go.
func (p *Plan) swings() ([]Swing, error) {
	ranges, err := chance.Ranges(p.Deal)
	if err != nil {
		return nil, err
	}
	var out []Swing
	has := func(in deal.Input) bool { // or what a range of the file has in it
		return slices.ContainsFunc(out, func(s Swing) bool { return s.Is(in) || !s.Assumed && s.Cancels(in) }) ||
			in.Line == "lender_value" && !p.Deal.CapsByValue()
	}
	for _, r := range ranges {
		if r.Idle != "" {
			continue
		}
		out = append(out, Swing{Input: r.Input, Label: r.Label, Plan: r.Plan, Low: r.Low, High: r.High, Assumed: r.Assumed, Why: r.Why})
	}
	for _, in := range p.Deal.Inputs() {
		plan := p.of(in.Member, in.Line)
		if slices.ContainsFunc(p.Deal.Steady, func(x deal.Input) bool { return p.Deal.SameCause(in, x) }) {
			continue
		}
		if low, high, usual := usualSwing(in, plan); usual && !has(in) && low.LessThan(high) {
			out = append(out, Swing{Input: in, Label: chance.Label(in), Plan: plan, Low: low, High: high, Assumed: true, Why: "common practice, no source"})
		}
	}
	for i := range out {
		s := &out[i]
		s.Unit, s.Narrows = unit(s.Input), narrows(s.Input)
	}
	return out, nil
}

// Idle are the ranges that move nothing and so are not ranked.
func (p *Plan) Idle() ([]chance.Range, error) {
	ranges, err := chance.Ranges(p.Deal)
	return slices.DeleteFunc(ranges, func(r chance.Range) bool { return r.Idle == "" }), err
}

// profit is the owner's with one input at x.
func (p *Plan) profit(profits *exact.Plan, s *Swing, x decimal.Decimal) (decimal.Decimal, error) {
	held := p.closed(s.Input)
	v, err := profits.Evaluate(append(held[:len(held):len(held)], exact.Change{Cell: p.input(s.Input), Value: x})...)
	if err != nil {
		return decimal.Zero, err
	}
	return v.Of(p.cell("owner_profit")), nil
}

// swing works the profit out at both ends.
func (p *Plan) swing(profits *exact.Plan, s *Swing) (err error) {
	if s.AtLow, err = p.profit(profits, s, s.Low); err != nil {
		return err
	}
	s.AtHigh, err = p.profit(profits, s, s.High)
	return err
}

// step works out what one whole unit more does where the slope is flat: a partner who is
// paid first may leave the owner's profit at $0 over a stretch. At the most that an input may
// be it is the last unit up to there.
func (p *Plan) step(profits *exact.Plan, s *Swing) error {
	if math.Abs(s.Slope) >= 0.005 {
		return nil
	}
	from, to := s.Plan, s.Plan.Add(s.Unit)
	if least, most := s.Limits(); most != nil && to.GreaterThan(*most) {
		if from, to = s.Plan.Sub(s.Unit), s.Plan; !s.Plan.Equal(*most) || from.LessThan(*least) {
			return nil
		}
	}
	at, err := p.profit(profits, s, from)
	if err != nil {
		return err
	}
	if then, err := p.profit(profits, s, to); err == nil { // a hold beyond all bounds has no step
		s.Step = then.Sub(at)
	}
	return nil
}

// slopes are worked out for all inputs at once: for those that come out after the closing
// with the loans as planned, for the others with what lenders look at as planned.
func (p *Plan) slopes(all []Swing) error {
	for _, early := range []bool{false, true} {
		var at []int
		var cells []*model.Cell
		for i := range all {
			in := all[i].Input // alone: the swings are being worked out meanwhile
			if chance.Known(in) != early {
				continue
			}
			if in.Line == "lender_value" || in.Line == "contingency_share" { // what it moves is held for the others
				if err := p.slope(all, []int{i}, []*model.Cell{p.input(in)}, p.closed(in)); err != nil {
					return err
				}
				continue
			}
			at, cells = append(at, i), append(cells, p.input(in))
		}
		if len(at) == 0 {
			continue
		}
		if err := p.slope(all, at, cells, p.closed(all[at[0]].Input)); err != nil {
			return err
		}
	}
	return nil
}

func (p *Plan) slope(all []Swing, at []int, cells []*model.Cell, held []exact.Change) error {
	var kept []*model.Cell // at what they come to in the plan, as they are held
	for _, c := range held {
		kept = append(kept, c.Cell)
	}
	by, err := slope.Of(p.Model, cells, []*model.Cell{p.cell("owner_profit")}, kept...)
	if err != nil {
		return err
	}
	for k, i := range at {
		all[i].Slope = by[0][k] * all[i].Unit.InexactFloat64()
	}
	return nil
}

// unit is the natural step of an input.
func unit(in deal.Input) decimal.Decimal {
	switch in.Kind {
	case deal.Percent:
		return decimal.New(1, -2)
	case deal.Duration, deal.Hours, deal.HourRate:
		return one
	}
	return decimal.NewFromInt(cmp.Or(map[string]int64{"a_month": 100, "a_quarter": 100, "unit_price": 1}[in.Line], 1000))
}
