package takeoff

import (
	"cmp"
	"slices"
)

// An option is a way to cut one stick. Its loss is its price less what its pieces
// are worth, in parts of a cent.
type option struct {
	pattern
	loss int64
}

// options are the ways to cut the longest piece left, the least loss first. They
// hold until the next call at the same depth.
func (s *search) options() []option {
	first := slices.IndexFunc(s.left, func(n int) bool { return n > 0 })
	if len(s.listers) == len(s.path) {
		s.listers = append(s.listers, &lister{s: s})
	}
	e := s.listers[len(s.path)]
	e.slack, e.out, e.store, e.kinds = s.slack(), e.out[:0], e.store[:0], append(e.kinds[:0], first)
	s.left[first]--
	var room int64
	for b, bin := range s.j.bins {
		e.bin, e.cents, e.spare = b, bin.price*s.d.unit, bin.room-room
		room = bin.room
		if room >= s.j.size[first] {
			e.branch(0, room-s.j.size[first], s.d.value[first])
		}
	}
	s.left[first]++
	slices.SortFunc(e.out, func(a, b option) int {
		return cmp.Or(cmp.Compare(a.loss, b.loss), cmp.Compare(a.bin, b.bin), slices.Compare(a.kinds, b.kinds))
	})
	return e.out
}

// A lister lists the fillings of one bin that lose no more than the slack.
type lister struct {
	s     *search
	slack int64
	bin   int
	cents int64 // price of the bin in parts
	spare int64 // with so much room left, a cheaper bin would do
	kinds []int
	out   []option
	store []int // holds the kinds of out
}

func (e *lister) branch(t int, room, worth int64) {
	s := e.s
	for ; t < len(s.order); t++ {
		k := s.order[t]
		size := s.j.size[k]
		if s.left[k] == 0 || size > room {
			continue
		}
		if s.steps++; s.steps > s.limit {
			return
		}
		if worth+room*s.d.value[k]/size < e.cents-e.slack {
			return
		}
		n := min(s.left[k], int(room/size))
		was := len(e.kinds)
		for range n {
			e.kinds = append(e.kinds, k)
		}
		s.left[k] -= n
		for ; n > 0; n-- {
			e.branch(t+1, room-int64(n)*size, worth+int64(n)*s.d.value[k])
			e.kinds = e.kinds[:len(e.kinds)-1]
			s.left[k]++
		}
		e.kinds = e.kinds[:was]
	}
	e.leaf(room, worth)
}

// leaf keeps a filling, unless a cheaper bin would do, a piece left would still fit,
// or one would fit in place of a shorter one: the two can change places, so that
// some best plan has the longer one here.
func (e *lister) leaf(room, worth int64) {
	if room >= e.spare || e.cents-worth > e.slack || e.better(len(e.s.left), 0, room) {
		return
	}
	for _, k := range e.kinds[1:] {
		if e.better(k, e.s.j.size[k], room) {
			return
		}
	}
	at := len(e.store)
	e.store = append(e.store, e.kinds...)
	kinds := e.store[at:len(e.store):len(e.store)]
	slices.Sort(kinds)
	e.out = append(e.out, option{pattern{e.bin, kinds}, e.cents - worth})
}

// better reports whether a piece left, of a kind before k, is longer than the size
// by no more than the room.
func (e *lister) better(k int, size, room int64) bool {
	for k--; k >= 0 && e.s.j.size[k]-size <= room; k-- {
		if e.s.left[k] > 0 {
			return true
		}
	}
	return false
}
