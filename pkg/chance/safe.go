package chance

import (
	"context"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/odds"
)

// Safe is the safe offer: the highest whole-dollar price at which all targets hold with the
// asked confidence.
type Safe struct {
	Found bool
	Price decimal.Decimal
	Error float64       // its standard error, in dollars
	Holds odds.Estimate // how often all targets hold at that price, counted; at a price of 0 if none is found
}

// safe finds the safe offer. No price above the offers of so many trials can hold in more of
// them; where targets fail only once as the price rises, that is the answer. It is counted
// at the price itself, in the same trials, and where it does not hold as often a lower one
// is looked for.
func (q *question) safe(ctx context.Context) error {
	o := q.odds
	if o.Trials == 0 {
		return ErrNoTrials
	}
	need := int64(math.Ceil(o.Confidence*float64(o.Trials) - 1e-9))
	price, known := q.tally.highest(need)
	if !known {
		price = math.Ceil(o.Figures[Offer].Quantile(1 - o.Confidence))
	}
	o.Safe.Error = o.Figures[Offer].Percentile(1 - o.Confidence).Error
	holds := func(price float64) (bool, error) {
		n, err := q.holdsAt(ctx, price)
		if n < need || err != nil {
			if price == 0 {
				o.Safe.Holds = odds.Chance(n, o.Trials)
			}
			return false, err
		}
		o.Safe.Found, o.Safe.Price, o.Safe.Holds = true, decimal.NewFromFloat(price), odds.Chance(n, o.Trials)
		return true, nil
	}
	return lower(price, holds)
}

// lower tries prices from one down, in ever longer steps, until one holds, and then halves
// the way back up.
func lower(price float64, holds func(float64) (bool, error)) error {
	high, step := price+1, 1.0 // it does not hold at high
	for low := price; ; low, step = max(0, low-step), step*2 {
		ok, err := holds(low)
		if err != nil {
			return err
		}
		if ok {
			return between(low, high, holds)
		}
		if high = low; low == 0 {
			return nil
		}
	}
}

// between halves the way from a price that holds to one that does not.
func between(low, high float64, holds func(float64) (bool, error)) error {
	for high-low > 1 {
		mid := math.Floor((low + high) / 2)
		ok, err := holds(mid)
		if err != nil {
			return err
		}
		if ok {
			low = mid
		} else {
			high = mid
		}
	}
	return nil
}

// holdsAt counts the trials in which all targets hold at a price.
func (q *question) holdsAt(ctx context.Context, price float64) (int64, error) {
	m := q.deal.Model
	trial, err := q.at(append(slices.Clip(q.odds.Watched), figureLines[Months]), exact.Change{Cell: m.Find(m.Root, "price"), Value: decimal.NewFromFloat(price)})
	if err != nil {
		return 0, err
	}
	var all odds.Event
	for i := range q.odds.Watched {
		all = append(all, odds.Limit{Output: i, Least: nearly})
	}
	found, err := odds.Run(ctx, odds.Plan{
		Spreads: q.spreads, Ties: q.ties, Outputs: len(q.odds.Watched) + 1, Events: []odds.Event{all},
		Seed: q.options.Seed, Trials: q.options.Trials, Workers: q.options.Workers,
		Worker: func() func(in, out [][]float64) error {
			w := trial.Worker()
			return func(in, out [][]float64) error {
				err := w.Run(in, out)
				timeless(out[len(out)-1], out)
				return err
			}
		},
	})
	if err != nil {
		return 0, err
	}
	return found.Trials - found.Happened(0), nil
}
