package choose

import (
	"encoding/binary"
	"fmt"
)

// whole works out a choice that did not come from the queue.
func (s *search) whole(choice []int) {
	if b, possible := s.bound(choice); possible {
		s.leaf(choice, b)
	} else if !s.seen[key(choice)] {
		s.seen[key(choice)] = true
		if _, ok, _ := s.p.Worth(choice); ok {
			s.err = fmt.Errorf("choice %v keeps the limits; its bound says that it does not", choice)
		}
	}
}

// complete works out the whole choice at hand or, if it can be bounded more tightly and
// is not yet, puts it back by that bound.
func (s *search) complete(n node) {
	p, can := s.p.(Narrower)
	if !can || n.narrow {
		s.leaf(s.partial, n.bound)
		return
	}
	b, possible := p.Narrow(s.partial)
	if n.bound, n.narrow = min(n.bound, b), true; possible && n.bound >= s.floor() {
		s.push(n)
	}
}

// leaf works out a choice once, and keeps it if it is among the best two.
func (s *search) leaf(choice []int, bound int64) {
	k := key(choice)
	if s.seen[k] {
		return
	}
	s.seen[k] = true
	value, ok, tie := s.p.Worth(choice)
	if !ok {
		return
	}
	if value > bound {
		s.err = fmt.Errorf("choice %v is worth %d; its bound is %d", choice, value, bound)
		return
	}
	c := &Choice{append([]int{}, choice...), value, tie}
	switch {
	case s.best == nil || c.order(s.best) < 0:
		s.best, s.second = c, s.best
	case s.second == nil || c.order(s.second) < 0:
		s.second = c
	}
}

// key tells choices apart; there are at most 2^15 options in a room.
func key(choice []int) string {
	out := make([]byte, 0, 2*len(choice))
	for _, o := range choice {
		out = binary.BigEndian.AppendUint16(out, uint16(o))
	}
	return string(out)
}

// polish changes one room of the best choice at a time, as long as that betters it
// and leaves may be worked out.
func (s *search) polish() {
	for s.best != nil {
		was := s.best
		for i, n := range s.sizes {
			for o := range n {
				copy(s.partial, s.best.Options)
				s.partial[i] = o
				b, possible := s.bound(s.partial)
				if !possible || b < s.floor() {
					continue
				}
				if len(s.seen) >= s.limits.Leaves || s.err != nil {
					return
				}
				s.leaf(s.partial, b)
			}
		}
		if s.best == was {
			return
		}
	}
}

// result says what is proved: an open node may be better if its bound is as high.
func (s *search) result() Result {
	r := Result{Best: s.best, RunnerUp: s.second, Nodes: s.nodes, Leaves: len(s.seen)}
	r.Proved, r.RunnerUpProved = true, !s.open()
	if s.best != nil {
		r.Bound = s.best.Value
	}
	if len(s.queue.heap) > 0 {
		top := s.queue.nodes[s.queue.heap[0]].bound
		if s.best == nil || top >= s.best.Value {
			r.Proved, r.Bound = false, top
		}
	}
	return r
}
