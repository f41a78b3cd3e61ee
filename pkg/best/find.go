package best

import (
	"errors"

	"ledgerboard/pkg/choose"
)

// A Found is the answer of a search.
type Found struct {
	Best, RunnerUp *Choice // nil if there is none within the limits
	Choices        float64 // how many there are in all
	Worked         int     // how many of them were worked out exactly
	Looked         int     // partial choices that were bounded
	Proved         bool    // nothing is better than the best
	SecondProved   bool    // nothing but the best is better than the runner-up
	Most           int64   // what no choice brings more than, in cents; if it is known
	Bounded        bool    // Most is known
	ByBounds       bool    // bounds did it; else choices were tried one by one
}

// Find finds the best choice within limits.
func (h *House) Find(l Limits) (*Found, error) {
	p := h.problem(l)
	starts, err := p.starts()
	if err == nil {
		err = p.refine()
	}
	if p.err != nil {
		return nil, p.err
	}
	if err != nil {
		return h.tryAll(l)
	}
	r, err := choose.Search(p, starts...)
	switch {
	case p.err != nil:
		return nil, p.err
	case err != nil:
		return h.tryAll(l)
	}
	f, err := h.found(r, true)
	if f != nil {
		f.ByBounds = true
	}
	return f, err
}

func (h *House) problem(l Limits) *problem {
	open := make([]int, len(h.Rooms))
	for i := range open {
		open[i] = -1
	}
	return &problem{
		open:  open,
		House: h, limits: l, moves: h.find("renovation").Given == nil,
		in: make([]float64, len(h.axes())), out: make([]float64, len(totals)),
		taken: make([]float64, len(h.parts.pools)), more: make([]float64, len(h.parts.pools)),
	}
}

// choices is how many there are.
func (h *House) choices() float64 {
	n := 1.0
	for _, s := range h.sizes {
		n *= float64(s)
	}
	return n
}

func (h *House) found(r choose.Result, bounded bool) (*Found, error) {
	f := &Found{Choices: h.choices(), Worked: r.Leaves, Looked: r.Nodes, Proved: r.Proved, SecondProved: r.RunnerUpProved, Most: r.Bound, Bounded: bounded}
	var errs [2]error
	if r.Best != nil {
		f.Best, errs[0] = h.At(r.Best.Options)
	}
	if r.RunnerUp != nil {
		f.RunnerUp, errs[1] = h.At(r.RunnerUp.Options)
	}
	return f, errors.Join(errs[:]...)
}

// unbounded is a problem of which nothing is known before a choice is worked out.
type unbounded struct{ *problem }

// Bound is more than anything.
func (unbounded) Bound([]int) (int64, bool) { return anything, true }

// tryAll works every choice out, where there are not too many, or as many as it may.
func (h *House) tryAll(l Limits) (*Found, error) {
	p := h.problem(l)
	r, err := choose.Search(unbounded{p}, h.own())
	if err := errors.Join(p.err, err); err != nil {
		return nil, err
	}
	return h.found(r, r.Proved)
}
