package comps

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// timeApart is how many months must lie between a pair that tells the trend, and
// sameTime how many may where the trend is not known.
const timeApart, sameTime = 3, 4

// pairPlace is how far apart the houses of a pair may stand, metres.
const pairPlace = 1600

// mostPaired is how many sales are paired: of more it would take long, and they only
// lack traits to tell.
const mostPaired = 4 * regressFrom

// told is how far two houses may differ in a thing and still be alike in it, and how
// far they must for a pair to tell its worth; of the log for sizes.
var told = map[Line]struct{ alike, apart float64 }{
	Size: {0.07, 0.08}, Lot: {0.3, 0.3}, Rooms: {0, 0.5}, Baths: {0, 0.25}, Age: {8, 9}, Condition: {0, 0.5}, Garage: {0, 0.5},
}

// pairs estimates what each thing is worth in dollars by paired comparison: the
// median of what every pair alike but for the thing says of it, the market's trend
// first, unless that is given or not to be had. Where no pair tells there is nothing, which
// is better than a guess that nobody made.
func (c *Choice) pairs(trend bool) map[Line]Rate {
	m, out := c.market, map[Line]Rate{}
	if !m.byPairs || len(m.sales) > mostPaired {
		return out
	}
	own, like := make([]float64, len(m.sales)), c.comparable()
	for i, s := range m.sales {
		own[i] = c.extrasOf(s.Has) - c.extrasOf(c.Subject.Has) // what all have moves nothing
	}
	if x, ok := c.given[Time]; ok {
		out[Time] = Rate{Time, unitOf[Time], x, 0, "given", 0}
	}
	for _, l := range linear {
		if _, given := c.given[l]; given || l == Time && !trend {
			continue
		}
		var says []float64
		apart, used := 0, make([]bool, len(m.sales)) // pairs of which no two share a sale
		for a := range m.sales {
			for b := range a {
				if !like[a] || !like[b] {
					continue
				}
				d, ok := m.pair(out, c.given, own, a, b, l)
				if !ok {
					continue
				}
				says = append(says, d)
				if !used[a] && !used[b] {
					used[a], used[b] = true, true
					apart++
				}
			}
		}
		if len(says) > 0 {
			mid, se := middle(says)
			se *= math.Sqrt(float64(len(says)) / float64(apart)) // those that share one tell less than they are
			if apart == 1 {
				se = max(se, math.Abs(mid)) // as one pair, for an error in the sale they share is in all
			}
			if l == Time && len(says) == 1 { // which says nothing of its own error, even at equal prices
				se = max(se, UsualDrift)
			}
			out[l] = Rate{l, unitOf[l], shortly(l, mid), se, "pairs", len(says)}
		}
	}
	return out
}

// leastLike is the share of the weight of the most alike sale, by likeness, from which a sale is
// paired: of real sales of a county in tables of seven and one unlike the house, that one moved the
// value by more than a fiftieth in 17 of 106 with pairs of all, in 1 with this, and the error was
// as small.
const leastLike = 0.05

// comparable reports by sale whether it is like the subject at all: one quite unlike it, which
// would weigh next to nothing, is to tell nothing of what the others differ in either.
func (c *Choice) comparable() []bool {
	all, out := make([]pick, len(c.market.sales)), make([]bool, len(c.market.sales))
	for i := range all {
		all[i] = pick{i, c.like.to(i, 1e300)}
	}
	for i, w := range c.like.besideNearest(all) {
		out[i] = w >= leastLike
	}
	return out
}

// shortly rounds what a unit is worth, so that it can be shown as it is reckoned with:
// to the cent, of land to a hundredth of that, the market's change to a millionth.
func shortly(l Line, x float64) float64 {
	parts := 100.0
	switch l {
	case Lot:
		parts = 1e4
	case Time:
		parts = 1e6
	}
	return math.Round(x*parts) / parts
}

// middle is the median of what pairs say, and its standard error from their scatter.
func middle(says []float64) (mid, se float64) {
	slices.Sort(says)
	n := len(says)
	mid = (says[(n-1)/2] + says[n/2]) / 2
	if n == 1 {
		return mid, math.Abs(mid) // one pair says nothing of its own error
	}
	off := make([]float64, n)
	for i, v := range says {
		off[i] = v - mid
	}
	return mid, madScale(off) * math.Sqrt(math.Pi/2/float64(n))
}

// extrasOf is what extras of a house are worth together: a pair tells of none of them.
func (c *Choice) extrasOf(has []string) (sum float64) {
	for _, x := range c.extras {
		if slices.Contains(has, x.Name) {
			sum += x.Worth.InexactFloat64()
		}
	}
	return sum
}

// pair returns what two sales say of a unit of a thing, less what is theirs alone, in
// dollars of the day, or of the market's change in a month, and whether they are a pair
// for it.
func (m *Market) pair(known map[Line]Rate, given Given, own []float64, a, b int, l Line) (float64, bool) {
	x, y := m.sales[a], m.sales[b]
	gap := m.months[a] - m.months[b]
	trend, trended := known[Time]
	switch {
	case m.placed[a] && m.placed[b] && math.Hypot(m.east[a]-m.east[b], m.north[a]-m.north[b]) > pairPlace:
		return 0, false
	case x.Stated.Known && y.Stated.Known && math.Abs(x.Stated.Value-y.Stated.Value) > pairPlace: // apart by that at least
		return 0, false
	case l == Time && likelyRedone(x, y):
		return 0, false
	case l == Time && math.Abs(gap) < timeApart, l != Time && !trended && math.Abs(gap) > sameTime:
		return 0, false
	}
	p, q := x.Net().InexactFloat64(), y.Net().InexactFloat64()
	more, ok := given.alike(&x.House, &y.House, l)
	if !ok || math.Abs(more) > mostByEstimate*min(p, q) {
		return 0, false
	}
	if l == Time {
		p, q = p-own[a], q-own[b]
		if gap < 0 {
			p, q, gap, more = q, p, -gap, -more
		}
		p -= more // the later to the earlier
		return (p - q) / q / gap, p > 0 && q > 0
	}
	p, q = p*(1-trend.Worth*m.months[a])-own[a], q*(1-trend.Worth*m.months[b])-own[b] // in the order of the grid
	return (p - q - more) / apart(figure(l, &x.House), figure(l, &y.House), 1), true
}

