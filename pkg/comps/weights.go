package comps

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"
)

// picks are the sales taken.
func (c *Choice) picks() []pick {
	out := make([]pick, len(c.Comps))
	for i, k := range c.Comps {
		out[i] = k.pick
	}
	return out
}

// alike are weights by likeness, less for what the regression found far off; they sum
// to one.
func (l *likeness) alike(picks []pick) []float64 {
	out := l.besideNearest(picks)
	normalise(out)
	return out
}

// besideNearest are those weights where the nearest counts 1, however far.
func (l *likeness) besideNearest(picks []pick) []float64 {
	out := make([]float64, len(picks))
	nearest := math.Inf(1)
	for _, p := range picks {
		nearest = min(nearest, p.d)
	}
	for i, p := range picks {
		out[i] = l.weight(pick{p.i, p.d - nearest}, tune.Narrow)
	}
	return out
}

// gathered are weights by likeness, less for what lies apart from the others.
func gathered(alike, logs []float64) []float64 {
	out := slices.Clone(alike)
	for range weighings {
		centre := dot(out, logs)
		for i := range out {
			out[i] = alike[i] / (1 + math.Abs(logs[i]-centre)/tune.Scatter)
		}
		normalise(out)
	}
	inMillionths(out)
	return out
}

// inMillionths rounds weights to millionths, none to less than one, that still sum to
// one; what rounding leaves goes to the heaviest.
func inMillionths(w []float64) {
	const parts = 1e6
	left, heaviest := parts, 0
	for i, x := range w {
		w[i] = max(1, math.Round(x*parts))
		left -= w[i]
		if w[i] > w[heaviest] {
			heaviest = i
		}
	}
	w[heaviest] += left
	for i := range w {
		w[i] /= parts
	}
}

func millionths(x float64) decimal.Decimal { return decimal.NewFromFloat(x).Round(6) }

func normalise(w []float64) {
	sum := 0.0
	for _, v := range w {
		sum += v
	}
	for i := range w {
		w[i] /= sum
	}
}
