package takeoff

import "slices"

// Walls cuts the runs of a room's walls into the pieces that are seen, in the units of
// [Piece]. A gap for a door is taken out of the middle of the shortest wall that holds
// it; a gap for what stands in a corner, such as cabinets, off the end of the longest
// piece left. A gap wider than that takes the piece whole and goes on with the next.
// The pieces add up to walls less gaps, or to nothing. Common practice, no source: which
// wall a door is in, the deal does not say.
func Walls(walls, doors, corners []int64) []int64 {
	left := slices.Clone(walls)
	for _, d := range descending(doors) {
		left = door(left, d)
	}
	for _, c := range descending(corners) {
		for c > 0 && len(left) > 0 {
			i := longestOf(left)
			took := min(c, left[i])
			c -= took
			if left[i] -= took; left[i] == 0 {
				left = slices.Delete(left, i, i+1)
			}
		}
	}
	return descending(left)
}

// door takes a gap out of the middle of the shortest wall that holds it.
func door(left []int64, gap int64) []int64 {
	at := -1
	for i, w := range left {
		if w >= gap && (at < 0 || w < left[at]) {
			at = i
		}
	}
	if at < 0 {
		return Walls(left, nil, []int64{gap})
	}
	rest := left[at] - gap
	out := slices.Delete(left, at, at+1)
	for _, piece := range []int64{rest / 2, rest - rest/2} {
		if piece > 0 {
			out = append(out, piece)
		}
	}
	return out
}

func longestOf(left []int64) int {
	at := 0
	for i, w := range left {
		if w > left[at] {
			at = i
		}
	}
	return at
}

func descending(a []int64) []int64 {
	out := slices.Sorted(slices.Values(a))
	slices.Reverse(out)
	return out
}
