package comps

import (
	"cmp"
	"math"
	"slices"
)

// pick is a sale of the market and how unlike the subject it is.
type pick struct {
	i int
	d float64 // sum of squares of the differences, each by what counts as one step
}

// reach is how far apart two houses may be for a difference to count as one step.
type reach struct {
	place  float64 // metres; it widens where sales are thin
	months float64
	area   float64 // of the log
	lot    float64 // of the log
	years  float64
}

// likeness is what the sales are compared by.
type likeness struct {
	m       *Market
	s       *House
	reach   reach
	place   []float64 // squares of the distances, metres
	east    float64
	north   float64
	area    float64 // log
	lot     float64
	baths   Fact
	nowhere bool // the place of the subject is not known
}

// bathsOf counts a half bath as half.
func bathsOf(h *House) Fact {
	return Fact{h.FullBaths.Value + h.HalfBaths.Value/2, h.FullBaths.Known}
}

// compare gets ready to compare the sales with a subject.
func (m *Market) compare(s *House) *likeness {
	east, north, known := m.flat.metres(s.Place)
	if !s.Place.Degrees { // metres on a plane say nothing beside degrees alone
		known = known && slices.ContainsFunc(m.sales, func(o *Sold) bool { return o.Place.Known && !o.Place.Degrees })
	}
	l := &likeness{m: m, s: s, nowhere: !known, east: east, north: north, area: math.Log(s.Area.Value), lot: logLot(s), baths: bathsOf(s)}
	l.reach = reach{months: tune.Months, area: tune.Size, lot: tune.Lot}
	l.reach.years = tune.Age + tune.AgeGrow*max(float64(m.Day.Year)-s.Built.Value, 0)
	l.place = make([]float64, len(m.sales))
	for i := range m.sales {
		a, b := m.east[i]-east, m.north[i]-north
		l.place[i] = a*a + b*b
	}
	for _, i := range m.stated { // who says how far off it is knows it
		l.place[i] = m.sales[i].Stated.Value * m.sales[i].Stated.Value
	}
	l.reach.place = l.within() + tune.Floor
	return l
}

// outlying is how many times the middle distance of a few sales, and neighbouring how many
// metres, a mile, one must be off not to set the reach: it is no reason for the near ones to
// count alike (common practice, no source).
const outlying, neighbouring = 4, Mile

// within is how far off the sale stands that sets the reach in place, metres.
func (l *likeness) within() float64 {
	var place []float64
	for i, d := range l.place {
		if l.located(i) {
			place = append(place, d)
		}
	}
	n := len(place)
	if n == 0 {
		return 0
	}
	if n > tune.Near {
		return math.Sqrt(smallest(place, tune.Near))
	}
	slices.Sort(place) // of squares
	most := max(outlying*outlying*place[(n-1)/2], neighbouring*neighbouring)
	for place[n-1] > most {
		n--
	}
	return math.Sqrt(place[n-1])
}

// located reports whether it is known how far the i-th sale stands from the subject.
func (l *likeness) located(i int) bool {
	return !l.nowhere && l.m.placed[i] || l.m.sales[i].Stated.Known
}

// logLot is the log of the lot, no smaller than an area can be read.
func logLot(h *House) float64 { return math.Log(max(h.Lot.Value, 100)) }

// unknown is what a thing that is not known of a sale counts as: half a step.
const unknown = 0.25

func step(diff, by float64, known bool) float64 {
	if !known {
		return unknown
	}
	diff /= by
	return diff * diff
}

// to returns how unlike the i-th sale is, or more than limit as soon as it is.
func (l *likeness) to(i int, limit float64) float64 {
	m, c, s := l.m, l.m.sales[i], l.s
	d := step(m.months[i], l.reach.months, true)
	switch {
	case l.located(i):
		d += l.place[i] / (l.reach.place * l.reach.place)
	case !l.nowhere || len(m.stated) > 0:
		d++ // as one that stands as far off as those that are near
	}
	if d > limit {
		return d
	}
	if s.Area.Known {
		d += step(m.area[i]-l.area, l.reach.area, c.Area.Known)
	}
	if s.Lot.Known {
		d += step(m.lot[i]-l.lot, l.reach.lot, c.Lot.Known)
	}
	if s.Built.Known {
		d += step(c.Built.Value-s.Built.Value, l.reach.years, c.Built.Known)
	}
	if d > limit {
		return d
	}
	if l.baths.Known {
		d += step(c.FullBaths.Value+c.HalfBaths.Value/2-l.baths.Value, tune.Bath, c.FullBaths.Known)
	}
	if s.Bedrooms.Known {
		d += step(c.Bedrooms.Value-s.Bedrooms.Value, tune.Beds, c.Bedrooms.Known)
	}
	if s.Condition.Known {
		d += step(c.Condition.Value-s.Condition.Value, 1, c.Condition.Known)
	}
	return d + tune.Style*unlike(s.Storeys, c.Storeys) + tune.Kind*unlike(s.Kind, c.Kind) +
		tune.Wall*unlike(s.Wall, c.Wall) + tune.Garage*unlike(s.Garage, c.Garage)
}

// unlike compares words: 0 for the same or where the subject's is not known.
func unlike(subject, sale string) float64 {
	switch {
	case subject == "" || subject == sale:
		return 0
	case sale == "":
		return 0.5
	}
	return 1
}

// nearest returns the n sales most like the subject, the most like first,
// those of the lines struck left out.
func (l *likeness) nearest(n int, strike []int) []pick {
	var picks []pick
	limit := math.Inf(1)
	for i := range l.m.sales {
		d := l.to(i, limit)
		if d >= limit || len(strike) > 0 && slices.Contains(strike, l.m.sales[i].Line) {
			continue
		}
		picks = append(picks, pick{i, d})
		if len(picks) >= 3*n {
			picks = first(picks, n)
			limit = picks[n-1].d
		}
	}
	return first(picks, n)
}

// first sorts the picks and cuts them to n; equals stand latest sale first.
func first(picks []pick, n int) []pick {
	slices.SortFunc(picks, func(a, b pick) int { return cmp.Or(cmp.Compare(a.d, b.d), b.i-a.i) })
	return picks[:min(n, len(picks))]
}
