package choose

import (
	"cmp"
	"slices"
)

// ranked are the rooms in the order of branching: first the one where missing the
// best option loses most, by what the bound says with that room alone decided. An
// option that is impossible at once loses as much as the worst one of all.
func ranked(sizes []int, bound func([]int) (int64, bool)) []int {
	partial := open(len(sizes))
	bounds := make([][]int64, len(sizes))
	worst := int64(maxWorth)
	for i, n := range sizes {
		for o := range n {
			partial[i] = o
			b, possible := bound(partial)
			if b = min(max(b, -maxWorth), maxWorth); !possible {
				b = never
			} else {
				worst = min(worst, b)
			}
			bounds[i] = append(bounds[i], b)
		}
		partial[i] = -1
	}
	loss := make([]int64, len(sizes))
	order := make([]int, len(sizes))
	for i, b := range bounds {
		order[i] = i
		slices.Sort(b)
		if last := len(b) - 1; last > 0 {
			loss[i] = max(b[last], worst) - max(b[last-1], worst)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(loss[b], loss[a]) })
	return order
}

// maxWorth keeps a difference of two within 64 bits.
const maxWorth = 1 << 61

// open is a choice of nothing yet.
func open(rooms int) []int {
	out := make([]int, rooms)
	for i := range out {
		out[i] = -1
	}
	return out
}
