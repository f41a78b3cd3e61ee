package takeoff

import (
	"cmp"
	"slices"
	"strings"
)

// assign gives the patterns of an answer their pieces: of pieces of one length the
// first by ID goes to the first stick.
func assign(j *job, a answer, pieces []Piece, kerf int64) Plan {
	sorted := slices.Clone(pieces)
	slices.SortFunc(sorted, func(a, b Piece) int { return cmp.Or(cmp.Compare(b.Length, a.Length), strings.Compare(a.ID, b.ID)) })
	next := make([]int, len(j.size)) // index into sorted of the next piece of each kind
	for k, sum := 0, 0; k < len(next); k++ {
		next[k] = sum
		sum += j.need[k]
	}
	list := slices.Clone(a.patterns)
	slices.SortFunc(list, func(a, b pattern) int { return cmp.Or(cmp.Compare(b.bin, a.bin), slices.Compare(a.kinds, b.kinds)) })
	p := Plan{Price: a.cost.price, Waste: a.cost.length, Bound: a.bound, By: a.by}
	for _, pat := range list {
		b := j.bins[pat.bin]
		s := Stick{Stock: Stock{b.length, b.price}, Offcut: b.length}
		for _, k := range pat.kinds {
			c := sorted[next[k]]
			next[k]++
			s.Cuts = append(s.Cuts, c)
			s.Offcut -= c.Length + kerf
			p.Waste -= c.Length
		}
		s.Offcut = max(0, s.Offcut)
		p.Sticks = append(p.Sticks, s)
	}
	return p
}
