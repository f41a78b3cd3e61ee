package chance

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/odds"
)

const noSource = "common practice, no source"

// Scatters is why a value by comparables goes as far as it does, ScattersBelow why a stated one
// above theirs does, ScattersUnder why one above all of their range does, and ScattersAside why
// one under theirs does.
const (
	Scatters      = "as far as the comparables leave it open"
	ScattersBelow = Scatters + " about their own value, which is lower than yours; yours lifts neither end"
	ScattersAside = Scatters + " about their own value, by the same shares about yours, which is lower"
	ScattersUnder = Scatters + " about their own value, but up to yours, which is above all that; yours does not lift the low end"
)

// How far the usual causes of trouble go; common practice, no source.
var (
	valueLow      = decimal.New(8, -2)    // the house is worth 8% less than thought, one in ten
	valueHigh     = decimal.New(5, -2)    // or 5% more
	overrunHigh   = decimal.New(25, -2)   // the works cost 25 points of the bids more than is likely, one in ten
	pacedWidens   = decimal.New(5, -2)    // sizes that were paced widen that by 5 points on either side
	guessedWidens = decimal.New(10, -2)   // guessed ones by 10
	stalledMost   = decimal.NewFromInt(3) // months that works stand still at most
	unsoldHigh    = decimal.NewFromInt(2) // months on the market beyond the plan, one in ten
	half          = decimal.New(5, -1)
)

// A plan is a deal of which the usual ranges are asked.
type plan struct {
	deal *deal.Deal
}

// line is what a line of the deal comes to in the plan.
func (p plan) line(name string) (decimal.Decimal, error) {
	v, err := exact.Known(p.deal.Known)
	if err != nil {
		return decimal.Zero, err
	}
	return v.Of(p.deal.Model.Find(p.deal.Root, name)), nil
}

// usual is a range that is assumed.
func (p plan) usual(path string, means odds.Meaning, low, likely, high decimal.Decimal, why string) (*Range, error) {
	in, ok := p.deal.InputNamed(path)
	if !ok {
		return nil, fmt.Errorf("the deal file has no input %s", path)
	}
	return &Range{Input: in, Low: low, Likely: likely, High: high, Means: means, Spread: deal.PERT, Assumed: true, Why: why}, nil
}

// sale is what the house will be worth: by the low value of the file, or as far as the sold
// houses that it names scatter. A value that is stated is no sale: one above theirs lifts
// neither end, as it lifts no low value, but is the high end where it is above that too; one
// under theirs takes both down.
func (p plan) sale() (*Range, error) {
	const path = "value.after-repair value"
	likely, err := p.line("after_repair_value")
	if err != nil {
		return nil, err
	}
	if sold, ok := p.deal.ValueRange(); ok && p.deal.Root.Given.Of("low_value").Text == "" {
		low, err := p.line("low_value")
		if err != nil {
			return nil, err
		}
		why := Scatters
		if low.LessThan(likely.Sub(sold.Likely.Sub(sold.Low))) {
			why = ScattersBelow
			if likely.GreaterThan(sold.High) {
				why = ScattersUnder
			}
		}
		high := sold.High.Add(low.Sub(sold.Low))
		if low.LessThan(sold.Low) { // by a share
			why = ScattersAside
			share, err := p.line("comps_high_share")
			if err != nil {
				return nil, err
			}
			high = likely.Mul(share).Round(0)
		}
		high = decimal.Max(likely, high)
		return p.usual(path, odds.OneInTen, low, likely, high, why)
	}
	low, err := p.line("low_value")
	if err != nil {
		return nil, err
	}
	if low.LessThan(likely) {
		high := likely.Add(likely.Sub(low).Mul(half)).Round(0)
		return p.usual(path, odds.OneInTen, low, likely, high, "the low value of the deal; half as far above, "+noSource)
	}
	one := decimal.NewFromInt(1)
	low, high := likely.Mul(one.Sub(valueLow)).Round(0), likely.Mul(one.Add(valueHigh)).Round(0)
	why := "8% less to 5% more, " + noSource
	if p.deal.Root.Given.Of("low_value").Text != "" {
		why += "; the low value is no lower than this one, so it tells no range"
	}
	return p.usual(path, odds.OneInTen, low, likely, high, why)
}

// overrun is how far spending goes over the bids. What is likely is the contingency of the
// plan, or the customary one if that is more.
func (p plan) overrun() (*Range, error) {
	base, err := p.line("base_cost")
	if err != nil || !base.IsPositive() {
		return nil, err
	}
	likely, err := p.line("contingency_share")
	if err != nil {
		return nil, err
	}
	why := "nothing over the bids to the contingency and 25 points more, " + noSource
	if usual, _ := caution.SuggestedContingency(p.deal.YearBuilt, p.deal.UtilitiesOff); usual.GreaterThan(likely) {
		likely, why = usual, "nothing over the bids to what is customary for the age and 25 points more, "+noSource
		if p.deal.YearBuilt == 0 {
			why = "nothing over the bids to what is customary for a house of unknown age and 25 points more, " + noSource
		}
	}
	low, high := decimal.Zero, likely.Add(overrunHigh)
	widen, sizes := decimal.Zero, ""
	if len(p.deal.Sized["paced"]) > 0 {
		widen, sizes = pacedWidens, "paced"
	}
	if len(p.deal.Sized["guessed"]) > 0 {
		widen, sizes = guessedWidens, "guessed"
	}
	if sizes != "" {
		low, high = low.Sub(widen), high.Add(widen)
		why += "; wider, since sizes are " + sizes
	}
	return p.usual("overrun", odds.OneInTen, low, likely, high, why)
}

// standstill is how long the works stand still.
func (p plan) standstill() (*Range, error) {
	long, err := p.line("renovation")
	if err != nil || !long.IsPositive() {
		return nil, err
	}
	now, err := p.line("standstill")
	if err != nil {
		return nil, err
	}
	more := ""
	if now.IsPositive() {
		more = " more than planned"
	}
	return p.usual("time.standstill", odds.AtEnds, decimal.Zero, now, now.Add(stalledMost), "none to 3 months"+more+", "+noSource)
}

// marketing is how long the house is on the market.
func (p plan) marketing() (*Range, error) {
	likely, err := p.line("marketing")
	if err != nil {
		return nil, err
	}
	return p.usual("time.marketing", odds.OneInTen, likely.Mul(half), likely, likely.Add(unsoldHigh), "half of the plan to 2 months more, "+noSource)
}
