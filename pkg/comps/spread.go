package comps

import (
	"cmp"
	"math"
	"slices"
)

// The share of sales under the low end of a range, and over its high end.
const tail = 0.10

// normalTail is how many standard deviations of a normal lie at such an end.
const normalTail = 1.2816

// spread returns how far the range reaches below and above the value, in logs. With
// a market behind it, it comes from how far the like sales around lie from the value
// once adjusted, held to what is usual in the county; else from the scatter of the
// few sales there are and what is usual elsewhere. Neither shows how far off the market's
// trend is, which carries them all alike: its error is added as one of its own.
func (c *Choice) spread(pool neighbours, value float64, weights, logs []float64, carried float64) (low, high float64) {
	if c.market.byPairs {
		s := few(value, c.like.alike(c.picks()), weights, logs, carried)
		return s, s
	}
	type far struct{ off, weight float64 }
	offs := make([]far, len(pool.picks))
	sum := 0.0
	for i, p := range pool.picks {
		w := math.Exp(-(p.d - pool.picks[0].d) / (2 * tune.Wide * tune.Wide))
		offs[i] = far{pool.logs[i] - value, w}
		sum += w
	}
	slices.SortFunc(offs, func(a, b far) int { return cmp.Compare(a.off, b.off) })
	at := func(share float64) float64 {
		below := 0.0
		for _, o := range offs {
			if below += o.weight; below >= share*sum {
				return o.off
			}
		}
		return offs[len(offs)-1].off
	}
	scale := c.market.fit.scale
	if scale < rounding { // prices without scatter tell nothing of what is usual
		scale = usualScatter
	}
	usual := normalTail * scale
	mixed := func(own float64) float64 {
		return math.Exp(tune.Local*math.Log(max(own, 0.02)) + (1-tune.Local)*math.Log(usual))
	}
	thin := math.Sqrt(1+effective(weights)) * c.market.fit.unseen() // fewer sales that count, a wider range
	with := func(reach float64) float64 { return math.Hypot(reach, normalTail*carried) }
	return with(tune.Lower * mixed(-at(tail)) * thin), with(tune.Upper * mixed(at(1-tail)) * thin)
}

// carried is the standard error, of the log, of what the market's trend does to the value: its
// own over the months that it carries the sales to the day, less what that error does between
// them, which the scatter has already. One that is given has none.
func (a *adjuster) carried(weights []float64) float64 {
	k, trend := len(a.m.design.traits), a.trend()
	if !trend.Told() {
		return a.drift(weights)
	}
	if trend.Error == 0 {
		return 0
	}
	variance := func(d []float64) float64 {
		_, se := a.effect(d, nil)
		return se * se
	}
	if a.m.byPairs {
		variance = func(d []float64) float64 { return trend.Error * trend.Error * d[k] * d[k] }
	}
	each, mean := 0.0, make([]float64, a.m.columns)
	for i, p := range a.choice.picks() {
		d := make([]float64, a.m.columns)
		for j := k; j < a.m.columns; j++ {
			d[j] = a.at[j] - a.m.row(p.i)[j]
		}
		if a.m.byPairs { // a share of the price for each month
			d[k] /= 1 + trend.Worth*d[k]
		}
		each += weights[i] * variance(d)
		for j := range d {
			mean[j] += weights[i] * d[j]
		}
	}
	return math.Sqrt(min(max(2*variance(mean)-each, 0), mostByEstimate*mostByEstimate))
}

// UsualDrift is the standard error, of the log, of what a market does in a month of which nothing
// tells it; common practice, no source.
const UsualDrift = 0.005

// drift is carried where nothing that is believed tells the trend.
func (a *adjuster) drift(weights []float64) float64 {
	mean, squares := 0.0, 0.0
	for i, p := range a.choice.picks() {
		months := a.m.months[p.i]
		mean += weights[i] * months
		squares += weights[i] * months * months
	}
	return min(UsualDrift*math.Sqrt(max(2*mean*mean-squares, 0)), mostByEstimate)
}

// effective returns what part of the spread of one sale is left in their mean.
func effective(weights []float64) float64 {
	s := 0.0
	for _, w := range weights {
		s += w * w
	}
	return s
}

// usualScatter is the spread of one adjusted sale, of the log, that is assumed of a
// market of which little is known, and priorSales how many sales it counts for: with
// them the range held eight in ten with any number of sales, on the tuning half of the
// county measured in the document comps.md.
const usualScatter, priorSales = 0.20, 8

// few returns the reach of a range with so few sales that their scatter itself is
// uncertain: the usual scatter and the one seen, by Student's t. What is seen of each
// counts by its likeness alone: the weights of the value spare those that lie apart,
// which would make the scatter too small.
func few(value float64, alike, weights, logs []float64, carried float64) float64 {
	n := float64(len(logs))
	seen := 0.0
	for i, l := range logs {
		seen += n * alike[i] * (l - value) * (l - value)
	}
	free := priorSales + n - 1
	s := math.Sqrt((priorSales*usualScatter*usualScatter + seen) / free)
	return student(free) * math.Hypot(s*math.Sqrt(1+effective(weights)), carried)
}

// student returns the upper tenth of Student's t by its expansion in 1/free
// (Abramowitz and Stegun 26.7.5, from memory), good to 0.01 from four degrees on.
func student(free float64) float64 {
	z := normalTail
	z3 := z * z * z
	z5 := z3 * z * z
	return z + (z3+z)/(4*free) + (5*z5+16*z3+3*z)/(96*free*free)
}
