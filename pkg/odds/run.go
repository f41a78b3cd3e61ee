package odds

import (
	"context"
	"math"
	"slices"
	"sync"
	"sync/atomic"
)

// A Plan is what to draw, what to work out of it and what to watch.
type Plan struct {
	Spreads []Spread
	Ties    *Ties // nil for none
	Outputs int   // how many figures come of a trial
	Events  []Event
	Seed    uint64
	Trials  int // at least 2
	Workers int // at least 1

	// Worker returns what works trials out for one worker: from the drawn values, by
	// spread and trial, to the figures, by output and trial. A trial without an answer has
	// a figure that is no number.
	Worker func() func(in, out [][]float64) error

	// May lists the figures that a trial with an answer may lack: such a one is no number,
	// and counts in no histogram.
	May []int

	// Seen, if set, is told of each block in turn, in order: its values and figures. It
	// must not keep them.
	Seen func(in, out [][]float64) error
}

// An Event happens in a trial in which a figure lies below its limit: any of them.
type Event []Limit

// A Limit is a figure and what it must not lie below.
type Limit struct {
	Output int
	Least  float64
}

func (e Event) happens(out [][]float64, trial int) bool {
	for _, l := range e {
		if out[l.Output][trial] < l.Least {
			return true
		}
	}
	return false
}

// Found is what came of the trials.
type Found struct {
	Trials   int64        // that have an answer
	None     int64        // that have none
	Outputs  []*Histogram // of those that have one
	happened []int64
}

// Chance is how likely the event with that place in the plan is.
func (f *Found) Chance(event int) Estimate { return Chance(f.happened[event], f.Trials) }

// Happened is in how many trials the event with that place in the plan happened.
func (f *Found) Happened(event int) int64 { return f.happened[event] }

// Run draws and works out the trials of a plan. What it finds depends on the seed and the
// number of trials, and on nothing else. A context that ends ends it, with what was found
// so far and the context's error.
func Run(ctx context.Context, p Plan) (*Found, error) {
	r := &run{Plan: p, found: &Found{happened: make([]int64, len(p.Events))}}
	r.turn.L = &r.mutex
	for range p.Outputs {
		r.found.Outputs = append(r.found.Outputs, NewHistogram())
	}
	var wait sync.WaitGroup
	for range max(1, p.Workers) {
		wait.Go(func() { r.work(ctx) })
	}
	wait.Wait()
	return r.found, r.err
}

// A run is a plan being carried out. Blocks are worked out side by side and put together
// in their order.
type run struct {
	Plan
	taken atomic.Int64
	mutex sync.Mutex
	turn  sync.Cond
	next  int64 // the block whose turn it is
	found *Found
	err   error
}

func (r *run) work(ctx context.Context) {
	drawer, calculate := NewDrawer(r.Spreads, r.Ties), r.Worker()
	out := make([][]float64, r.Outputs)
	for i := range out {
		out[i] = make([]float64, Block)
	}
	for {
		block := r.taken.Add(1) - 1
		n := min(Block, r.Trials-int(block)*Block)
		if n <= 0 {
			return
		}
		err := ctx.Err()
		var in [][]float64
		if err == nil {
			in = cut(drawer.Draw(r.Seed, uint64(block)), n)
			err = calculate(in, cut(out, n))
		}
		if !r.join(block, in, cut(out, n), err) {
			return
		}
	}
}

// cut are the first n of each.
func cut(all [][]float64, n int) [][]float64 {
	if len(all) == 0 || len(all[0]) == n {
		return all
	}
	out := make([][]float64, len(all))
	for i, x := range all {
		out[i] = x[:n]
	}
	return out
}

// join waits for the block's turn and adds it to what was found. It reports whether the
// run goes on.
func (r *run) join(block int64, in, out [][]float64, err error) bool {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	for r.next < block && r.err == nil {
		r.turn.Wait()
	}
	defer r.turn.Broadcast()
	r.next++
	if r.err != nil {
		return false
	}
	if err == nil && r.Seen != nil {
		err = r.Seen(in, out)
	}
	if err != nil {
		r.err = err
		return false
	}
	r.found.add(&r.Plan, out)
	return true
}

// add counts a block, whose figures it may move.
func (f *Found) add(p *Plan, out [][]float64) {
	n := answered(out, p.May)
	f.Trials += int64(n)
	if len(out) > 0 {
		f.None += int64(len(out[0]) - n)
	}
	for e, event := range p.Events {
		for t := range n {
			if event.happens(out, t) {
				f.happened[e]++
			}
		}
	}
	for i, x := range out {
		x = x[:n]
		if slices.Contains(p.May, i) {
			x = slices.DeleteFunc(x, math.IsNaN)
		}
		f.Outputs[i].Add(x)
	}
}

// answered moves the trials with an answer to the front, in order, and counts them; they may
// lack some figures.
func answered(out [][]float64, may []int) (n int) {
	if len(out) == 0 {
		return 0
	}
	for t := range out[0] {
		whole := true
		for i, x := range out {
			whole = whole && !math.IsInf(x[t], 0) && (!math.IsNaN(x[t]) || slices.Contains(may, i))
		}
		if !whole {
			continue
		}
		if n < t {
			for _, x := range out {
				x[n] = x[t]
			}
		}
		n++
	}
	return n
}
