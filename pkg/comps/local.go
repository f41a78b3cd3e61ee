package comps

import "math"

// slope is a figure by which rates may differ from place to place, as a difference
// of a sale from the subject in steps of about one.
type slope struct {
	line Line
	of   func(l *likeness, i int) float64
}

// apart is the difference of two facts in steps, 0 if either is not known.
func apart(sale, subject Fact, by float64) float64 {
	if !sale.Known || !subject.Known {
		return 0
	}
	return (sale.Value - subject.Value) / by
}

var slopes = []slope{
	{Location, func(l *likeness, i int) float64 { return l.off(l.m.east[i]-l.east, i) }},
	{Location, func(l *likeness, i int) float64 { return l.off(l.m.north[i]-l.north, i) }},
	{Size, func(l *likeness, i int) float64 {
		return apart(Fact{l.m.area[i], l.m.sales[i].Area.Known}, Fact{l.area, l.s.Area.Known}, 1)
	}},
	{Lot, func(l *likeness, i int) float64 {
		return apart(Fact{l.m.lot[i], l.m.sales[i].Lot.Known}, Fact{l.lot, l.s.Lot.Known}, 1)
	}},
	{Rooms, func(l *likeness, i int) float64 { return apart(l.m.sales[i].Bedrooms, l.s.Bedrooms, 1) }},
	{Baths, func(l *likeness, i int) float64 { return apart(bathsOf(&l.m.sales[i].House), l.baths, 1) }},
	{Age, func(l *likeness, i int) float64 { return apart(l.m.sales[i].Built, l.s.Built, 20) }},
	{Garage, func(l *likeness, i int) float64 { return apart(l.m.sales[i].GarageArea, l.s.GarageArea, 300) }},
}

// off is a distance along an axis in steps of the reach.
func (l *likeness) off(metres float64, i int) float64 {
	if l.nowhere || !l.m.placed[i] || l.reach.place == 0 {
		return 0
	}
	return metres / l.reach.place
}

// local is how rates around the subject differ from those of the county.
type local struct {
	delta []float64  // by slope, of the log
	cov   *symmetric // of delta, with the level in front
}

// around estimates the local differences from the pool by ridge regression: a
// difference counts only as far as the sales bear it out, and is zero where they say
// nothing. The pool is adjusted by county rates.
func (l *likeness) around(pool neighbours) *local {
	n := 1 + len(slopes)
	out := &local{make([]float64, len(slopes)), newSymmetric(n)}
	if l.m.byPairs || len(pool.picks) < 3*n {
		return out
	}
	g, xy := newSymmetric(n), make([]float64, n)
	row := make([]float64, n)
	for k, p := range pool.picks {
		l.steps(p.i, row)
		w := l.weight(p, tune.Wide)
		g.add(w, row)
		for j, v := range row {
			xy[j] += w * v * pool.logs[k]
		}
	}
	for j, s := range slopes {
		ridge := tune.Slopes
		if s.line == Location {
			ridge = tune.Place
		}
		g.a[(j+1)*n+j+1] += ridge
		if s.line != Location && !l.m.tells(s.line, l.s) {
			g.strike(j + 1) // it would differ from nothing
		}
	}
	inv := g.invert()
	copy(out.delta, inv.times(xy)[1:])
	for i := range inv.a {
		out.cov.a[i] = inv.a[i] * l.m.fit.scale * l.m.fit.scale
	}
	return out
}

// steps writes 1 and the differences of a sale.
func (l *likeness) steps(i int, to []float64) {
	to[0] = 1
	for j, s := range slopes {
		to[1+j] = s.of(l, i)
	}
}

// weight is how much a sale counts: a bell over its likeness, and less where the
// regression found its price far off.
func (l *likeness) weight(p pick, width float64) float64 {
	w := math.Exp(-p.d / (2 * width * width))
	for range tune.Robust {
		w *= l.m.fit.weight[p.i]
	}
	return w
}
