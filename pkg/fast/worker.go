package fast

import (
	"math"

	"ledgerboard/pkg/internal/flat"
)

// A Worker works trials of a question out in memory of its own, one call at a time.
type Worker struct {
	question *Question
	memory   []float64
	codes    []*code // by number of months, as far as met
	months   [batch]int16
	order    [batch]int16 // the trials by their months
	place    [batch]int16 // by trial, its place in that order
	sorted   []float64    // results in that order, one wanted cell after the other
	ends     []int        // by number of months + 1, where the trials of that length end
	seeking  seeking
}

// batch is how many trials are put in the order of their months at a time.
const batch = 16384

// Worker returns a new worker.
func (q *Question) Worker() *Worker { return &Worker{question: q} }

// Run works trials out: in has the values of each axis, out takes those of each wanted
// cell, both by trial. A trial comes out the same whatever trials stand beside it. One
// with an axis past its ends, or with a hold under 0 or over 1200 months, which the exact
// reader refuses too, comes out as no number. The error is of what does not vary in
// months that were not met before.
func (w *Worker) Run(in, out [][]float64) error {
	n := 0
	if len(out) > 0 {
		n = len(out[0])
	}
	if len(w.sorted) < len(out)*batch {
		w.sorted = make([]float64, len(out)*batch)
	}
	return w.byMonths(in, n, func(months, from, start, end int) error {
		return w.sameMonths(months, in, len(out), from, start, end)
	}, func(from, n int) {
		for k, o := range out { // by trial: loads out of order cost less than stores
			to, x := o[from:][:n], w.sorted[k*batch:][:batch]
			for i, p := range w.place[:n] {
				to[i] = x[p&(batch-1)]
			}
		}
	})
}

// byMonths takes n trials a batch at a time, and of each batch those of one number of
// months together: they stand in the order from start to end, named by their place after
// from. Through is told of each batch that is done.
func (w *Worker) byMonths(in [][]float64, n int, do func(months, from, start, end int) error, through func(from, n int)) error {
	for from := 0; from < n; from += batch {
		some := min(batch, n-from)
		w.findMonths(in, from, some)
		w.checkEnds(in, from, some)
		w.sort(some)
		start := 0
		for m, end := range w.ends {
			if start < end {
				if err := do(m-1, from, start, end); err != nil {
					return err
				}
			}
			start = end
		}
		through(from, some)
	}
	return nil
}

// findMonths finds the number of months of each trial, -1 for one that has none.
func (w *Worker) findMonths(in [][]float64, from, n int) {
	c := w.question.months
	if c == nil {
		for i := range w.months[:n] {
			w.months[i] = int16(w.question.flat.Last)
		}
		return
	}
	w.ready(c)
	for at := 0; at < n; at += block {
		some := w.months[at:min(at+block, n)]
		for a, to := range c.in {
			if to >= 0 {
				copy(w.memory[to:][:len(some)], in[a][from+at:])
			}
		}
		c.run(c.steps, w.memory, len(some))
		for i, x := range w.memory[c.out[0]:][:len(some)] {
			some[i] = int16(flat.Whole(x))
		}
	}
}

// checkEnds takes out the trials with an axis past its ends.
func (w *Worker) checkEnds(in [][]float64, from, n int) {
	for a, axis := range w.question.axes {
		if a == w.question.sought {
			continue
		}
		some := in[a][from:][:n]
		for i := surely(some, axis.Least, axis.Most); i < n; i++ {
			if x := some[i]; !(x >= axis.Least && x <= axis.Most) {
				w.months[i] = -1
			}
		}
	}
}

// sort puts the trials in the order of their months.
func (w *Worker) sort(n int) {
	clear(w.ends)
	for _, m := range w.months[:n] {
		for len(w.ends) <= int(m)+1 {
			w.ends = append(w.ends, 0)
		}
		w.ends[m+1]++
	}
	sum := 0
	for m, k := range w.ends { // first, where the trials of that length start
		w.ends[m] = sum
		sum += k
	}
	for i, m := range w.months[:n] {
		at := &w.ends[m+1]
		w.order[*at], w.place[i] = int16(i), int16(*at)
		*at++
	}
}

// ready makes room for a code and fills in its numbers.
func (w *Worker) ready(c *code) {
	if len(w.memory) < c.room {
		w.memory = make([]float64, c.room)
	}
	c.fill(w.memory)
}

func (w *Worker) load(c *code, in [][]float64, from int, trials []int16) {
	for a, at := range c.in {
		if at < 0 || a == w.question.sought {
			continue
		}
		to, x := w.memory[at:][:len(trials)], in[a][from:]
		for i, t := range trials {
			to[i] = x[t]
		}
	}
}

// sameMonths works out the trials that have one number of months.
func (w *Worker) sameMonths(months int, in [][]float64, outs, from, start, end int) error {
	if months < 0 {
		for k := range outs {
			none := w.sorted[k*batch:][start:end]
			for i := range none {
				none[i] = math.NaN()
			}
		}
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
		c.run(c.again, w.memory, len(some))
		for k, at := range c.out {
			copy(w.sorted[k*batch+start:][:len(some)], w.memory[at:])
		}
	}
	return nil
}

// code is the question's code for a number of months, kept at hand.
func (w *Worker) code(months int) (*code, error) {
	for len(w.codes) <= months {
		w.codes = append(w.codes, nil)
	}
	if w.codes[months] == nil {
		c, err := w.question.code(months)
		if err != nil {
			return nil, err
		}
		w.codes[months] = c
	}
	return w.codes[months], nil
}
