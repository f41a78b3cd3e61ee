package comps

import (
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// Disbelief is a line that is not adjusted, since what is said of it cannot be so.
type Disbelief struct {
	Line Line
	Why  string // "a car of garage would be worth -$52,423"
	From string // who says it: "the regression says", "pairs of sales say"
	Sale string // whose price would be moved too far; "" for another reason
}

// String says it as a sentence.
func (d Disbelief) String() string {
	return fmt.Sprintf("What %s of %s is not believed, so it is not adjusted: %s.", d.From, d.Line, d.Why)
}

const byRegression, byPairs = "the regression says", "pairs of sales say"

// surely is how many standard errors a size's effect must lie from none to be believed
// though it moves a price by more than half: houses differ by as much in size, and no
// adjustment would be worse (common practice, no source).
const surely = 3

// never are what is not worth less than nothing: a unit more of each.
var never = []struct {
	line  Line
	unit  string
	units float64           // of what pairs tell of the line
	more  func(*House) bool // false if the subject's is not known
	few   bool              // by pairs alone: a regression says near nothing with either sign
}{
	{Size, "a sq ft", 1, func(h *House) bool { h.Area.Value++; return h.Area.Known }, false},
	{Baths, "a full bath", 1, func(h *House) bool { h.FullBaths.Value++; return h.FullBaths.Known }, false},
	{Lot, "1,000 sq ft of lot", 1000, func(h *House) bool { h.Lot.Value += 1000; return h.Lot.Known }, true},
	{Condition, "a step of condition", 1, func(h *House) bool { h.Condition.Value++; return h.Condition.Known }, true},
	{Garage, "a car of garage", 1, func(h *House) bool { h.GarageCars.Value++; return h.GarageCars.Known && h.Garage != "none" }, false},
	{Garage, "100 sq ft of garage", 0, func(h *House) bool { h.GarageArea.Value += 100; return h.GarageArea.Known && h.Garage != "none" }, false},
}

const (
	wouldBeWorth = "%s would be worth %s"
	wouldMove    = "it would move the price of %s by %s"
)

// shareInWords is a share in percent, and in words where it is of no meaning any more.
func shareInWords(share float64) string {
	if math.Abs(share) > mostTimes {
		return fmt.Sprintf("more than %s times", quantity.FormatCount(decimal.NewFromInt(mostTimes), 0))
	}
	return fmt.Sprintf("%.0f%%", 100*share)
}

const mostTimes = 1000

// disbelieve finds the lines whose amounts by regression have the wrong sign at the
// subject, or would move the price of a sale taken by more than half.
func (a *adjuster) disbelieve(value float64) (out []Disbelief) {
	if a.m.byPairs {
		return a.doubted // those that pairs gave
	}
	found := map[Line]bool{}
	say := func(l Line, sale, why string) {
		if _, given := a.amountOf(l); (!given || l == Garage && a.bySize()) && !found[l] {
			found[l] = true
			out = append(out, Disbelief{l, why, byRegression, sale})
		}
	}
	for _, n := range never {
		more := *a.s
		if _, given := a.amountOf(n.line); n.few || !n.more(&more) || given && n.units > 0 {
			continue
		}
		if effect, _ := a.effectOf(&more); effect < 0 {
			say(n.line, "", fmt.Sprintf(wouldBeWorth, n.unit, quantity.FormatDollars(dollars(value*math.Expm1(effect)))))
		}
	}
	for _, k := range a.choice.Comps {
		logs := a.logs(k.pick.i)
		for l := Time; l < Own; l++ {
			share := math.Expm1(logs[l])
			if math.Abs(share) > mostByEstimate && !a.sure(l, &k.House) {
				say(l, k.Name(), fmt.Sprintf(wouldMove, k.Name(), shareInWords(share)))
			}
		}
	}
	return out
}

// sure reports whether the effect of a size is well told apart from none.
func (a *adjuster) sure(l Line, sale *House) bool {
	other := *a.s
	switch l {
	case Size:
		other.Area = sale.Area
	case Lot:
		other.Lot = sale.Lot
	default:
		return false
	}
	effect, se := a.effectOf(&other)
	return math.Abs(effect) > surely*se
}

// doubts reports whether the estimate of a line is not believed.
func (a *adjuster) doubts(l Line) bool {
	return slices.ContainsFunc(a.doubted, func(d Disbelief) bool { return d.Line == l })
}

// middlePrice is the median of what the sales taken sold for, dollars.
func (a *adjuster) middlePrice() float64 {
	prices := make([]float64, len(a.choice.Comps))
	for i, k := range a.choice.Comps {
		prices[i] = k.Net().InexactFloat64()
	}
	slices.Sort(prices)
	return prices[(len(prices)-1)/2]
}
