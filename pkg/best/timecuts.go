package best

import (
	"math"
	"slices"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// widest is how long a slice of time is at most, in months.
const widest = 0.5

// edge is how far from an edge in time a slice begins, in months: a little less than
// what the model rounds away before it counts months.
const edge = 1e-9

// findEnds works out the last month of any choice and, for the end of the work and for
// the sale, how many months either comes later than the work has taken. No choice takes
// longer than all options at once.
func (h *House) findEnds() error {
	m, t, longest := h.Deal.Model, h.totals[time], h.parts.longest
	ends := h.all([]string{"works_end", "hold_months"})
	p, err := walk.Prepare(m, m.NeededBeyond([]int{t.Index}, append(model.Indexes(ends), m.Horizon)...), []int{t.Index}, nil, -1)
	if err != nil {
		return err
	}
	s := exact.NewScratch(p)
	if err := s.Evaluate(exact.Change{Cell: t, Value: longest}); err != nil {
		return err
	}
	h.last = int(s.Of(m.Cells[m.Horizon]).IntPart())
	for _, c := range ends {
		h.later = append(h.later, s.Of(c).Sub(longest).InexactFloat64())
	}
	return nil
}

// timeCuts are the slices of time that choices may take: cut where the sale or the
// end of the work falls into another month, and no longer than the widest.
func (h *House) timeCuts() []span {
	if h.find("renovation").Given != nil {
		return []span{{}} // it moves nothing
	}
	longest := h.parts.longest.InexactFloat64()
	first, out := h.parts.shortest*(1-1e-9), []span(nil)
	if first == 0 {
		out = append(out, span{})
		first = h.shortestWork()
	}
	at := []float64{first, longest}
	for _, later := range h.later {
		for n := math.Ceil(first + later); n < longest+later; n++ {
			if x := n - later; x > first {
				at = append(at, x)
			}
		}
	}
	slices.Sort(at)
	for i, b := range at[1:] {
		lo := at[i] + edge
		if b-lo < edge {
			lo = at[i] // what lies in it counts as the same months
		}
		for lo < b {
			hi := min(b, lo+widest, lo*1.3)
			if b-hi < (hi-lo)/4 {
				hi = b
			}
			out = append(out, span{lo, hi})
			lo = hi
		}
	}
	return out
}
