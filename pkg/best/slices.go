package best

import (
	"math"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/internal/together"
)

// A slice is the choices whose totals lie in a box and, where a loan's caps begin to
// bind within it, on one side of that; with planes that enclose what they come to.
type slice struct {
	spans  [ways]span
	where  []line // at least 0 there
	profit line   // at most
	err    float64
	cash   []line // at least each of these
}

// A line is a sum of so much for each way in which totals vary.
type line struct {
	at     float64
	slopes [ways]float64
}

func (l *line) of(z *[ways]float64) float64 {
	sum := l.at
	for k, s := range l.slopes {
		sum += s * z[k]
	}
	return sum
}

func (l line) negative() line {
	l.at = -l.at
	for k := range l.slopes {
		l.slopes[k] *= -1
	}
	return l
}

// lineOf is the upper or the lower side of a plane over spans.
func lineOf(p bound.Plane, spans *[ways]span, side float64) line {
	l := line{at: p.C + side*(p.E+slack)}
	if math.IsInf(p.E, 0) || math.IsNaN(l.at) {
		return line{at: math.Inf(int(side))}
	}
	for k, s := range spans {
		if r := s.radius(); r > 0 && k < len(p.S) {
			l.slopes[k] = p.S[k] / r
			l.at -= l.slopes[k] * s.mid()
		}
	}
	return l
}

const (
	grave  = 2500 // dollars of error that are worth another piece
	pieces = 5
)

// slices are the pieces of a box, whatever the limits. It is bound.ErrVaries where the
// number of months is not one.
func (h *House) slices(spans [ways]span) ([]slice, error) {
	if known := h.sliced[spans]; known != nil {
		return known, nil
	}
	out, err := h.cut(h.box, spans)
	if err == nil {
		h.sliced[spans] = out
	}
	return out, err
}

// sliceAll works the pieces of some boxes out side by side, those of every second by
// themselves, so that slices knows them.
func (h *House) sliceAll(boxes [][ways]span) error {
	out := make([][]slice, len(boxes))
	every2nd := func(box *bound.Box, from int) func() error {
		return func() (err error) {
			for i := from; i < len(boxes) && err == nil; i += 2 {
				if out[i] = h.sliced[boxes[i]]; out[i] == nil {
					out[i], err = h.cut(box, boxes[i])
				}
			}
			return err
		}
	}
	err := together.Run(every2nd(h.box, 0), every2nd(h.other, 1))
	for i, pieces := range out {
		if pieces != nil {
			h.sliced[boxes[i]] = pieces
		}
	}
	return err
}

func (h *House) cut(box *bound.Box, spans [ways]span) ([]slice, error) {
	at := func(k int) bound.Plane { return bound.Varying(k, spans[k].lo, spans[k].hi) }
	inputs := []bound.Input{
		{Cell: h.totals[cost], At: at(costWay)}, {Cell: h.totals[atTrade], At: at(costWay).Plus(at(ownWay))},
		{Cell: h.totals[shared], At: at(wasteWay)}, {Cell: h.totals[added], At: at(addedWay)},
		{Cell: h.totals[time], At: at(timeWay)}, {Cell: h.totals[hours]},
	}
	for _, s := range h.shifted {
		inputs = append(inputs, bound.Input{Cell: s.cell, At: bound.Plane{C: s.base.InexactFloat64()}.Plus(at(addedWay))})
	}
	all, err := box.Over(ways, grave, pieces, inputs...)
	if err != nil {
		return nil, err
	}
	var out []slice
	for _, p := range all {
		s := slice{spans: spans, profit: lineOf(p.Want[0][0], &spans, 1), err: p.Want[0][0].E}
		for _, low := range p.Want[1] {
			s.cash = append(s.cash, lineOf(low, &spans, 1).negative())
		}
		for _, w := range p.Where {
			s.where = append(s.where, lineOf(w, &spans, 1))
		}
		out = append(out, s)
	}
	return out, nil
}
