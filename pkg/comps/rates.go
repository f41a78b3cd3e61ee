package comps

import (
	"math"
	"slices"
)

// Rate is what a unit of something is worth: an estimate with its standard error.
type Rate struct {
	Line  Line
	Unit  string  // "sq ft", "full bath", "month"; what an own line is called
	Worth float64 // dollars; for Time the share a price changes by
	Error float64 // standard error of Worth; 0 for an amount given
	From  string  // "regression", "pairs" or "given"; "" where nothing tells
	Pairs int     // of sales that tell it
}

// aCar and aGarageSize are the units of garages.
const aCar, aGarageSize = "car of garage", "100 sq ft of garage"

const aHalfBath = "half bath"

// units are what is told of the subject: a unit more of each.
var rateUnits = []struct {
	line Line
	unit string
	more func(*House) bool // false if the subject's is not known
}{
	{Size, "sq ft", func(h *House) bool { h.Area.Value++; return h.Area.Known }},
	{Lot, "1,000 sq ft of lot", func(h *House) bool { h.Lot.Value += 1000; return h.Lot.Known }},
	{Rooms, "bedroom", func(h *House) bool { h.Bedrooms.Value++; return h.Bedrooms.Known }},
	{Baths, "full bath", func(h *House) bool { h.FullBaths.Value++; return h.FullBaths.Known }},
	{Baths, aHalfBath, func(h *House) bool { h.HalfBaths.Value++; return h.HalfBaths.Known }},
	{Age, "year newer", func(h *House) bool { h.Built.Value++; return h.Built.Known }},
	{Condition, "step of condition", func(h *House) bool { h.Condition.Value++; return h.Condition.Known }},
	{Garage, aGarageSize, func(h *House) bool { h.GarageArea.Value += 100; return h.GarageArea.Known }},
	{Garage, aCar, func(h *House) bool { h.GarageCars.Value++; return h.GarageCars.Known }},
}

// Told reports whether anything tells the worth, be it nothing: it is given, or sales say it.
func (r Rate) Told() bool { return r.From != "" }

// Thing is the unit as it stands in a sentence: a sq ft, and an own line as it is called.
func (r Rate) Thing() string {
	if r.Line == Own {
		return r.Unit
	}
	return "a " + r.Unit
}

// HowTold says in words how the worth is known; "" where nothing tells. What is given is for
// a bath, and a half bath counts as half of one.
func (r Rate) HowTold() string {
	if r.From == "given" && r.Unit == aHalfBath {
		return "half of what is given for a bath"
	}
	return map[string]string{"given": "given in the file", "pairs": "by pairs of sales", "regression": "by regression"}[r.From]
}

func (a *adjuster) from() string {
	if a.m.byPairs {
		return "pairs"
	}
	return "regression"
}

// trend returns the market's change in a month, over the months just before the day.
func (a *adjuster) trend() Rate {
	if r, ok := a.amountOf(Time); ok {
		return r
	}
	if a.doubts(Time) || !slices.Contains(a.m.fit.kept[len(a.m.design.traits):], true) {
		return Rate{Line: Time, Unit: "month"}
	}
	d := make([]float64, a.m.columns)
	for j := len(a.m.design.traits); j < a.m.columns; j++ {
		d[j] = 1
	}
	slope, se := a.effect(d, nil)
	return Rate{Time, "month", math.Expm1(slope), se * math.Exp(slope), a.from(), 0}
}

// effect returns what a difference in the columns, and in the slopes, does to the
// log of the price, with its standard error.
func (a *adjuster) effect(d, slopesBy []float64) (effect, se float64) {
	f := a.m.fit
	effect = dot(f.beta, d)
	variance := dot(d, f.cov.times(d))
	if slopesBy != nil && a.local != nil {
		effect += dot(a.local.delta, slopesBy)
		with := append([]float64{0}, slopesBy...)
		variance += dot(with, a.local.cov.times(with))
	}
	if math.Abs(effect) < rounding {
		effect = 0
	}
	return effect, math.Sqrt(max(variance, 0))
}

// rounding is an effect on the log of a price under which there is none: a hundredth of a
// cent in $100,000.
const rounding = 1e-9

// rates returns what a unit more of each thing is worth at the subject, and what another
// kind of garage is that some sale has.
func (a *adjuster) rates(value float64) (out []Rate) {
	add := func(l Line, unit string, other *House) {
		if a.doubts(l) || !a.moves(l, other) {
			return
		}
		effect, se := a.effectOf(other)
		out = append(out, Rate{l, unit, value * math.Expm1(effect), value * math.Exp(effect) * se, a.from(), 0})
	}
	for _, u := range rateUnits {
		more := *a.s
		r, told := a.amountOf(u.line)
		if told && u.unit == aCar && carsOf(a.s).Known { // which no number need say: none, or attached
			more.Garage, more.GarageCars = "", Known(carsOf(a.s).Value+1)
		} else if !u.more(&more) {
			continue
		}
		if told && !(u.unit == aGarageSize && a.bySize()) {
			if by := apart(figure(u.line, &more), figure(u.line, a.s), 1); by != 0 {
				out = append(out, Rate{u.line, u.unit, r.Worth * by, r.Error * by, r.From, r.Pairs})
			}
			continue
		}
		add(u.line, u.unit, &more)
	}
	if _, ok := a.amountOf(Garage); !ok {
		for _, kind := range a.otherGarages() {
			other := *a.s
			other.Garage = kind
			add(Garage, garageInstead(kind), &other)
		}
	}
	for _, x := range a.choice.extras {
		out = append(out, Rate{Own, x.Name, x.Worth.InexactFloat64(), 0, "given", 0})
	}
	return out
}

// effectOf is what a house that differs from the subject in something would fetch more, of
// the log, with its standard error.
func (a *adjuster) effectOf(other *House) (effect, se float64) {
	k := len(a.m.design.traits)
	d := make([]float64, a.m.columns)
	a.m.design.at(other, d)
	for j := range k {
		d[j] -= a.at[j]
	}
	clear(d[k:])
	return a.effect(d, a.slopesBetween(other))
}

// moves reports whether a house differs from the subject in a figure of a line of which the
// sales tell the worth.
func (a *adjuster) moves(l Line, other *House) bool {
	row := make([]float64, len(a.m.design.traits))
	a.m.design.at(other, row)
	for j, t := range a.m.design.traits {
		if a.m.has(j, t, l) && row[j] != a.at[j] {
			return true
		}
	}
	return false
}

// otherGarages are the kinds of garage of the sales taken that are not the subject's.
func (a *adjuster) otherGarages() (out []string) {
	for _, k := range a.choice.Comps {
		if g := k.Garage; g != "" && a.s.Garage != "" && g != a.s.Garage && !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	slices.Sort(out)
	return out
}

func garageInstead(kind string) string {
	switch kind {
	case "none":
		return "house without a garage"
	case SomeGarage:
		return "garage of no said kind instead"
	}
	return "garage that is " + kind + " instead"
}

// slopesBetween returns by how many steps a house exceeds the subject.
func (a *adjuster) slopesBetween(h *House) []float64 {
	s := a.s
	return []float64{
		0, 0,
		apart(Fact{math.Log(h.Area.Value), h.Area.Known}, Fact{a.area, s.Area.Known}, 1),
		apart(Fact{logLot(h), h.Lot.Known}, Fact{a.lot, s.Lot.Known}, 1),
		apart(h.Bedrooms, s.Bedrooms, 1),
		apart(bathsOf(h), a.baths, 1),
		apart(h.Built, s.Built, 20),
		apart(h.GarageArea, s.GarageArea, 300),
	}
}
