package answer

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
	"ledgerboard/pkg/stress"
)

// An Answer is all that is to be said about a bid.
type Answer struct {
	Deal   *deal.Deal
	Model  *model.Model
	Values *exact.Values

	Verdict  Verdict
	Offer    solve.Offer // at the likely value
	OfferLow solve.Offer // at the low value; the same if none is stated
	HasLow   bool
	// Gap and GapLow are the lowest prices under the offers, from some way under the asking price
	// on, at which a target is missed all the same; 0 where there is none.
	Gap, GapLow decimal.Decimal
	LowMisses   bool   // at the asking price, at a low value that bears as much or more
	Aside       *Aside // nil unless cash holds either offer back
	Bridge      []Step // from the rule of thumb to the maximum offer; none without one

	BreakEven         BreakEvens
	BreakEvenAtTarget *BreakEvens // nil without a profit target

	IRR     solve.Rate
	LoanAPR solve.Rate   // of all loans as one
	APRs    []solve.Rate // by loan

	Late    Delay // one more month unsold
	Stalled Delay // one more month of idle work
	Shakes  []Shake
	Telling int // how many of the shakes, from the first on, are worth a page
	Terms   []Term

	Assumed  []*model.Cell
	Cautions []caution.Caution
	Warnings diag.List

	Plan  *stress.Plan // what bad days and swings are asked of; nil where nothing is searched
	small *model.Model // the deal without its rooms, for searches
}

// BreakEvens are the three ways in which profit can be lost.
type BreakEvens struct{ SalePrice, Overrun, Months solve.BreakEven }

// An Aside is what the deal would bear if cash were no matter: the offers by the other
// targets, and what each thousand dollars off the asking price frees of the cash needed.
type Aside struct {
	Offer, OfferLow solve.Offer
	Frees           decimal.Decimal
}

// A Delay is what one more month costs.
type Delay struct{ Month, Day decimal.Decimal }

// A Miss is a stated target that is missed, and by how many dollars.
type Miss = stress.Miss

// Of works an answer out. Warnings are those of the deal file, to which doubts
// about the results are added.
func Of(d *deal.Deal, warnings diag.List) (*Answer, error) {
	a, err := small(d, warnings)
	if err != nil {
		return nil, err
	}
	if err := together.Run(a.offers, a.breakEvens, a.delays, a.shakes); err != nil {
		return nil, err
	}
	if err := a.bridge(); err != nil {
		return nil, err
	}
	a.rates()
	a.terms()
	a.Verdict = a.verdict()
	a.Warnings = slices.Concat(warnings, a.doubts())
	return a, nil
}

// Offered works out the figures of a deal and its offers, and nothing else by search.
func Offered(d *deal.Deal, warnings diag.List) (*Answer, error) {
	a, err := small(d, warnings)
	if err != nil {
		return nil, err
	}
	return a, a.offers()
}

// Planned works out the figures of a deal, with the plan that grids are asked of, and
// nothing by search.
func Planned(d *deal.Deal, warnings diag.List) (*Answer, error) { return small(d, warnings) }

// small works out the figures of a deal, with a summary of it for searches.
func small(d *deal.Deal, warnings diag.List) (*Answer, error) {
	a, err := Worked(d, warnings)
	if err != nil {
		return nil, err
	}
	if a.small, err = d.Model.Summary(a.Values.Of); err != nil {
		return nil, err
	}
	a.Plan, err = stress.NewPlan(d, a.Values, a.small)
	return a, err
}

// Missed are the stated targets that the deal misses as it is.
func (a *Answer) Missed() (all []Miss) {
	for _, t := range solve.Targets(a.Deal.Targets) {
		if x := a.Line(t); x.IsNegative() {
			all = append(all, Miss{Target: t, Short: x.Neg()})
		}
	}
	return all
}

// Worked works out the figures of a deal alone, without the searches of a bid: no
// offers, break-evens or shakes.
func Worked(d *deal.Deal, warnings diag.List) (*Answer, error) {
	v, err := exact.Known(d.Known)
	if err != nil {
		return nil, err
	}
	a := &Answer{Deal: d, Model: d.Model, Values: v, Assumed: told(d, v.Assumed()), Warnings: warnings}
	a.Cautions = caution.For(a.house())
	return a, nil
}

// Doubted is Worked with all doubts that a bid has of the deal.
func Doubted(d *deal.Deal, warnings diag.List) (*Answer, error) {
	a, err := Worked(d, warnings)
	if err != nil {
		return nil, err
	}
	a.rates()
	a.Warnings = slices.Concat(warnings, a.doubts())
	return a, nil
}

