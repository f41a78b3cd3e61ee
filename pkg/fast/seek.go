package fast

import (
	"fmt"

	"ledgerboard/pkg/model"
)

// A Seeker tries one axis at several values in each trial.
type Seeker interface {
	// Start is the first value to try in a trial.
	Start(trial int) float64
	// Next is given what the wanted cells come to at x. It returns the next value to try,
	// or that the trial is settled. It must not keep found.
	Next(trial int, x float64, found []float64) (next float64, more bool)
}

// AskSeeking is Ask with one axis more, the last, which a Seeker moves: only what follows
// it is worked out again at each value. The number of months must not follow it.
func AskSeeking(m *model.Model, axes []Axis, sought Axis, want []*model.Cell, changes ...Change) (*Question, error) {
	q, err := Ask(m, append(axes[:len(axes):len(axes)], sought), want, changes...)
	if err != nil {
		return nil, err
	}
	q.sought = len(axes)
	if q.months != nil && q.months.in[q.sought] >= 0 {
		return nil, fmt.Errorf("the number of months follows %s", sought.Cell.Name())
	}
	return q, nil
}

// seeking is what a worker needs to seek.
type seeking struct {
	trials [block]int // by place in the block, -1 for one that is settled
	found  []float64
}

// Seek has a seeker settle n trials, of which in has the values of each axis but the last.
// Trials that have no answer, as Run has it, are never started.
func (w *Worker) Seek(in [][]float64, n int, s Seeker) error {
	return w.byMonths(in, n, func(months, from, start, end int) error {
		if months < 0 {
			return nil
		}
		c, err := w.code(months)
		if err != nil {
			return err
		}
		w.ready(c)
		for ; start < end; start += block {
			some := w.order[start:min(start+block, end)]
			w.load(c, in, from, some)
			c.run(c.steps, w.memory, len(some))
			for i, t := range some {
				w.seeking.trials[i] = from + int(t)
			}
			w.settle(c, len(some), s)
		}
		return nil
	}, func(int, int) {})
}

// settle tries values until each of n trials is settled.
func (w *Worker) settle(c *code, n int, s Seeker) {
	var none [block]float64
	x := none[:] // of an axis that does not matter
	if at := c.in[w.question.sought]; at >= 0 {
		x = w.memory[at:][:block]
	}
	trials := w.seeking.trials[:n]
	for i, t := range trials {
		x[i] = s.Start(t)
	}
	for left := len(trials); left > 0; {
		c.run(c.again, w.memory, len(trials))
		for i, t := range trials {
			if t < 0 {
				continue
			}
			w.seeking.found = w.seeking.found[:0]
			for _, at := range c.out {
				w.seeking.found = append(w.seeking.found, w.memory[int(at)+i])
			}
			next, more := s.Next(t, x[i], w.seeking.found)
			if x[i] = next; !more {
				trials[i] = -1
				left--
			}
		}
		if left < len(trials)*3/4 {
			w.gather(c, x, trials)
			trials = trials[:left]
		}
	}
}

// gather moves the trials that are not settled to the front.
func (w *Worker) gather(c *code, x []float64, trials []int) {
	to := 0
	for i, t := range trials {
		if t < 0 {
			continue
		}
		if to < i {
			x[to], trials[to] = x[i], t
			for _, at := range c.kept {
				w.memory[int(at)+to] = w.memory[int(at)+i]
			}
		}
		to++
	}
}