// A house that sold again within so many days for so much more was likely redone between
// (common practice, no source).
const (
	soonAgain = 366
	muchMore  = 0.20
)

// Redone reports whether a house that was sold first as one sale says, and again as the
// other does, was likely redone between, and by what share it sold for more.
func Redone(first, again *Sold) (up float64, likely bool) {
	days := quantity.DaysBetween(first.Date, again.Date)
	up = again.Price.InexactFloat64()/first.Price.InexactFloat64() - 1
	return up, days > 0 && days <= soonAgain && up > muchMore && SameAddress(first.Label, again.Label)
}

func likelyRedone(a, b *Sold) bool {
	_, then := Redone(a, b)
	_, before := Redone(b, a)
	return then || before
}

// alike reports whether two houses are alike in all but one thing, in which they must
// differ. What has an amount that is given counts as alike: by those the first house is worth
// so many dollars more.
func (g Given) alike(a, b *House, but Line) (more float64, ok bool) {
	for _, w := range words {
		if w.of(a) != w.of(b) && w.line == Style {
			return 0, false
		}
	}
	for _, l := range linear[1:] {
		x, y := figure(l, a), figure(l, b)
		far := math.Abs(apart(x, y, 1))
		if (l == Size || l == Lot) && far > 0 {
			far = math.Abs(math.Log(x.Value / y.Value))
		}
		worth, given := g[l]
		switch {
		case l == but && (!x.Known || !y.Known || far < told[l].apart):
			return 0, false
		case l != but && (x.Known != y.Known || !given && far > told[l].alike):
			return 0, false
		}
		more += worth * apart(x, y, 1)
	}
	return more, true
}

// mostByEstimate is the most that what sales say of one thing may move a price, as a share
// of it: two that differ by chance can say anything (common practice, no source).
const mostByEstimate = 0.5

// byBelief takes what pairs say as far as it can be believed. A trend that is not leaves no
// mark: the other pairs are drawn again without it.
func (a *adjuster) byBelief() {
	a.told = a.believed(a.choice.pairs(true))
	if at := slices.IndexFunc(a.doubted, func(d Disbelief) bool { return d.Line == Time }); at >= 0 {
		a.doubted = []Disbelief{a.doubted[at]}
		a.told = a.believed(a.choice.pairs(false))
	}
}

// believed leaves out what pairs say where a unit would be worth less than nothing, or it
// would move by more than half the prices of sales that count, the largest part first.
func (a *adjuster) believed(told map[Line]Rate) map[Line]Rate {
	if len(told) == 0 {
		return nil
	}
	out := maps.Clone(told)
	maps.DeleteFunc(out, func(l Line, _ Rate) bool { _, given := a.given[l]; return given })
	doubt := func(d Disbelief) {
		delete(out, d.Line)
		a.doubted = append(a.doubted, d)
	}
	for _, n := range never {
		if r, ok := out[n.line]; ok && r.Worth < 0 {
			why := fmt.Sprintf(wouldBeWorth, n.unit, quantity.FormatMoney(decimal.NewFromFloat(r.Worth*n.units)))
			doubt(Disbelief{Line: n.line, Why: why, From: byPairs})
		}
	}
	for {
		d, ok := a.movedFar(out)
		if !ok {
			return out
		}
		doubt(d)
	}
}

// countTogether is the weight by likeness from which sales that what pairs say would move too far
// speak against it: one quite unlike the subject weighs less, and says nothing of what the others
// differ in (common practice, no source).
const countTogether = 0.05

// movedFar is the largest part of what pairs say of the sale that counts most of those whose
// prices it would move by more than half, if they count together.
func (a *adjuster) movedFar(told map[Line]Rate) (d Disbelief, ok bool) {
	picks := a.choice.picks()
	weights := a.alike(picks)
	together, most := 0.0, 0.0
	for n, p := range picks {
		sum, largest, by := 0.0, Line(-1), 0.0
		for _, l := range linear {
			r, known := told[l]
			if !known {
				continue
			}
			share := a.byUnits(l, r, p.i).InexactFloat64() / a.m.sales[p.i].Price.InexactFloat64()
			if sum += share; math.Abs(share) > math.Abs(by) {
				largest, by = l, share
			}
		}
		if max(math.Abs(by), math.Abs(sum)) <= mostByEstimate {
			continue
		}
		if together += weights[n]; weights[n] <= most {
			continue
		}
		most = weights[n]
		d = Disbelief{Line: largest, From: byPairs, Sale: a.m.sales[p.i].Name(), Why: fmt.Sprintf(wouldMove, a.m.sales[p.i].Name(), shareInWords(by))}
		if math.Abs(by) <= mostByEstimate {
			d.Why += ", and all that pairs say, without what you give, by " + shareInWords(sum)
		}
	}
	return d, together >= countTogether
}
