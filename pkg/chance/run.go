package chance

import (
	"context"
	"errors"
	"math"

	"ledgerboard/pkg/odds"
)

// run carries the trials out.
func (q *question) run(ctx context.Context) (err error) {
	q.tally = newTally(q.options.Confidence)
	q.found, err = odds.Run(ctx, odds.Plan{
		Spreads: q.spreads, Ties: q.ties, Outputs: figures + len(q.odds.Watched), Events: q.events(),
		Seed: q.options.Seed, Trials: q.options.Trials, Workers: q.options.Workers,
		Worker: q.worker, Seen: q.seen, May: []int{Return},
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
		if err := offers.Run(in, out[Offer]); err != nil {
			return err
		}
		for i, cash := range out[Cash] {
			if out[Return][i] *= 100; cash <= 0 {
				out[Return][i] = math.NaN()
			}
		}
		timeless(out[Months], out)
		return nil
	}
}

// timeless takes the answers from trials in which no time passes: a plan like that is refused.
func timeless(months []float64, out [][]float64) {
	for i, m := range months {
		if m > 0 {
			continue
		}
		for _, x := range out {
			x[i] = math.NaN()
		}
	}
}

// seen hands the trials on, with offers that can be counted.
func (q *question) seen(in, out [][]float64) error {
	for i, x := range out[Offer] {
		if math.IsInf(x, -1) {
			q.odds.NoOffer++
		}
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
	o.NoReturn = o.Trials - o.Figures[Return].Trials()
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
var ErrNoTrials = errors.New("no trial has an answer: the times that are drawn leave no hold")
