package choose

import (
	"cmp"
	"math/bits"
	"slices"
)

// A row is one limit on a weighted sum of the uses. Any weights from 0 up make a
// limit that holds wherever the limits themselves do, so each row bounds the whole.
type row struct {
	limit int64
	at    [][]point // of each option of each room
	base  []point   // of each room, the lightest option, the best of these
	steps []step    // up from the bases, the most value for its weight first
}

// A point is an option as a row sees it.
type point struct{ value, weight int64 }

// A step takes a room from one option to a heavier and better one.
type step struct {
	room int
	point
}

func newRow(at [][]point, limit int64) *row {
	r := &row{limit: limit, at: at, base: make([]point, len(at))}
	for i, room := range at {
		hull := hullOf(room)
		r.base[i] = hull[0]
		for n, p := range hull[1:] {
			r.steps = append(r.steps, step{i, p.less(hull[n])})
		}
	}
	slices.SortStableFunc(r.steps, func(a, b step) int { return -slope(a.point, b.point) })
	return r
}

// bound is the value that the open rooms reach at most if options may be mixed in
// parts: the linear program of the multiple-choice knapsack (Sinha and Zoltners
// 1979, from memory), rounded down since values are whole. It is not possible if
// even the lightest options are too heavy.
func (r *row) bound(partial []int) (int64, bool) {
	var value int64
	left := r.limit
	for i, c := range partial {
		p := r.base[i]
		if c >= 0 {
			p = r.at[i][c]
		}
		value += p.value
		left -= p.weight
	}
	if left < 0 {
		return 0, false
	}
	for n := range r.steps {
		s := &r.steps[n]
		if partial[s.room] >= 0 {
			continue
		}
		if s.weight > left {
			return value + part(s.value, left, s.weight), true
		}
		value += s.value
		left -= s.weight
	}
	return value, true
}

// part is value × left ÷ weight, rounded down, for 0 <= left < weight.
func part(value, left, weight int64) int64 {
	hi, lo := bits.Mul64(uint64(value), uint64(left))
	q, _ := bits.Div64(hi, lo, uint64(weight))
	return int64(q)
}

// hullOf are the corners of a room's upper hull, from the lightest option up to the
// best: each heavier and better than the one before, by ever less for its weight.
func hullOf(room []point) []point {
	all := slices.Clone(room)
	slices.SortFunc(all, func(a, b point) int {
		return cmp.Or(cmp.Compare(a.weight, b.weight), cmp.Compare(b.value, a.value))
	})
	hull := all[:1:1]
	for _, p := range all[1:] {
		if p.value <= hull[len(hull)-1].value {
			continue
		}
		for n := len(hull); n > 1 && slope(hull[n-1].less(hull[n-2]), p.less(hull[n-1])) <= 0; n-- {
			hull = hull[:n-1]
		}
		hull = append(hull, p)
	}
	return hull
}

func (p point) less(q point) point { return point{p.value - q.value, p.weight - q.weight} }

// slope compares value by weight of two steps up, without rounding.
func slope(a, b point) int {
	ah, al := bits.Mul64(uint64(a.value), uint64(b.weight))
	bh, bl := bits.Mul64(uint64(b.value), uint64(a.weight))
	return cmp.Or(cmp.Compare(ah, bh), cmp.Compare(al, bl))
}
