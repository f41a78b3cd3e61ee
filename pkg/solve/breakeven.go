package solve

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// Limits of the break-evens: an overrun of 300% over the bids, 36 extra months.
const (
	mostOverrun = 3000 // thousandths
	mostMonths  = 360  // tenths
	nearMonths  = 100  // tenths looked at first
)

// A BreakEven is how far one thing may move until profit, or the profit target,
// is lost. Exactly one of Found, Missed and Never holds.
type BreakEven struct {
	Found   bool
	Missed  bool            // it is already lost in the plan
	Never   bool            // it is not lost within the limit
	Value   decimal.Decimal // how far it may move, or the limit that is not enough
	Trusted bool            // found by trusting that it is lost only once
}

// Held keeps the loans, the budget and the charges paid at the closing or before at what
// they are in the plan: once closed, nothing of it grows or shrinks because the sale or the
// work turns out otherwise.
func Held(m *model.Model) ([]exact.Change, error) {
	sizes := []*model.Cell{m.Find(m.Root, "budget")}
	for _, l := range m.Root.In("loan") {
		for _, line := range []string{"loan_at_closing", "holdback", "reserve"} {
			sizes = append(sizes, m.Find(l, line))
		}
		sizes = append(sizes, amounts(m, l.In("loan_fee"))...)
	}
	for _, kind := range []string{"before_fee", "purchase_fee"} {
		sizes = append(sizes, amounts(m, m.Root.In(kind))...)
	}
	return exact.Pin(m, sizes...)
}

// amounts are what charges come to, as far as they follow from other lines.
func amounts(m *model.Model, fees []*model.Member) (out []*model.Cell) {
	for _, f := range fees {
		if f.Given.Of("share").Number.IsZero() && f.Given.Of("unit_price").Number.IsZero() && len(f.Children) == 0 {
			continue // in dollars
		}
		out = append(out, m.Find(f, "amount"))
	}
	return out
}

// BreakEvenSalePrice finds the lowest whole-dollar sale price from which on the
// watched line is at least 0. The loans do not move with it.
func BreakEvenSalePrice(m *model.Model, watched string) (BreakEven, error) {
	axis := Axis{Cell: m.Find(m.Root, "sale_price"), Step: decimal.NewFromInt(1)}
	high, err := reach(m, nil)
	if err != nil {
		return BreakEven{}, err
	}
	held, err := Held(m)
	if err != nil {
		return BreakEven{}, err
	}
	s, err := newSearch(m, axis, 0, high, true, held, m.Find(m.Root, watched))
	if err != nil {
		return BreakEven{}, err
	}
	n, found, err := s.last(0, high)
	switch {
	case err != nil:
		return BreakEven{}, err
	case found && n == high:
		return BreakEven{Never: true, Value: decimal.NewFromInt(high)}, nil
	case !found:
		n = -1
	}
	return BreakEven{Found: true, Value: decimal.NewFromInt(n + 1), Trusted: s.trusting}, nil
}

// BreakEvenOverrun finds the largest overrun over the bids, in steps of 0.1%,
// up to which the watched line stays at least 0.
func BreakEvenOverrun(m *model.Model, watched string) (BreakEven, error) {
	step := decimal.New(1, -3)
	overrun := m.Find(m.Root, "overrun")
	v, err := exact.Evaluate(m, overrun)
	if err != nil {
		return BreakEven{}, err
	}
	planned := v.Of(overrun).Div(step).Ceil().IntPart()
	return stretch(m, Axis{Cell: overrun, Step: step}, watched, planned, mostOverrun, mostOverrun)
}

// BreakEvenMonths finds the most extra months on the market, in tenths, up to
// which the watched line stays at least 0.
func BreakEvenMonths(m *model.Model, watched string) (BreakEven, error) {
	late := m.Find(m.Root, "late_sale")
	v, err := exact.Evaluate(m, late)
	if err != nil {
		return BreakEven{}, err
	}
	axis := Axis{Cell: late, Start: v.Of(late), Step: decimal.New(1, -1)}
	// Most answers lie near the plan, where a deal has fewer months to work out.
	return stretch(m, axis, watched, 0, nearMonths, mostMonths)
}

// stretch goes from the plan outward to the last step before the watched line is
// lost: first as far as near, then to the end.
func stretch(m *model.Model, axis Axis, watched string, from, near, to int64) (BreakEven, error) {
	cell := m.Find(m.Root, watched)
	v, err := exact.Evaluate(m, cell)
	if err != nil {
		return BreakEven{}, err
	}
	if v.Of(cell).IsNegative() {
		return BreakEven{Missed: true}, nil
	}
	held, err := Held(m)
	if err != nil {
		return BreakEven{}, err
	}
	for _, end := range []int64{near, to} {
		if from > end {
			continue
		}
		s, err := newSearch(m, axis, from, end, true, held, cell)
		if err != nil {
			return BreakEven{}, err
		}
		n, found, err := s.first(from, end)
		if err != nil {
			return BreakEven{}, err
		}
		if found {
			return BreakEven{Found: true, Value: axis.Step.Mul(decimal.NewFromInt(n - 1)), Trusted: s.trusting}, nil
		}
		from = end + 1
	}
	return BreakEven{Never: true, Value: axis.Step.Mul(decimal.NewFromInt(to))}, nil
}
