package takeoff

import (
	"cmp"
	"slices"
)

// Gaps are what of the walls of a room is not seen, in the units of [Piece].
type Gaps struct {
	Alcoves []Alcove
	Doors   []int64
	Corners []int64 // what stands against one wall or two, such as cabinets
}

// An Alcove is filled by what stands across one wall between two others, such as a tub.
type Alcove struct{ Across, Deep int64 }

// Walls cuts the runs of a room's walls into the pieces that are seen, in the units of
// [Piece]. An alcove takes the shortest wall that holds it, and its depth off two of the
// walls beside. A gap for a door is taken out of the middle of the shortest wall that
// holds it; a gap for what stands in a corner off the end of the longest piece left. A
// gap wider than that takes the piece whole and goes on with the next. The pieces add up
// to walls less gaps, or to nothing. Common practice, no source: which wall a door is in,
// the deal does not say.
func Walls(walls []int64, gaps Gaps) []int64 {
	left := slices.Clone(walls)
	for _, a := range gaps.Alcoves {
		left = alcove(left, a)
	}
	for _, d := range descending(gaps.Doors) {
		left = door(left, d)
	}
	for _, c := range descending(gaps.Corners) {
		left = corner(left, c)
	}
	return descending(left)
}

// Total is what gaps take of the walls in all.
func Total(gaps Gaps) (sum int64) {
	for _, a := range gaps.Alcoves {
		sum += a.Across + 2*a.Deep
	}
	for _, x := range slices.Concat(gaps.Doors, gaps.Corners) {
		sum += x
	}
	return sum
}

// corner takes a gap off the ends of the longest pieces.
func corner(left []int64, gap int64) []int64 {
	for gap > 0 && len(left) > 0 {
		i := longestOf(left)
		took := min(gap, left[i])
		gap -= took
		if left[i] -= took; left[i] == 0 {
			left = slices.Delete(left, i, i+1)
		}
	}
	return left
}

// alcove takes what stands across a wall off that wall, and its depth off the two longest
// of the others, rather than off one as long as that wall: it lies across the room.
func alcove(left []int64, a Alcove) []int64 {
	at := shortestOf(left, a.Across)
	if at < 0 {
		return corner(left, a.Across+2*a.Deep)
	}
	across := left[at]
	left = slices.Delete(left, at, at+1)
	slices.SortFunc(left, func(x, y int64) int {
		return cmp.Or(cmp.Compare(flag(x == across), flag(y == across)), cmp.Compare(y, x))
	})
	over := int64(0)
	for i := range 2 {
		if i >= len(left) || left[i] < a.Deep {
			over += a.Deep
			continue
		}
		left[i] -= a.Deep
	}
	return corner(slices.DeleteFunc(append(left, across-a.Across), func(w int64) bool { return w == 0 }), over)
}

func flag(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// shortestOf is the place of the shortest piece that holds a gap, or -1.
func shortestOf(left []int64, gap int64) int {
	at := -1
	for i, w := range left {
		if w >= gap && (at < 0 || w < left[at]) {
			at = i
		}
	}
	return at
}

// door takes a gap out of the middle of the shortest wall that holds it.
func door(left []int64, gap int64) []int64 {
	at := shortestOf(left, gap)
	if at < 0 {
		return corner(left, gap)
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
