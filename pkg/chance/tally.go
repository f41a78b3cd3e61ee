package chance

import (
	"math"
	"slices"
)

// A tally counts offers dollar by dollar around the one that holds with a confidence, so
// that it is known to the dollar in memory that does not grow with the trials. Where to
// look the first offers tell.
type tally struct {
	confidence float64
	from       float64
	counts     []int64 // of from and each dollar above
	under      int64
	all        int64
}

// mostDollars is the widest part that is counted by the dollar.
const mostDollars = 1 << 21

func newTally(confidence float64) *tally { return &tally{confidence: confidence} }

func (t *tally) add(offers []float64) {
	if t.counts == nil {
		t.begin(offers)
	}
	for _, x := range offers {
		if math.IsNaN(x) {
			continue
		}
		t.all++
		switch i := x - t.from; {
		case i < 0:
			t.under++
		case int(i) < len(t.counts):
			t.counts[int(i)]++
		}
	}
}

// begin finds where to count: eight standard errors of a share about the confidence.
func (t *tally) begin(offers []float64) {
	known := slices.DeleteFunc(slices.Clone(offers), math.IsNaN)
	if len(known) == 0 {
		return
	}
	slices.Sort(known)
	n := float64(len(known))
	off := 8 * math.Sqrt(t.confidence*(1-t.confidence)/n)
	at := func(share float64) float64 { return known[int(max(0, min(n-1, share*n)))] }
	low, high := at(1-t.confidence-off), at(1-t.confidence+off)
	if 1-t.confidence-off <= 0 {
		low = 0
	}
	t.from = low
	t.counts = make([]int64, int(min(mostDollars, high-low+1)))
}

// highest is the highest price up to which at least so many offers reach; it is not known
// where too many lie under what is counted.
func (t *tally) highest(need int64) (price float64, known bool) {
	reach := t.all - t.under // offers of from and above
	if reach < need {
		return 0, false
	}
	for i, n := range t.counts {
		if reach -= n; reach < need {
			return t.from + float64(i), true
		}
	}
	return t.from + float64(len(t.counts)), false
}
