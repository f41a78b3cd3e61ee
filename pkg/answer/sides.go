package answer

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/cashflow"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/solve"
)

// A Side is what a line comes to where the thing searched over has some value.
type Side struct{ At, Value decimal.Decimal }

// breakEvenSides are what the break-evens are searched over: the line that moves, how far
// a step goes toward where it is lost, and the line that is watched.
var breakEvenSides = map[string]struct {
	moves, watched string
	step           decimal.Decimal
	of             func(a *Answer) solve.BreakEven
}{
	"break_even_sale_price":           {"sale_price", "owner_profit", decimal.NewFromInt(-1), func(a *Answer) solve.BreakEven { return a.BreakEven.SalePrice }},
	"break_even_overrun":              {"overrun", "owner_profit", decimal.New(1, -3), func(a *Answer) solve.BreakEven { return a.BreakEven.Overrun }},
	"break_even_months":               {"late_sale", "owner_profit", decimal.New(1, -1), func(a *Answer) solve.BreakEven { return a.BreakEven.Months }},
	"break_even_sale_price_at_target": {"sale_price", "profit_to_spare", decimal.NewFromInt(-1), func(a *Answer) solve.BreakEven { return a.atTarget().SalePrice }},
	"break_even_overrun_at_target":    {"overrun", "profit_to_spare", decimal.New(1, -3), func(a *Answer) solve.BreakEven { return a.atTarget().Overrun }},
	"break_even_months_at_target":     {"late_sale", "profit_to_spare", decimal.New(1, -1), func(a *Answer) solve.BreakEven { return a.atTarget().Months }},
}

// BreakEvenSides are the watched line and what it comes to at a break-even and a step
// beyond it, with the loans as planned; ok is false if there is no such break-even.
func (a *Answer) BreakEvenSides(name string) (watched string, at, beyond Side, ok bool, err error) {
	s := breakEvenSides[name]
	if s.of == nil || !s.of(a).Found {
		return "", at, beyond, false, nil
	}
	from := decimal.Decimal{}
	if s.moves == "late_sale" { // the months are those beyond the plan
		from = a.Line("late_sale")
	}
	at.At = s.of(a).Value
	beyond.At = at.At.Add(s.step)
	for _, side := range []*Side{&at, &beyond} {
		if side.Value, err = a.held(s.watched, a.change(s.moves, from.Add(side.At))); err != nil {
			return "", at, beyond, false, err
		}
	}
	return s.watched, at, beyond, true, nil
}

// held is a line of the deal where something changes while the loans stay as planned.
func (a *Answer) held(line string, changes ...exact.Change) (decimal.Decimal, error) {
	held, err := solve.Held(a.small)
	if err != nil {
		return decimal.Decimal{}, err
	}
	c := a.small.Find(a.small.Root, line)
	v, err := exact.NewPlan(a.small, c).Evaluate(append(held, changes...)...)
	if err != nil {
		return decimal.Decimal{}, err
	}
	return v.Of(c), nil
}

// irrPlaces is how fine the monthly rates on either side of an internal rate of return
// are: a hundredth of a percent.
const irrPlaces = 4

// IRRSides are the owner's net cash discounted at the monthly rates right below and
// above the internal rate of return; ok is false if there is none, or several.
func (a *Answer) IRRSides() (below, above Side, ok bool) {
	flows := a.Values.ByMonth(a.Model.Find(a.Model.Root, "owner_net"))
	r, err := cashflow.IRR(flows)
	if err != nil || r.Several() {
		return below, above, false
	}
	below.At = r.Rate.RoundFloor(irrPlaces)
	above.At = below.At.Add(decimal.New(1, -irrPlaces))
	below.Value, above.Value = cashflow.PresentValue(flows, below.At), cashflow.PresentValue(flows, above.At)
	return below, above, true
}
