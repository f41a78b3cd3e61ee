package comps

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// Given are amounts that the caller states, by line, in place of estimates: dollars
// for each sq ft of living area (Size) and of land (Lot), bedroom, full bath (a half
// one counts half), year newer (so usually above zero), step of condition, and car of
// garage (a garage of which the cars are not known counts as one); for Time the
// market's change in a month as a share, not compounded. Location and Style cannot be
// given and are not adjusted if they are named.
type Given map[Line]float64

// linear are the lines that may have an amount for each unit, the market's trend first.
var linear = []Line{Time, Size, Lot, Rooms, Baths, Age, Condition, Garage}

// unitOf are what those amounts are for each of.
var unitOf = map[Line]string{
	Time: "month", Size: "sq ft", Lot: "sq ft of lot", Rooms: "bedroom", Baths: "full bath", Age: "year newer", Condition: "step of condition", Garage: "car of garage",
}

// amountOf is what a unit of a line is worth where that is one amount.
func (a *adjuster) amountOf(l Line) (Rate, bool) {
	if x, ok := a.given[l]; ok {
		return Rate{l, unitOf[l], x, 0, "given", 0}, true
	}
	r, ok := a.told[l]
	return r, ok
}

// amountFor is that amount where it adjusts a sale. One for a car does not where nobody says for how
// many cars one of the two garages is: what a regression tells of their sizes then stands.
func (a *adjuster) amountFor(l Line, i int) (Rate, bool) {
	r, ok := a.amountOf(l)
	if ok && l == Garage && !(carsOf(a.s).Known && carsOf(&a.m.sales[i].House).Known) {
		return Rate{}, false
	}
	return r, ok
}

// bySize reports whether a sale taken is of a garage that a regression goes by the size of, though an
// amount for a car is given.
func (a *adjuster) bySize() bool {
	return slices.ContainsFunc(a.choice.Comps, func(k Comp) bool {
		_, amount := a.amountFor(Garage, k.pick.i)
		return !amount && a.compares(Garage, k.pick.i)
	})
}

// compares reports whether what a line goes by is known of the house and of a sale: its figure, or
// one that a regression tells the worth of.
func (a *adjuster) compares(l Line, i int) bool {
	s := &a.m.sales[i].House
	return figure(l, a.s).Known && figure(l, s).Known || !a.doubts(l) && a.m.tells(l, a.s, s)
}

// unsaid are the lines by which a sale is not compared though the house is known by them.
func (a *adjuster) unsaid(i int) (out []Line) {
	for _, l := range linear[1:] {
		if (figure(l, a.s).Known || a.m.tells(l, a.s)) && !a.compares(l, i) {
			out = append(out, l)
		}
	}
	return out
}

// linearly are all of those amounts.
func (a *adjuster) linearly() map[Line]Rate {
	out := map[Line]Rate{}
	for _, l := range linear {
		if r, ok := a.amountOf(l); ok {
			out[l] = r
		}
	}
	return out
}

// figure is what a line counts of a house: of age the year built, so that one more is a
// year newer.
func figure(l Line, h *House) Fact {
	switch l {
	case Size:
		return h.Area
	case Lot:
		return h.Lot
	case Rooms:
		return h.Bedrooms
	case Baths:
		return bathsOf(h)
	case Age:
		return h.Built
	case Condition:
		return h.Condition
	case Garage:
		return carsOf(h)
	}
	return Fact{}
}

// carsOf counts the cars of a garage, one where only its kind is known.
func carsOf(h *House) Fact {
	switch {
	case h.Garage == "none":
		return Known(0)
	case h.GarageCars.Known:
		return h.GarageCars
	}
	return Fact{1, h.Garage != ""}
}

// byUnits is the adjustment of a sale by one amount for each unit, in whole dollars:
// the rule of the lines comp.size_adjustment and their like, which a test holds it to.
func (a *adjuster) byUnits(l Line, r Rate, i int) decimal.Decimal {
	s := a.m.sales[i]
	rate := decimal.NewFromFloat(r.Worth)
	if l == Time {
		return wholeDollars(s.Net().Mul(rate).Mul(MonthsBefore(s.Date, a.m.Day)))
	}
	x, y := figure(l, a.s), figure(l, &s.House)
	if !x.Known || !y.Known {
		return decimal.Zero
	}
	return wholeDollars(rate.Mul(decimal.NewFromFloat(x.Value).Sub(decimal.NewFromFloat(y.Value))))
}

// MonthsBefore is how many months of 365/12 days lie between a sale and a day.
func MonthsBefore(sold, day quantity.Date) decimal.Decimal {
	return decimal.NewFromInt(12*int64(quantity.DaysBetween(sold, day))).DivRound(decimal.NewFromInt(365), 30)
}

// wholeDollars rounds as the lines do: to 7 decimals, then to whole dollars, both half
// away from zero.
func wholeDollars(d decimal.Decimal) decimal.Decimal { return d.Round(7).Round(0) }

// Baths counts the baths of a house, a half one as half.
func (h *House) Baths() Fact { return bathsOf(h) }

// Cars counts the cars that the garage of a house is for, one where only its kind is
// known.
func (h *House) Cars() Fact { return carsOf(h) }
