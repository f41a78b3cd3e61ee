package comps

import (
	"math"
	"slices"
)

// same is how far two sales may differ in a trait and still be a pair but for
// another one; apartBy is how far they must differ for a pair to tell its worth.
// Bends and products with age are left to regressions: they never part a pair.
var (
	same = map[string]float64{"size": 0.07, "lot": 0.3, "garage area": 80, "age": 8,
		"size bend": bend, "lot bend": bend, "size by age": bend, "baths by age": bend, "lot by age": bend}
	apartBy = map[string]float64{"size": 0.08, "lot": 0.3, "garage area": 150, "age": 9}
)

const bend = 1e9

// timeApart is how many months must lie between a pair that tells the trend, and
// sameTime how many may where the trend is not known.
const timeApart, sameTime = 3, 4

// pairPlace is how far apart the houses of a pair may stand, metres.
const pairPlace = 1600

// pairs estimates each trait by paired comparison: the median of what every pair
// alike but for the trait says of it, the market's trend first. Where no pair tells,
// the trait is worth nothing, which is better than a guess that nobody made.
func (m *Market) pairs() *fit {
	n, k := len(m.sales), len(m.design.traits)
	f := &fit{beta: make([]float64, m.columns), cov: newSymmetric(m.columns), scale: usualScatter, weight: make([]float64, n)}
	for i := range f.weight {
		f.weight[i] = 1
	}
	if n > regressFrom*4 {
		return f // pairs of so many would take long; it only lacks traits to tell
	}
	m.estimate(f, k)
	for j, t := range m.design.traits {
		if same[t.name] == bend || t.line == Age && j > 0 && m.design.traits[j-1].line == Age {
			continue
		}
		m.estimate(f, j)
	}
	return f
}

// estimate draws column j from the pairs that differ in it alone.
func (m *Market) estimate(f *fit, j int) {
	var says []float64
	for a := range m.sales {
		for b := range a {
			if d, ok := m.pair(f, a, b, j); ok {
				says = append(says, d)
			}
		}
	}
	if len(says) == 0 {
		return
	}
	slices.Sort(says)
	mid := (says[(len(says)-1)/2] + says[len(says)/2]) / 2
	off := make([]float64, len(says))
	for i, v := range says {
		off[i] = v - mid
	}
	se := math.Abs(mid) // one pair says nothing of its own error
	if len(says) > 1 {
		se = madScale(off) * math.Sqrt(math.Pi/2/float64(len(says)))
	}
	f.beta[j] = mid
	f.cov.a[j*m.columns+j] = se * se
}

// pair returns what a unit of column j did to the log of the price between two
// sales, and whether they are a pair for it.
func (m *Market) pair(f *fit, a, b, j int) (float64, bool) {
	k := len(m.design.traits)
	x, y := m.row(a), m.row(b)
	gap := m.months[a] - m.months[b]
	if m.placed[a] && m.placed[b] && math.Hypot(m.east[a]-m.east[b], m.north[a]-m.north[b]) > pairPlace {
		return 0, false
	}
	if j == k && math.Abs(gap) < timeApart || j != k && f.beta[k] == 0 && math.Abs(gap) > sameTime {
		return 0, false
	}
	for i, t := range m.design.traits {
		d := math.Abs(x[i] - y[i])
		switch alike := same[t.name]; {
		case i == j:
			if least := apartBy[t.name]; d < max(least, 1e-9) {
				return 0, false
			}
		case j < k && t.line == m.design.traits[j].line && alike >= 8: // another column of the same thing
		case d > alike:
			return 0, false
		}
	}
	d := m.y[a] - m.y[b]
	if j == k {
		return d / gap, true
	}
	return (d - f.beta[k]*gap) / (x[j] - y[j]), true
}
