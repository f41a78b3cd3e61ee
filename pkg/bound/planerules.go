package bound

import (
	"math"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/affine"
	"ledgerboard/pkg/model"
)

// Errors smaller than the least share of a value are not kept apart; no more than the
// most are.
const (
	leastApart = 1e-5 // of the value
	mostApart  = 640
)

// planeRules are those of planes in a region. They count the errors kept apart.
type planeRules struct {
	used int
	region

	signs  [2]float64 // what rules of other numbers are asked of
	ranges []affine.Number
}

func (*planeRules) Number(x *model.Expr) Plane { return Plane{C: x.Near()} }

func (*planeRules) Int(n int) Plane { return Plane{C: float64(n)} }

func (p *planeRules) Truth(x Plane) (canHold, canFail bool) {
	lo, hi := p.bounds(x)
	return !(hi < 0.5), !(lo > 0.5)
}

func (*planeRules) Whole(x Plane) (int, bool) {
	lo, hi := x.Bounds()
	n := math.Round(lo)
	return int(n), n == math.Round(hi)
}

func (*planeRules) Unknown() (Plane, error) { return unknownPlane(), nil }

func (*planeRules) Last(x Plane) int {
	_, hi := x.Bounds()
	if !(hi <= math.MaxInt32) {
		return math.MaxInt32
	}
	return int(math.Round(hi))
}

func (*planeRules) Keep(x Plane) Plane { return x }

// off is x with an error of up to r either way, of its own if it is large.
func (p *planeRules) off(x Plane, r float64) Plane {
	switch {
	case r == 0:
		return x
	case math.IsNaN(r):
		return unknownPlane()
	case r < leastApart*math.Abs(x.C) || p.used >= mostApart || math.IsInf(r, 0):
		x.E += r
		return x
	}
	s := p.take(p.used + 1)
	copy(s, x.S)
	s[p.used] = r
	x.S = s
	p.used++
	return x
}

// Apply carries out an operator. Words for which planes have no rule of their own
// take the rule over ranges, of values that have nothing to do with each other.
func (p *planeRules) Apply(op *formula.Op, a []Plane) (Plane, error) {
	switch op.Code {
	case formula.Add:
		return p.plus(a[0], 1, a[1]), nil
	case formula.Sub:
		return p.plus(a[0], -1, a[1]), nil
	case formula.Negative:
		return p.scaled(-1, a[0]), nil
	case formula.Mul:
		return p.mul(a[0], a[1]), nil
	case formula.Div:
		return p.div(a[0], a[1]), nil
	case formula.Min, formula.Max:
		x := a[0]
		for _, y := range a[1:] {
			if op.Code == formula.Min {
				x = p.min(x, y)
			} else {
				x = p.scaled(-1, p.min(p.scaled(-1, x), p.scaled(-1, y)))
			}
		}
		return x, nil
	case formula.If:
		return p.either(a[0], a[1], a[2]), nil
	case formula.Cents:
		if !a[0].fixed() {
			x := a[0]
			if x.E += 0.005; x.capped {
				x = x.within(x.low-0.005, x.top+0.005)
			}
			return x, nil
		}
	case formula.Ceil, formula.Floor:
		return p.step(op, a[0]), nil
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual:
		d := p.plus(a[0], -1, a[1])
		if sign := d.sign(); sign != 0 {
			p.signs = [...]float64{sign, 0}
			return Plane{C: op.Float(p.signs[:])}, nil
		}
		p.ranges = append(p.ranges[:0], p.ranged(d), affine.Number{})
		return p.flat(op.Range(p.ranges)), nil
	}
	p.ranges = p.ranges[:0]
	for _, x := range a {
		p.ranges = append(p.ranges, p.ranged(x))
	}
	return p.flat(op.Range(p.ranges)), nil
}

