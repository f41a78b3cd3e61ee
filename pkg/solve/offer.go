package solve

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// furthest is how far a search for a price goes, as a multiple of the larger of
// the after-repair value and the price asked.
const furthest = 10

// An Offer is the answer to how high a bid may go.
type Offer struct {
	Found   bool
	Price   decimal.Decimal // the highest whole-dollar price at which every target holds
	Endless bool            // no price within reach misses a target
	Trusted bool            // found by trusting that the targets fail only once
	Binding string          // the target line that decides: missed a dollar higher, or at price 0 if none is found
	Short   decimal.Decimal // by how much it is missed there, in dollars; positive
}

// Targets returns the lines to watch: the stated targets and, where none of them
// is about profit, that profit is not lost. Cash alone would let a bid lose money.
func Targets(stated []string) []string {
	for _, t := range stated {
		if t != "cash_to_spare" {
			return stated
		}
	}
	return append([]string{"profit_to_spare"}, stated...)
}

// MaxOffer finds the highest whole-dollar price at which every target line is at
// least 0, all else worked out anew. It is the highest of all: above it no
// whole-dollar price will do.
func MaxOffer(m *model.Model, stated []string, changes ...exact.Change) (Offer, error) {
	watched := cells(m, Targets(stated))
	axis := Axis{Cell: m.Find(m.Root, "price"), Step: decimal.NewFromInt(1)}
	high, err := reach(m, changes)
	if err != nil {
		return Offer{}, err
	}
	s, err := newSearch(m, axis, 0, high, false, changes, watched...)
	if err != nil {
		return Offer{}, err
	}
	n, found, err := s.last(0, high)
	if err != nil {
		return Offer{}, err
	}
	o := Offer{Found: found, Price: decimal.NewFromInt(n), Trusted: s.trusting}
	if found && n == high {
		o.Endless = true
		return o, nil
	}
	over := int64(0)
	if found {
		over = n + 1
	}
	v, err := s.at(over)
	if err != nil {
		return Offer{}, err
	}
	for _, c := range watched {
		if x := v.Of(c); x.IsNegative() && (o.Binding == "" || x.Neg().GreaterThan(o.Short)) {
			o.Binding, o.Short = c.Line.Name, x.Neg()
		}
	}
	return o, nil
}

// FirstMiss finds the lowest whole-dollar price from one to another at which some target is
// missed; where a charge falls as the price rises there may be one under the maximum offer.
func FirstMiss(m *model.Model, stated []string, from, to decimal.Decimal, changes ...exact.Change) (price decimal.Decimal, found bool, err error) {
	low, high := from.Ceil().IntPart(), to.IntPart()
	if low > high {
		return decimal.Zero, false, nil
	}
	axis := Axis{Cell: m.Find(m.Root, "price"), Step: decimal.NewFromInt(1)}
	s, err := newSearch(m, axis, low, high, true, changes, cells(m, Targets(stated))...)
	if err != nil {
		return decimal.Zero, false, err
	}
	n, found, err := s.first(low, high)
	return decimal.NewFromInt(n), found, err
}

// reach is the highest price worth looking at, in dollars.
func reach(m *model.Model, changes []exact.Change) (int64, error) {
	watched := cells(m, []string{"price", "after_repair_value"})
	v, err := exact.NewPlan(m, watched...).Evaluate(changes...)
	if err != nil {
		return 0, err
	}
	return decimal.Max(v.Of(watched[0]), v.Of(watched[1])).Ceil().IntPart() * furthest, nil
}

func cells(m *model.Model, names []string) []*model.Cell {
	out := make([]*model.Cell, len(names))
	for i, n := range names {
		out[i] = m.Find(m.Root, n)
	}
	return out
}