// Line returns the value of a line of the deal.
func (a *Answer) Line(name string) decimal.Decimal {
	return a.Values.Of(a.Model.Find(a.Model.Root, name))
}

// Month returns the value of a monthly line of the deal.
func (a *Answer) Month(name string, month int) decimal.Decimal {
	return a.Values.In(a.Model.Find(a.Model.Root, name), month)
}

// Loans returns the loans in their order.
func (a *Answer) Loans() []*model.Member { return a.Model.Root.In("loan") }

// Of returns the value of a line of a loan or another member.
func (a *Answer) Of(m *model.Member, name string) decimal.Decimal {
	return a.Values.Of(a.Model.Find(m, name))
}

func (a *Answer) change(name string, value decimal.Decimal) exact.Change {
	return exact.Change{Cell: a.small.Find(a.small.Root, name), Value: value}
}

func (a *Answer) offers() (err error) {
	low := a.Line("low_value")
	a.HasLow = low.LessThan(a.Line("after_repair_value"))
	both := func(targets []string) (likely, atLow solve.Offer, err error) {
		if likely, err = solve.MaxOffer(a.small, targets); err != nil || !a.HasLow {
			return likely, likely, err
		}
		atLow, err = solve.MaxOffer(a.small, targets, a.change("after_repair_value", low))
		return likely, atLow, err
	}
	if a.Offer, a.OfferLow, err = both(a.Deal.Targets); err != nil {
		return err
	}
	if err = a.gaps(); err != nil {
		return err
	}
	if a.HasLow && a.OfferLow.Found && !a.OfferLow.Price.LessThan(a.Line("price").Floor()) {
		if a.LowMisses, err = a.missesAtLow(); err != nil {
			return err
		}
	}
	if a.Offer.Binding != cashTarget && a.OfferLow.Binding != cashTarget {
		return nil
	}
	a.Aside = &Aside{}
	rest := slices.DeleteFunc(slices.Clone(a.Deal.Targets), func(t string) bool { return t == cashTarget })
	if a.Aside.Offer, a.Aside.OfferLow, err = both(rest); err != nil {
		return err
	}
	a.Aside.Frees, err = a.frees()
	return err
}

// cashTarget is the target that the cash there is suffices.
const cashTarget = "cash_to_spare"

// frees is how much more cash there is to spare with each thousand dollars less of price: on
// the way down to the maximum offer, or with the first thousand where that is no way down.
func (a *Answer) frees() (decimal.Decimal, error) {
	price, steps := a.Line("price"), one
	if a.waysDown() {
		steps = price.Sub(a.Offer.Price).Shift(-3)
	}
	lower, err := a.At(decimal.Max(decimal.Zero, price.Sub(steps.Shift(3))), a.Line("after_repair_value"))
	if err != nil {
		return decimal.Zero, err
	}
	return lower.Line(cashTarget).Sub(a.Line(cashTarget)).DivRound(steps, 2), nil
}

// waysDown reports whether the maximum offer lies a thousand dollars or more under the price.
func (a *Answer) waysDown() bool {
	return a.Offer.Found && a.Line("price").Sub(a.Offer.Price).GreaterThanOrEqual(one.Shift(3))
}

var one = decimal.NewFromInt(1)

// breakEvens are independent searches, run side by side.
func (a *Answer) breakEvens() error {
	searches := a.BreakEven.searches(a.small, "owner_profit")
	if a.Line("target_profit").IsPositive() {
		a.BreakEvenAtTarget = &BreakEvens{}
		searches = append(searches, a.BreakEvenAtTarget.searches(a.small, "profit_to_spare")...)
	}
	return together.Run(searches...)
}

func (b *BreakEvens) searches(m *model.Model, watched string) []func() error {
	return []func() error{
		func() (err error) { b.SalePrice, err = solve.BreakEvenSalePrice(m, watched); return err },
		func() (err error) { b.Overrun, err = solve.BreakEvenOverrun(m, watched); return err },
		func() (err error) { b.Months, err = solve.BreakEvenMonths(m, watched); return err },
	}
}

func (a *Answer) rates() {
	a.IRR = solve.IRR(a.Model, a.Values)
	loans := a.Loans()
	if len(loans) == 0 {
		a.LoanAPR.Why = "no loan"
		return
	}
	for _, l := range loans {
		a.APRs = append(a.APRs, solve.APR(a.Model, a.Values, l))
	}
	a.LoanAPR = a.APRs[0]
	if len(loans) > 1 {
		a.LoanAPR = solve.APR(a.Model, a.Values, loans...)
	}
}
