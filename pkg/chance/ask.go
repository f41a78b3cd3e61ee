package chance

import (
	"context"
	"errors"
	"runtime"
	"slices"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/solve"
)

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
	ranges, err := Ranges(d)
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
	return fast.Ask(m, q.axes, want, slices.Concat(q.planned, changes)...)
}

// plan works out what the figures are in the plan.
func (q *question) plan() error {
	v, err := exact.Known(q.deal.Known)
	if err != nil {
		return err
	}
	line := func(name string) decimal.Decimal { return v.Of(q.deal.Model.Find(q.deal.Root, name)) }
	for i, name := range figureLines {
		q.odds.Plan[i] = line(name)
	}
	q.odds.Plan[Return] = q.odds.Plan[Return].Shift(2)
	q.most = furthest * line("after_repair_value").InexactFloat64()
	return nil
}
