package choose

import (
	"container/heap"
	"fmt"
)

// Limits are how much a search may do. They are counts, not times, so that equal
// problems have equal results on every machine.
type Limits struct {
	Nodes  int // partial choices bounded
	Leaves int // whole choices worked out
}

const (
	// MaxNodes is what [Search] bounds at most.
	MaxNodes = 2_000_000
	// MaxLeaves is what [Search] works out at most.
	MaxLeaves = 20_000
)

// Search finds the best choice and the next best by bound and branch: the partial
// choice of the highest bound is looked at first, so that a choice is only worked
// out if its bound is as good as the runner-up is worth. The starts are choices to
// work out at once. It fails for rooms without options, for a start that is no
// choice, and for a choice that is worth more than its bound.
func Search(p Problem, start ...[]int) (Result, error) {
	return Limits{MaxNodes, MaxLeaves}.Search(p, start...)
}

// Search is [Search] within other limits. An eighth of the leaves is kept for what
// is done if the rest did not suffice: trying to better what was found, room by room.
func (l Limits) Search(p Problem, start ...[]int) (Result, error) {
	sizes := p.Rooms()
	if err := checkSizes(sizes); err != nil {
		return Result{}, err
	}
	for _, c := range start {
		if err := checkChoice(c, sizes); err != nil {
			return Result{}, err
		}
	}
	s := &search{p: p, limits: l, sizes: sizes, partial: open(len(sizes)), seen: map[string]bool{}}
	for _, c := range start {
		s.whole(c)
	}
	s.run()
	return s.result(), s.err
}

func checkChoice(choice, sizes []int) error {
	if len(choice) != len(sizes) {
		return fmt.Errorf("start %v has %d rooms; want %d", choice, len(choice), len(sizes))
	}
	for i, o := range choice {
		if o < 0 || o >= sizes[i] {
			return fmt.Errorf("start %v has option %d in room %d; want 0 to %d", choice, o, i, sizes[i]-1)
		}
	}
	return nil
}

type search struct {
	p       Problem
	limits  Limits
	sizes   []int
	order   []int // rooms, the first to branch on first
	partial []int
	queue   queue
	seen    map[string]bool // choices worked out
	best    *Choice
	second  *Choice
	nodes   int
	err     error
}

// run branches until nothing open is as good as the runner-up, or a limit is reached.
func (s *search) run() {
	root, possible := s.bound(s.partial)
	if !possible {
		return
	}
	s.order = ranked(s.sizes, s.bound)
	s.push(node{bound: root, parent: -1})
	for expanded := 1; s.open() && s.err == nil; {
		if s.nodes >= s.limits.Nodes || len(s.seen) >= s.limits.Leaves-s.limits.Leaves/8 {
			s.polish()
			return
		}
		top := heap.Pop(&s.queue).(int32)
		n := s.queue.nodes[top]
		s.queue.choice(top, s.order, s.partial)
		if int(n.depth) == len(s.order) {
			s.complete(n)
			continue
		}
		if expanded&(expanded-1) == 0 {
			s.dive(n)
			s.queue.choice(top, s.order, s.partial)
		}
		s.expand(top, n)
		expanded++
	}
}

// open reports whether what is open may still change the result. A node bounded by
// what the runner-up is worth may: it can have the smaller tie.
func (s *search) open() bool {
	return len(s.queue.heap) > 0 && s.queue.nodes[s.queue.heap[0]].bound >= s.floor()
}

// floor is the worth under which nothing matters any more.
func (s *search) floor() int64 {
	if s.second == nil {
		return never
	}
	return s.second.Value
}

func (s *search) bound(partial []int) (int64, bool) {
	s.nodes++
	return s.p.Bound(partial)
}

func (s *search) push(n node) {
	s.queue.nodes = append(s.queue.nodes, n)
	heap.Push(&s.queue, int32(len(s.queue.nodes)-1))
}

// expand bounds each option of the next room. What a parent cannot reach its child
// cannot either, so the lower of their bounds holds.
func (s *search) expand(at int32, n node) {
	room := s.order[n.depth]
	for o := range s.sizes[room] {
		s.partial[room] = o
		b, possible := s.bound(s.partial)
		if b = min(b, n.bound); possible && b >= s.floor() {
			s.push(node{bound: b, parent: at, option: int16(o), depth: n.depth + 1})
		}
	}
}

// dive completes a partial choice by the best bound, room by room, and works it out.
// It does so ever more rarely, for a limit may be reached before a leaf is.
func (s *search) dive(n node) {
	for _, room := range s.order[n.depth:] {
		best, at := int64(never), -1
		for o := range s.sizes[room] {
			s.partial[room] = o
			if b, possible := s.bound(s.partial); possible && (at < 0 || b > best) {
				best, at = b, o
			}
		}
		if s.partial[room] = at; at < 0 {
			return
		}
	}
	if s.promising() {
		s.whole(s.partial)
	}
}

// promising reports whether the whole choice at hand may be among the best two, as far
// as can be told without working it out.
func (s *search) promising() bool {
	p, can := s.p.(Narrower)
	if !can || s.second == nil {
		return true
	}
	b, possible := p.Narrow(s.partial)
	return possible && b >= s.floor()
}