// ranged is the range of a plane, of whose way nothing is known.
func (p *planeRules) ranged(x Plane) affine.Number {
	if x.fixed() {
		return affine.Exactly(x.C)
	}
	lo, hi := p.bounds(x)
	if math.IsInf(hi-lo, 0) || math.IsNaN(hi-lo) {
		return affine.Unknown()
	}
	return affine.Number{C: lo, Hi: hi - lo}
}

// flat is a plane that may be anything in a range.
func (p *planeRules) flat(x affine.Number) Plane {
	lo, hi := x.Bounds()
	switch {
	case lo == hi:
		return Plane{C: lo}
	case math.IsInf(lo, 0) || math.IsInf(hi, 0) || math.IsNaN(lo) || math.IsNaN(hi):
		return unknownPlane()
	}
	return p.off(Plane{C: lo + (hi-lo)/2}, (hi-lo)/2)
}

func (p *planeRules) mul(x, y Plane) Plane {
	if x.unknown() || y.unknown() {
		if x.fixed() && x.C == 0 || y.fixed() && y.C == 0 {
			return Plane{}
		}
		return unknownPlane()
	}
	line, err := p.times(x, y)
	return p.off(line, err)
}

// div is x ÷ y; of y that may be 0 nothing is known. 1 ÷ y lies between its chord and
// the tangent in the same direction.
func (p *planeRules) div(x, y Plane) Plane {
	if y.fixed() && y.C != 0 {
		return p.scaled(1/y.C, x)
	}
	lo, hi := p.bounds(y)
	switch {
	case y.unknown() || x.unknown() || lo <= 1e-9 && hi >= -1e-9:
		return unknownPlane()
	case hi < 0:
		return p.div(p.scaled(-1, x), p.scaled(-1, y))
	}
	slope := -1 / (lo * hi)
	chord, tangent := 1/lo-slope*lo, 2*math.Sqrt(-slope)
	inverse := p.off(p.plus(Plane{C: (chord + tangent) / 2}, slope, y), (chord-tangent)/2)
	return p.mul(x, inverse)
}

// min is the smaller of x and y. With d = x - y, min(d, 0) lies above its chord, by at
// most -lo·hi ÷ (hi - lo), and at most at a line of the same slope through 0.
func (p *planeRules) min(x, y Plane) Plane {
	d := p.plus(x, -1, y)
	switch d.sign() {
	case 1:
		return y
	case -1:
		return x
	}
	lo, hi := p.bounds(d)
	switch {
	case lo >= 0:
		return y
	case hi <= 0:
		return x
	case x.unknown() || y.unknown():
		return unknownPlane()
	}
	m, gap := -lo/(hi-lo), -lo*hi/(hi-lo)
	if gap > p.grave && p.open == nil {
		open := d
		p.open = &open
	}
	out := p.plus(y, m, d)
	out.C -= gap / 2
	xlo, xhi := p.bounds(x)
	ylo, yhi := p.bounds(y)
	return p.off(out, gap/2).within(math.Min(xlo, ylo), math.Min(xhi, yhi))
}

// either is x or y.
func (p *planeRules) either(cond, x, y Plane) Plane {
	canHold, canFail := p.Truth(cond)
	switch {
	case !canFail:
		return x
	case !canHold:
		return y
	case x.unknown() || y.unknown():
		return unknownPlane()
	}
	lo, hi := p.bounds(p.plus(y, -1, x))
	// y lies from lo to hi above x, so that either lies in between with x.
	lo, hi = math.Min(lo, 0), math.Max(hi, 0)
	x.capped = false
	x.C += (lo + hi) / 2
	return p.off(x, (hi-lo)/2)
}

// step is x rounded up or down to a whole number.
func (p *planeRules) step(op *formula.Op, x Plane) Plane {
	p.ranges = append(p.ranges[:0], p.ranged(x))
	r := op.Range(p.ranges)
	if r.Fixed() || x.unknown() {
		return p.flat(r)
	}
	// Steps lie up to 1 from the line, and round to the ninth decimal first.
	half := 0.5
	if op.Code == formula.Floor {
		half = -half
	}
	x.capped = false
	x.C += half
	return p.off(x, 0.5+1e-9)
}
