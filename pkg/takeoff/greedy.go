package takeoff

import (
	"cmp"
	"slices"
)

// bestFit puts the pieces, longest first, where they leave least over. A new stick
// is of the given bin, or the cheapest that holds the piece.
func (j *job) bestFit(to int) []pattern {
	type open struct {
		left int64
		at   int
	}
	var sticks []open // by what is left, then by age
	var out []pattern
	for k, size := range j.size {
		for range j.need[k] {
			o := open{at: len(out)}
			i, _ := slices.BinarySearchFunc(sticks, size, func(o open, s int64) int { return cmp.Compare(o.left, s) })
			if i < len(sticks) {
				o = sticks[i]
				sticks = slices.Delete(sticks, i, i+1)
			} else {
				b := max(to, j.fit(size))
				o.left = j.bins[b].room
				out = append(out, pattern{bin: b})
			}
			out[o.at].kinds = append(out[o.at].kinds, k)
			o.left -= size
			i, _ = slices.BinarySearchFunc(sticks, o, func(a, b open) int { return cmp.Or(cmp.Compare(a.left, b.left), cmp.Compare(a.at, b.at)) })
			sticks = slices.Insert(sticks, i, o)
		}
	}
	return j.tidy(out)
}

// fillSteps limits the work of fullest over all sticks.
const fillSteps = 100_000

// fullest takes the longest piece left, and with it whatever fills a stick best, in
// the bin where the filled length is cheapest, as often as the pieces allow.
func (j *job) fullest() []pattern {
	left := slices.Clone(j.need)
	sticks := ceilDiv(j.total, j.most())
	limit := int(min(2000, max(20, fillSteps/(sticks*int64(len(j.bins))))))
	var out []pattern
	f := newFill(j, j.size)
	for k := range j.size {
		for left[k] > 0 {
			var best pattern
			var used int64
			left[k]--
			for b := j.fit(j.size[k]); b < len(j.bins); b++ {
				f.run(left, j.bins[b].room-j.size[k], limit)
				u := j.size[k] + f.value
				if best.kinds == nil || j.bins[b].price*used < j.bins[best.bin].price*u {
					best, used = pattern{b, append([]int{k}, f.kinds()...)}, u
				}
			}
			left[k]++
			slices.Sort(best.kinds)
			for n := times(best.kinds, left); n > 0; n-- {
				out = append(out, best)
				for _, q := range best.kinds {
					left[q]--
				}
			}
		}
	}
	return j.tidy(out)
}

// times is how often a pattern can be cut from what is left; its kinds are sorted.
func times(kinds []int, left []int) int {
	n := maxPieces
	for i := 0; i < len(kinds); {
		e := i
		for e < len(kinds) && kinds[e] == kinds[i] {
			e++
		}
		n = min(n, left[kinds[i]]/(e-i))
		i = e
	}
	return n
}
