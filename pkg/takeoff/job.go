package takeoff

import (
	"cmp"
	"slices"
)

// A bin is a length of stock as the packing sees it.
type bin struct {
	room int64 // the length and one kerf, in grains
	cost       // of one stick
}

// A job is the packing problem without its labels. A kind is all pieces of one
// length. Sizes and rooms are in grains: the greatest unit that divides all sizes.
type job struct {
	size  []int64 // of each kind with its kerf, longest first
	need  []int   // how many of each kind
	bins  []bin   // by room; more room costs more
	total int64   // size of all pieces
	grain int64
}

// A pattern is one stick: the bin, and the kind of each piece, longest first.
type pattern struct {
	bin   int
	kinds []int
}

func newJob(pieces []Piece, stock []Stock, kerf int64) *job {
	count := map[int64]int{}
	var grain int64
	for _, p := range pieces {
		count[p.Length+kerf]++
		grain = gcd(grain, p.Length+kerf)
	}
	j := &job{grain: grain}
	for size := range count {
		j.size = append(j.size, size/grain)
	}
	slices.SortFunc(j.size, func(a, b int64) int { return cmp.Compare(b, a) })
	for _, s := range j.size {
		n := count[s*grain]
		j.need = append(j.need, n)
		j.total += s * int64(n)
	}
	for _, s := range stock {
		j.bins = append(j.bins, bin{(s.Length + kerf) / grain, cost{s.Price, 1, s.Length}})
	}
	j.bins = useful(j.bins, j.size[len(j.size)-1])
	return j
}

// useful leaves out bins too small for the least piece, and those for which one
// with as much room costs less.
func useful(bins []bin, least int64) []bin {
	slices.SortFunc(bins, func(a, b bin) int { return cmp.Or(a.compare(b.cost), cmp.Compare(b.room, a.room)) })
	var out []bin
	room := least - 1
	for _, b := range bins {
		if b.room > room {
			out = append(out, b)
			room = b.room
		}
	}
	return out
}

// count is how many pieces there are.
func (j *job) count() int {
	sum := 0
	for _, n := range j.need {
		sum += n
	}
	return sum
}

// most is the room of the longest stick.
func (j *job) most() int64 { return j.bins[len(j.bins)-1].room }

// fit is the cheapest bin with that much room.
func (j *job) fit(size int64) int {
	k, _ := slices.BinarySearchFunc(j.bins, size, func(b bin, s int64) int { return cmp.Compare(b.room, s) })
	return k
}

func (j *job) used(kinds []int) int64 {
	var sum int64
	for _, k := range kinds {
		sum += j.size[k]
	}
	return sum
}

func (j *job) cost(list []pattern) cost {
	var sum cost
	for _, p := range list {
		sum = sum.plus(j.bins[p.bin].cost)
	}
	return sum
}

// rest is the job of what is still needed, with the kinds of it in this job.
func (j *job) rest(need []int) (*job, []int) {
	r := &job{bins: j.bins, grain: j.grain}
	var kinds []int
	for k, n := range need {
		if n > 0 {
			kinds = append(kinds, k)
			r.size = append(r.size, j.size[k])
			r.need = append(r.need, n)
			r.total += j.size[k] * int64(n)
		}
	}
	return r, kinds
}
