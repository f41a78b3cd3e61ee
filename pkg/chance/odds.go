package chance

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/solve"
)

// What Ask takes where it is not told otherwise.
const (
	UsualTrials     = 50_000
	UsualSeed       = 1
	UsualConfidence = 0.8
)

// Options say how the odds of a deal are worked out.
type Options struct {
	Trials     int
	Seed       uint64
	Confidence float64 // with which the targets are to hold at the safe offer
	Workers    int     // 0 for as many as there are processors
	// Seen, if set, is shown the trials in blocks, in order. It must not keep them.
	Seen func(Shown) error
}

// Shown is a block of trials.
type Shown struct {
	In  [][]float64 // what was drawn, by range and trial
	Out [][]float64 // the figures, then the targets, by trial; no number where there is no answer
	of  *Odds
}

// Trials is how many they are.
func (s Shown) Trials() int { return len(s.Out[0]) }

// Inputs are the paths of what was drawn.
func (s Shown) Inputs() (paths []string) {
	for _, r := range s.of.Ranges {
		paths = append(paths, r.Path)
	}
	return paths
}

// Watched are the lines of the targets.
func (s Shown) Watched() []string { return s.of.Watched }

// The figures of a trial; behind them the targets that are watched.
const (
	Profit     = iota // the owner's
	AfterHours        // the same after paying her own hours at trade price
	Return            // on the cash needed, in percent; no number where none is
	Cash              // needed
	Months            // owned
	Offer             // the maximum offer: 0 where no price will do, the furthest looked at where all do
	figures
)

// figureLines are the model's lines of the figures before the offer.
var figureLines = [...]string{"owner_profit", "profit_after_own_hours", "roi", "cash_needed", "hold_months"}

// furthest is the highest offer told apart, as a multiple of the after-repair value.
const furthest = 10

// nearly is how far under 0 a line that stands at 0 may come out in float64.
const nearly = -1e-7

// Odds are what may come of a deal.
type Odds struct {
	Deal       *deal.Deal
	Ranges     []Range
	Ties       []Tie
	Seed       uint64
	Trials     int64 // that have an answer
	None       int64 // that have none
	NoOffer    int64 // in which no price holds all targets
	NoReturn   int64 // in which no cash is needed, so that there is no return on it
	Confidence float64

	Figures   [figures]*odds.Histogram
	Plan      [Offer]decimal.Decimal // what the plan comes to, by figure
	Loss      odds.Estimate          // the chance that the owner loses money
	Watched   []string               // the lines of the targets that are watched
	Missed    []odds.Estimate        // the chance of missing each
	AnyMissed odds.Estimate
	Beyond    *odds.Estimate // the chance that cash runs past all she has; nil if the file does not say
	PlanOffer solve.Offer    // the plain maximum offer
	Safe      Safe
}

// PlanReturns reports whether the plan needs cash, so that there is a return on it.
func (o *Odds) PlanReturns() bool { return o.Plan[Cash].IsPositive() }
