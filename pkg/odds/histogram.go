package odds

import (
	"math"
)

// A Histogram counts figures in bins a 1024th of a figure wide, whatever its size, from a
// thousandth to a thousand billion: what is nearer to 0 counts as 0, what is further off
// as the last. A quantile is off by less than a bin, as a rule by much less, for it is
// taken by rank between the least and the greatest figure of its bin: where all of these
// are the same, it is that figure.
type Histogram struct {
	trials      int64
	counts      []int64   // from the most negative bin up
	sums        []float64 // of what lies in each bin
	extents     []extent  // of what lies in each bin
	least, most float64
	mean, m2    float64 // the mean so far, and the sum of squares about it
}

// An extent is how far the figures of a bin go.
type extent struct{ low, high float64 }

const (
	parts  = 10  // bits of a figure that tell its bin within a power of two
	lowest = -10 // the power of two of the smallest bin
	span   = 50  // powers of two
	zero   = span << parts
	bins   = 2*zero + 1
)

// NewHistogram returns an empty one.
func NewHistogram() *Histogram {
	return &Histogram{counts: make([]int64, bins), sums: make([]float64, bins), extents: make([]extent, bins), least: math.Inf(1), most: math.Inf(-1)}
}

// bin is where a figure is counted.
func bin(x float64) int {
	bits := math.Float64bits(math.Abs(x)) >> (52 - parts)
	i := int(bits) - (1023+lowest)<<parts + 1
	if i = max(0, min(zero, i)); x < 0 {
		i = -i
	}
	return zero + i
}

// Add counts figures. In which order and in which lots they come matters for the mean's
// last bits alone.
func (h *Histogram) Add(figures []float64) {
	var mean, m2 float64
	for i, x := range figures {
		k := bin(x)
		if e := &h.extents[k]; h.counts[k] == 0 {
			*e = extent{x, x}
		} else {
			e.low, e.high = min(e.low, x), max(e.high, x)
		}
		h.counts[k]++
		h.sums[k] += x
		if x < h.least {
			h.least = x
		}
		if x > h.most {
			h.most = x
		}
		off := x - mean // by Welford's method
		mean += off / float64(i+1)
		m2 += off * (x - mean)
	}
	n, k := float64(h.trials), float64(len(figures))
	if k == 0 {
		return
	}
	off := mean - h.mean // and two lots put together by Chan's
	h.m2 += m2 + off*off*n*k/(n+k)
	h.mean += off * k / (n + k)
	h.trials += int64(len(figures))
}

// Trials is how many were counted.
func (h *Histogram) Trials() int64 { return h.trials }

// Range is the least and the greatest figure.
func (h *Histogram) Range() (least, most float64) { return h.least, h.most }

// Quantile is the figure below which the share p of the trials lies.
func (h *Histogram) Quantile(p float64) float64 {
	if h.trials == 0 {
		return math.NaN()
	}
	rank := max(0, min(1, p)) * float64(h.trials)
	var below int64
	for i, n := range h.counts {
		if n > 0 && float64(below+n) >= rank {
			low, high := h.within(i)
			return low + (high-low)*max(0, rank-float64(below))/float64(n)
		}
		below += n
	}
	return h.most
}

// within are the least and the greatest figure of a bin that has any.
func (h *Histogram) within(i int) (low, high float64) {
	return h.extents[i].low, h.extents[i].high
}

// Share is the share of the trials in each of some even slices from low to high, those
// beyond counted in the first and the last.
func (h *Histogram) Share(low, high float64, slices int) []float64 {
	out := make([]float64, slices)
	for i, n := range h.counts {
		if n > 0 {
			at := (h.sums[i]/float64(n) - low) / (high - low) * float64(slices)
			out[int(max(0, min(float64(slices-1), at)))] += float64(n) / float64(h.trials)
		}
	}
	return out
}
