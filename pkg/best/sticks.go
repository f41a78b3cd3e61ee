package best

import (
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// A stickProduct is one that is bought in sticks, by a cut list of its own for each
// choice of the options that take it.
type stickProduct struct {
	member *model.Member
	cells  []*model.Cell   // how many sticks of each length
	feet   []float64       // of each length
	price  []float64       // of each length, at the owner's place
	takers map[[2]int]bool // rooms and options that take it or call for work that does
	known  map[string][]exact.Change
	near   map[string][]float64
}

// cheapest is the length with the least price for a foot.
func (s *stickProduct) cheapest() int {
	best := 0
	for i := range s.cells {
		if s.price[i]*s.feet[best] < s.price[best]*s.feet[i] {
			best = i
		}
	}
	return best
}

func (h *House) findSticks() error {
	v, err := exact.Known(h.Deal.Known)
	if err != nil {
		return err
	}
	for _, p := range h.Deal.Root.In("product") {
		stock := p.In("stock")
		if len(stock) == 0 {
			continue
		}
		s := &stickProduct{member: p, takers: map[[2]int]bool{}, known: map[string][]exact.Change{}, near: map[string][]float64{}}
		for _, k := range stock {
			s.cells = append(s.cells, h.Deal.Model.Find(k, "sticks"))
			s.feet = append(s.feet, k.Given.Of("stick_length").Number.InexactFloat64())
			factor := h.Deal.Model.Find(k, "stick_factor")
			if err := v.Work(factor); err != nil {
				return err
			}
			s.price = append(s.price, k.Given.Of("stick_price").Number.Mul(v.Of(factor)).InexactFloat64())
		}
		h.sticks = append(h.sticks, s)
	}
	return nil
}

// key tells choices apart as far as a product's cut list goes.
func (s *stickProduct) key(choice []int) string {
	taken := make([]int, len(choice))
	for i, o := range choice {
		if s.takers[[2]int{i, o}] {
			taken[i] = o
		}
	}
	return string(bytes(taken))
}

// cuts are the sticks of a choice. The work must have been worked out for it, with any
// sticks: a cut list does not depend on them.
func (h *House) cuts(choice []int) ([]exact.Change, error) {
	var out []exact.Change
	for _, s := range h.sticks {
		key := s.key(choice)
		if _, known := s.known[key]; !known {
			list, err := h.Deal.CutListOf(s.member, h.work.Of)
			if err != nil {
				return nil, err
			}
			changes := []exact.Change{}
			for _, c := range s.cells {
				changes = append(changes, exact.Change{Cell: c, Value: list.Counts[c]})
			}
			s.known[key] = changes
		}
		out = append(out, s.known[key]...)
	}
	return out, nil
}
