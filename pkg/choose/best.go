package choose

import (
	"cmp"
	"slices"
)

// Best chooses one option for each room so that the values add up to most while the
// uses of each resource stay within its limit. Of equal values the one that uses
// least of the first resource is chosen, then of the second, and so on; then the one
// with the earlier options. It is exact: ok is false only if no choice keeps the
// limits. It panics on what [NewAdditive] refuses, save a room without options, for
// which there is no choice.
func Best(rooms [][]Option, limits []int64) (choice []int, value int64, ok bool) {
	if slices.Contains(sizesOf(rooms), 0) {
		return nil, 0, false
	}
	kept, index := undominated(rooms, len(limits))
	a, err := NewAdditive(kept, limits)
	if err != nil {
		panic("choose: too many rooms, or amounts too large to add up")
	}
	d := &deep{a: a, order: ranked(a.Rooms(), a.Bound), partial: open(len(rooms)), value: never}
	d.branch(0)
	if d.best == nil {
		return nil, 0, false
	}
	for i, o := range d.best {
		d.best[i] = index[i][o]
	}
	return d.best, d.value, true
}

// deep searches depth first, so that it holds one choice at a time.
type deep struct {
	a       *Additive
	order   []int
	partial []int
	best    []int
	value   int64
	nodes   int
}

type child struct {
	option int
	bound  int64
}

func (d *deep) branch(depth int) {
	if depth == len(d.order) {
		d.leaf()
		return
	}
	room := d.order[depth]
	var store [8]child
	for _, c := range d.children(room, store[:0]) {
		if c.bound < d.value {
			break
		}
		d.partial[room] = c.option
		d.branch(depth + 1)
	}
	d.partial[room] = -1
}

// children are the options of a room that may be as good as the best, by bound.
func (d *deep) children(room int, out []child) []child {
	for o := range d.a.rooms[room] {
		d.partial[room] = o
		d.nodes++
		if b, possible := d.a.Bound(d.partial); possible && b >= d.value {
			out = append(out, child{o, b})
		}
	}
	slices.SortStableFunc(out, func(a, b child) int { return cmp.Compare(b.bound, a.bound) })
	return out
}

func (d *deep) leaf() {
	v, ok, _ := d.a.Worth(d.partial)
	if !ok || v < d.value || v == d.value && d.best != nil && d.tie() >= 0 {
		return
	}
	d.value, d.best = v, slices.Clone(d.partial)
}

// tie compares the choice at hand with the best one by use, then by options.
func (d *deep) tie() int {
	for k := range d.a.limits {
		if c := cmp.Compare(d.a.used(d.partial, k), d.a.used(d.best, k)); c != 0 {
			return c
		}
	}
	return slices.Compare(d.partial, d.best)
}

// undominated leaves out every option that another of its room betters or equals in
// value and every use, and says which were left.
func undominated(rooms [][]Option, limits int) (kept [][]Option, index [][]int) {
	kept, index = make([][]Option, len(rooms)), make([][]int, len(rooms))
	for i, room := range rooms {
		for n, o := range room {
			worse := func(m int) bool { return m != n && dominates(room[m], o, limits, m < n) }
			if !slices.ContainsFunc(indexes(room), worse) {
				kept[i], index[i] = append(kept[i], o), append(index[i], n)
			}
		}
	}
	return kept, index
}

func indexes(room []Option) []int {
	out := make([]int, len(room))
	for n := range out {
		out[n] = n
	}
	return out
}

// dominates says that a is as good as b in all and better in something, or first.
func dominates(a, b Option, limits int, first bool) bool {
	better := first || a.Value > b.Value
	for k := range limits {
		if a.use(k) > b.use(k) {
			return false
		}
		better = better || a.use(k) < b.use(k)
	}
	return better && a.Value >= b.Value
}
