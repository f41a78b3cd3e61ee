package answer

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// A Shake is something that goes wrong now and then, and what it would do.
type Shake struct {
	Name string // "sale", "overrun", "late", "stall", "value", "draws" or "hands"
	// By is how far it goes: of "sale" and "value" the share taken off, of "overrun"
	// the overrun over the bids, which is the scale of the break-evens, of "late",
	// "stall" and "draws" months, of "hands" dollars.
	By     decimal.Decimal
	Profit decimal.Decimal // the owner's profit then
	Lost   decimal.Decimal // profit lost
	Cash   decimal.Decimal // cash needed then
	Misses []Miss          // stated targets missed then
	Short  decimal.Decimal // cash short of what the owner can use, then
}

// How far each shake goes; common practice, no source.
var (
	saleDrop     = decimal.New(5, -2)  // the house sells 5% lower
	overPlan     = decimal.New(20, -2) // the overrun over the bids is 20 points above the planned one
	lateMonths   = decimal.NewFromInt(3)
	stallMonths  = decimal.NewFromInt(2)
	valueDrop    = decimal.New(10, -2) // the lender's value comes in 10% low
	slowerMonths = decimal.NewFromInt(1)
)

// shakes works out each thing that can go wrong in this deal: first those that miss
// some target by more than any other, then the rest; among either those that miss
// the most targets, then the one that costs most.
func (a *Answer) shakes() error {
	held, err := solve.Held(a.small)
	if err != nil {
		return err
	}
	for _, s := range a.possible() {
		if s.name != "value" { // the lender's value comes in before the loan is closed
			s.changes = append(s.changes, held...)
		}
		if err := a.shake(s.name, s.by, s.changes...); err != nil {
			return err
		}
	}
	slices.SortStableFunc(a.Shakes, func(x, y Shake) int {
		return cmp.Or(cmp.Compare(len(y.Misses), len(x.Misses)), y.harm().Cmp(x.harm()))
	})
	worst := a.worst()
	slices.SortStableFunc(a.Shakes, func(x, y Shake) int { return cmp.Compare(rank(worst, x), rank(worst, y)) })
	a.Telling = min(max(usualTelling, len(worst)), len(a.Shakes))
	return nil
}

// usualTelling is how many shakes a page tells of.
const usualTelling = 3

// worst are the names of the shakes that miss a target by more than any other does.
func (a *Answer) worst() map[string]bool {
	names := map[string]bool{}
	for _, t := range solve.Targets(a.Deal.Targets) {
		worst, short := "", decimal.Zero
		for _, s := range a.Shakes {
			if x := s.Missed(t); x.GreaterThan(short) {
				worst, short = s.Name, x
			}
		}
		if worst != "" {
			names[worst] = true
		}
	}
	return names
}

func rank(worst map[string]bool, s Shake) int {
	if worst[s.Name] {
		return 0
	}
	return 1
}

// Missed is by how many dollars a target is missed then; 0 if it holds.
func (s Shake) Missed(target string) decimal.Decimal {
	for _, m := range s.Misses {
		if m.Target == target {
			return m.Short
		}
	}
	return decimal.Zero
}

// harm ranks shakes that miss as many targets: profit lost, and cash that is not there.
func (s Shake) harm() decimal.Decimal { return s.Lost.Add(s.Short) }

type possibility struct {
	name    string
	by      decimal.Decimal
	changes []exact.Change
}

func (a *Answer) possible() []possibility {
	one := decimal.NewFromInt(1)
	drop := saleDrop
	if low, likely := a.Line("low_value"), a.Line("after_repair_value"); low.LessThan(likely) {
		drop = formula.Divide(likely.Sub(low), likely)
	}
	list := []possibility{
		{"sale", drop, []exact.Change{a.change("market_change", one.Add(a.Line("market_change")).Mul(one.Sub(drop)).Sub(one))}},
		{"late", lateMonths, []exact.Change{a.change("late_sale", a.Line("late_sale").Add(lateMonths))}},
	}
	if a.Line("base_cost").IsPositive() {
		over := a.Line("overrun").Add(overPlan)
		list = append(list, possibility{"overrun", over, []exact.Change{a.change("overrun", over)}})
	}
	if a.Line("renovation").IsPositive() {
		list = append(list, possibility{"stall", stallMonths, []exact.Change{a.change("standstill", a.Line("standstill").Add(stallMonths))}})
	}
	if own := a.Line("own_labour"); own.IsPositive() && a.Line("base_cost").IsPositive() {
		list = append(list, possibility{"hands", own, []exact.Change{a.change("overrun", a.Line("overrun").Add(formula.Divide(own, a.Line("base_cost"))))}})
	}
	return append(list, a.lenders()...)
}

// lenders are the shakes that come from the lenders.
func (a *Answer) lenders() []possibility {
	capped, drawn := false, []exact.Change(nil)
	for i, l := range a.Loans() {
		capped = capped || a.Of(l, "value_cap").IsPositive()
		if a.Of(l, "holdback").IsPositive() {
			drawn = append(drawn, exact.Change{Cell: a.small.Find(a.small.Root.In("loan")[i], "lag"), Value: a.Of(l, "lag").Add(slowerMonths)})
		}
	}
	var list []possibility
	if capped {
		value := a.Line("lender_value").Mul(decimal.NewFromInt(1).Sub(valueDrop))
		list = append(list, possibility{"value", valueDrop, []exact.Change{a.change("lender_value", value)}})
	}
	if drawn != nil {
		list = append(list, possibility{"draws", slowerMonths, drawn})
	}
	return list
}

func (a *Answer) shake(name string, by decimal.Decimal, changes ...exact.Change) error {
	targets := solve.Targets(a.Deal.Targets)
	var want []*model.Cell
	for _, line := range append([]string{"owner_profit", "cash_needed", "cash_to_spare"}, targets...) {
		want = append(want, a.small.Find(a.small.Root, line))
	}
	v, err := exact.NewPlan(a.small, want...).Evaluate(changes...)
	if err != nil {
		return err
	}
	s := Shake{Name: name, By: by, Profit: v.Of(want[0]), Cash: v.Of(want[1])}
	s.Lost = a.Line("owner_profit").Sub(s.Profit)
	if a.Deal.HasCash {
		s.Short = decimal.Max(decimal.Decimal{}, v.Of(want[2]).Neg())
	}
	for i, t := range targets {
		if x := v.Of(want[i+3]); x.IsNegative() {
			s.Misses = append(s.Misses, Miss{t, x.Neg()})
		}
	}
	if s.Lost.IsPositive() || s.Cash.GreaterThan(a.Line("cash_needed")) {
		a.Shakes = append(a.Shakes, s) // what takes neither profit nor cash breaks nothing
	}
	return nil
}

// daysAMonth turns dollars a month into dollars a day.
var daysAMonth = formula.Divide(decimal.NewFromInt(365), decimal.NewFromInt(12))

func (a *Answer) delays() (err error) {
	if a.Late, err = a.delay("late_sale"); err != nil {
		return err
	}
	a.Stalled, err = a.delay("standstill")
	return err
}

func (a *Answer) delay(line string) (Delay, error) {
	then, err := a.held("owner_profit", a.change(line, a.Line(line).Add(decimal.NewFromInt(1))))
	if err != nil {
		return Delay{}, err
	}
	lost := a.Line("owner_profit").Sub(then)
	return Delay{lost, formula.Divide(lost, daysAMonth).Round(2)}, nil
}
