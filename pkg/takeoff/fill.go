package takeoff

import (
	"cmp"
	"slices"
)

// A fill finds the pieces of greatest value for one stick: a knapsack, by branch
// and bound over the kinds in order of value by size. Values are whole and from 0.
type fill struct {
	j     *job
	item  []item // by value per size
	take  []int  // of each item on the way, and of the best
	best  []int
	left  []int
	value int64 // of the best
	bound int64 // no choice is worth more
	steps int
	limit int
}

type item struct {
	kind        int
	size, value int64
}

func newFill(j *job, value []int64) *fill {
	f := &fill{j: j}
	f.price(value)
	return f
}

// price gives the kinds new values.
func (f *fill) price(value []int64) {
	f.item = f.item[:0]
	for k, v := range value {
		if v > 0 {
			f.item = append(f.item, item{k, f.j.size[k], v})
		}
	}
	slices.SortFunc(f.item, func(a, b item) int {
		return cmp.Or(cmp.Compare(b.value*a.size, a.value*b.size), cmp.Compare(a.kind, b.kind))
	})
	f.take = append(f.take[:0], make([]int, len(f.item))...)
	f.best = append(f.best[:0], f.take...)
}

// run fills a room from what is left. At the limit of steps it stops with the best
// it has, and the bound is that of whole and part pieces.
func (f *fill) run(left []int, room int64, limit int) {
	f.left, f.steps, f.limit, f.value = left, 0, limit, 0
	clear(f.take)
	clear(f.best)
	f.branch(0, room, 0)
	f.bound = f.value
	if f.steps > f.limit {
		f.bound = max(f.value, f.relaxed(room))
	}
}

func (f *fill) branch(t int, room, value int64) {
	if value > f.value {
		f.value = value
		copy(f.best, f.take)
	}
	for ; t < len(f.item); t++ {
		it := &f.item[t]
		if it.size > room || f.left[it.kind] == 0 {
			continue
		}
		if value+room*it.value/it.size <= f.value {
			return
		}
		if f.steps++; f.steps > f.limit {
			return
		}
		for n := min(f.left[it.kind], int(room/it.size)); n > 0; n-- {
			f.take[t] = n
			f.branch(t+1, room-int64(n)*it.size, value+int64(n)*it.value)
		}
		f.take[t] = 0
	}
}

// relaxed is the value of the room where the last piece may be part of one.
func (f *fill) relaxed(room int64) int64 {
	var value int64
	for _, it := range f.item {
		n := min(int64(f.left[it.kind]), room/it.size)
		value += n * it.value
		room -= n * it.size
		if n < int64(f.left[it.kind]) {
			return value + room*it.value/it.size
		}
	}
	return value
}

// kinds lists the best choice, longest first.
func (f *fill) kinds() []int {
	var out []int
	for t, n := range f.best {
		for range n {
			out = append(out, f.item[t].kind)
		}
	}
	slices.Sort(out)
	return out
}
