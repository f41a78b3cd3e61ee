package chance

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/model"
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
	Given
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
	Return            // on the cash needed, in percent
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

// A question is the odds of a deal being worked out.
type question struct {
	deal    *deal.Deal
	options Options
	odds    *Odds
	spreads []odds.Spread
	ties    *odds.Ties
	axes    []fast.Axis
	planned []exact.Change
	trial   *fast.Question // the figures before the offer, then the targets
	offers  *solve.Offers
	found   *odds.Found
	tally   *tally
	most    float64 // an offer beyond which none is told apart
}

// Ask works the odds of a deal out. A context that ends ends it with the context's error
// and what the trials before come to.
func Ask(ctx context.Context, d *deal.Deal, o Options) (*Odds, error) {
	q, err := prepare(d, o)
	if err != nil {
		return nil, err
	}
	var plan sync.WaitGroup
	var noPlan error
	plan.Go(func() { q.odds.PlanOffer, noPlan = planOffer(d) })
	err = q.run(ctx)
	if plan.Wait(); noPlan != nil {
		return nil, noPlan
	}
	if err != nil && !errors.Is(err, context.Canceled) && !errors.Is(err, context.DeadlineExceeded) {
		return nil, err
	}
	if q.read(); err != nil {
		return q.odds, err
	}
	return q.odds, q.safe(ctx)
}

// planOffer finds the maximum offer of the plan.
func planOffer(d *deal.Deal) (solve.Offer, error) {
	v, err := exact.Known(d.Known)
	if err != nil {
		return solve.Offer{}, err
	}
	small, err := d.Model.Summary(v.Of)
	if err != nil {
		return solve.Offer{}, err
	}
	return solve.MaxOffer(small, d.Targets)
}

func prepare(d *deal.Deal, o Options) (*question, error) {
	if o.Workers == 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	ranges, err := Ranges(d, o.Given)
	if err != nil {
		return nil, err
	}
	q := &question{deal: d, options: o, odds: &Odds{
		Deal: d, Ranges: ranges, Ties: Ties(d, ranges), Seed: o.Seed, Confidence: o.Confidence, Watched: solve.Targets(d.Targets),
	}}
	if q.spreads, q.ties, err = draws(ranges, q.odds.Ties); err != nil {
		return nil, err
	}
	vary := make([]*model.Cell, len(ranges))
	for i, r := range ranges {
		vary[i] = r.Cell
		least, most := q.spreads[i].Ends()
		q.axes = append(q.axes, fast.Axis{Cell: r.Cell, Least: least, Most: most})
	}
	if q.planned, err = Planned(d.Model, vary...); err != nil {
		return nil, err
	}
	if q.trial, err = q.at(append(figureLines[:], q.odds.Watched...)); err != nil {
		return nil, err
	}
	if q.offers, err = solve.AskOffers(d.Model, d.Targets, q.axes, q.planned...); err != nil {
		return nil, err
	}
	return q, q.plan()
}

// at is the question for lines of the deal with some changes beside the planned ones.
func (q *question) at(lines []string, changes ...exact.Change) (*fast.Question, error) {
	m := q.deal.Model
	var want []*model.Cell
	for _, line := range lines {
		want = append(want, m.Find(m.Root, line))
	}
	var all []fast.Change
	for _, c := range append(q.planned[:len(q.planned):len(q.planned)], changes...) {
		all = append(all, fast.Change(c))
	}
	return fast.Ask(m, q.axes, want, all...)
}

// plan works out what the figures are in the plan.
func (q *question) plan() error {
	m := q.deal.Model
	var want []*model.Cell
	for _, line := range figureLines {
		want = append(want, m.Find(m.Root, line))
	}
	v, err := exact.Evaluate(m, want...)
	if err != nil {
		return err
	}
	for i, c := range want {
		q.odds.Plan[i] = v.Of(c)
	}
	q.odds.Plan[Return] = q.odds.Plan[Return].Shift(2)
	value := m.Find(m.Root, "after_repair_value")
	if v, err = exact.Evaluate(m, value); err != nil {
		return err
	}
	q.most = furthest * v.Of(value).InexactFloat64()
	return nil
}

// run carries the trials out.
func (q *question) run(ctx context.Context) (err error) {
	q.tally = newTally(q.options.Confidence, q.options.Trials)
	q.found, err = odds.Run(ctx, odds.Plan{
		Spreads: q.spreads, Ties: q.ties, Outputs: figures + len(q.odds.Watched), Events: q.events(),
		Seed: q.options.Seed, Trials: q.options.Trials, Workers: q.options.Workers,
		Worker: q.worker, Seen: q.seen,
	})
	return err
}

// worker works the figures of trials out.
func (q *question) worker() func(in, out [][]float64) error {
	trial, offers := q.trial.Worker(), q.offers.Worker()
	return func(in, out [][]float64) error {
		lines := make([][]float64, 0, 16)
		lines = append(append(lines, out[:Offer]...), out[figures:]...)
		if err := trial.Run(in, lines); err != nil {
			return err
		}
		for i := range out[Return] {
			out[Return][i] *= 100
		}
		return offers.Run(in, out[Offer])
	}
}

// seen hands the trials on, with offers that can be counted.
func (q *question) seen(in, out [][]float64) error {
	for i, x := range out[Offer] {
		out[Offer][i] = max(0, min(q.most, x))
	}
	q.tally.add(out[Offer])
	if q.options.Seen == nil {
		return nil
	}
	return q.options.Seen(Shown{in, out, q.odds})
}

// The events that are watched, by place: a loss, any target missed, cash beyond all she has,
// then each target.
const (
	loss = iota
	anyMissed
	beyond
	missed
)

func (q *question) events() []odds.Event {
	all := []odds.Event{{{Output: Profit, Least: nearly}}, {}, {}}
	for i, line := range q.odds.Watched {
		l := odds.Limit{Output: figures + i, Least: nearly}
		all[anyMissed] = append(all[anyMissed], l)
		all = append(all, odds.Event{l})
		if line == "cash_to_spare" {
			kept := q.deal.Root.Given.Of("cash_reserve").Number.InexactFloat64()
			all[beyond] = odds.Event{{Output: figures + i, Least: nearly - kept}}
		}
	}
	return all
}

// read puts together what the trials come to.
func (q *question) read() {
	o, f := q.odds, q.found
	o.Trials, o.None = f.Trials, f.None
	copy(o.Figures[:], f.Outputs)
	o.Loss, o.AnyMissed = f.Chance(loss), f.Chance(anyMissed)
	for i := range o.Watched {
		o.Missed = append(o.Missed, f.Chance(missed+i))
	}
	if q.deal.HasCash {
		e := f.Chance(beyond)
		o.Beyond = &e
	}
}

// ErrNoTrials is that no trial has an answer.
var ErrNoTrials = fmt.Errorf("no trial has an answer: the times that are drawn leave no hold")
