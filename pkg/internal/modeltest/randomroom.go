package modeltest

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// left is what a room still has for openings and fixed parts, so that no measure
// falls below nothing.
type left struct{ run, floor, wall decimal.Decimal }

// inside draws a room: its shape, its openings and its fixed parts.
func (d *drawer) inside(n int) *model.Member {
	r := d.Deal.Add("room", "inside", fmt.Sprintf("room %d", n))
	d.give(4, r, "room_ceiling", func() decimal.Decimal { return d.ft(7, 12) })
	var l left
	if d.chance(4) {
		l = d.byWalking(r)
	} else {
		l = d.rectangles(r)
	}
	if d.chance(3) {
		d.use("a closet")
		c := d.rectangle(r, "closet", 2, 6)
		c.GiveNumber("closet", one)
	}
	l.wall = l.run.Mul(decimal.NewFromInt(7)) // no room is lower, but attics
	if d.chance(2) {
		d.attic(r)
		l.wall = l.run.Mul(dec(3))
	}
	for range d.upTo(2) {
		d.opening(r, &l)
	}
	for range d.upTo(2) {
		d.fitting(r, &l)
	}
	d.details(r)
	return r
}

func (d *drawer) rectangle(r *model.Member, name string, low, high int64) *model.Member {
	s := r.Add("section", "", name)
	s.GiveNumber("length", d.ft(low, high))
	s.GiveNumber("width", d.ft(low, high))
	d.give(3, s, "height", func() decimal.Decimal { return d.ft(7, 12) })
	return s
}

// rectangles draws one or two; where they join, the second says how much they share.
func (d *drawer) rectangles(r *model.Member) left {
	a := d.rectangle(r, "floor", 6, 24)
	side := func(s *model.Member) (length, width decimal.Decimal) {
		return s.Given.Of("length").Number, s.Given.Of("width").Number
	}
	length, width := side(a)
	l := left{run: length.Add(width).Mul(dec(2)), floor: length.Mul(width)}
	if d.chance(3) {
		d.use("a room of two rectangles")
		b := d.rectangle(r, "bay", 3, 10)
		length2, width2 := side(b)
		shared := decimal.Min(length2, width2, length, width)
		b.GiveNumber("shared", shared)
		l.run = l.run.Add(length2.Add(width2).Sub(shared).Mul(dec(2)))
		l.floor = l.floor.Add(length2.Mul(width2))
	}
	return l
}

// attic lets the ceilings of a room fall; a knee of at least 3 ft stays.
func (d *drawer) attic(r *model.Member) {
	d.use("an attic")
	for _, s := range r.In("section") {
		s.GiveNumber("height", pick(d, dec(9), d.ft(7, 12)))
		s.GiveNumber("low_height", pick(d, dec(3), d.ft(3, 7)))
		d.giveFlag(8, s, "two_slopes")
	}
}

// byWalking draws a walk around the walls that ends where it began.
func (d *drawer) byWalking(r *model.Member) left {
	east, north := d.ft(6, 24), d.ft(6, 24)
	d.use("a room by walking")
	l := left{run: east.Add(north).Mul(dec(2)), floor: east.Mul(north)}
	if d.chance(6) {
		d.leg(r, east, decimal.Zero)
		d.leg(r, decimal.Zero, north)
		d.leg(r, east.Neg(), decimal.Zero)
		d.leg(r, decimal.Zero, north.Neg())
		return l
	}
	d.use("an ell by walking")
	in, up := d.ft(1, 5), d.ft(1, 5)
	d.leg(r, east, decimal.Zero)
	d.leg(r, decimal.Zero, up)
	d.leg(r, in.Neg(), decimal.Zero)
	d.leg(r, decimal.Zero, north.Sub(up))
	d.leg(r, in.Sub(east), decimal.Zero)
	d.leg(r, decimal.Zero, north.Neg())
	l.floor = l.floor.Sub(in.Mul(north.Sub(up)))
	return l
}

func (d *drawer) leg(r *model.Member, east, north decimal.Decimal) {
	l := r.Add("leg", "", "wall")
	if !east.IsZero() {
		l.GiveNumber("walk_east", east)
	}
	if !north.IsZero() {
		l.GiveNumber("walk_north", north)
	}
}

// opening draws doors or windows, if the room still has the wall for them.
func (d *drawer) opening(r *model.Member, l *left) {
	width, height, n := d.ft(2, 6), d.ft(2, 7), d.whole(1, 3)
	rest := left{l.run.Sub(n.Mul(width)), l.floor, l.wall.Sub(n.Mul(width).Mul(height))}
	if rest.run.IsNegative() || rest.wall.IsNegative() {
		return
	}
	*l = rest
	o := r.Add("opening", "", "opening")
	o.GiveNumber("opening_width", width)
	o.GiveNumber("opening_height", height)
	if d.word(12, o, "kind", "door", "window", "cased", "doorway"); !n.Equal(one) || d.chance(4) {
		o.GiveNumber("number", n)
	}
	d.give(8, o, "faces", func() decimal.Decimal { return d.whole(1, 2) })
}

// fitting draws fixed parts, if the room still has the floor and the wall for them.
func (d *drawer) fitting(r *model.Member, l *left) {
	f := model.Member{}
	d.word(14, &f, "sort", "tub", "shower", "vanity", "toilet", "sink", "base cabinet", "base cabinet", "wall cabinet", "island", "other")
	length, depth, n, walls, high := decimal.Zero, decimal.Zero, one, one, decimal.Zero
	switch f.Given.Of("sort").Choice { // where nothing is said of its surround
	case "tub":
		high = decimal.NewFromInt(6)
	case "shower":
		high = decimal.NewFromInt(7)
	}
	some := func(n int, line string, to *decimal.Decimal, x func() decimal.Decimal) {
		if d.give(n, &f, line, x) {
			*to = f.Given.Of(line).Number
		}
	}
	some(14, "fitting_length", &length, func() decimal.Decimal { return d.ft(1, 6) })
	some(14, "fitting_depth", &depth, func() decimal.Decimal { return d.ft(1, 3) })
	some(5, "fitted", &n, func() decimal.Decimal { return d.whole(1, 3) })
	some(8, "walls_touched", &walls, func() decimal.Decimal { return d.whole(0, 3) })
	some(5, "surround", &high, func() decimal.Decimal { return d.ft(1, 6) })
	run := decimal.Zero
	if walls.IsPositive() {
		run = n.Mul(length.Add(walls.Sub(one).Mul(depth)))
	}
	rest := left{l.run.Sub(run), l.floor.Sub(n.Mul(length).Mul(depth)), l.wall.Sub(run.Mul(high))}
	if rest.run.IsNegative() || rest.floor.IsNegative() || rest.wall.IsNegative() {
		return
	}
	*l = rest
	r.Add("fitting", "", "fitting").Given = f.Given
}

// details draws what is counted rather than measured.
func (d *drawer) details(r *model.Member) {
	if d.chance(5) {
		d.giveFlag(12, r, "counts_as_living")
		d.give(4, r, "backsplash_height", func() decimal.Decimal { return d.ft(1, 4) })
		d.give(8, r, "outlets", func() decimal.Decimal { return d.whole(0, 12) })
		d.give(8, r, "lights", func() decimal.Decimal { return d.whole(0, 6) })
		d.give(8, r, "registers", func() decimal.Decimal { return d.whole(0, 4) })
		d.giveFlag(6, r, "bath")
		d.giveFlag(6, r, "bedroom")
	}
	if d.chance(4) {
		r.GiveNumber("stair_treads", d.whole(0, 16))
		d.give(6, r, "tread_run", func() decimal.Decimal { return d.ft(0, 1) })
		d.give(6, r, "riser_height", func() decimal.Decimal { return d.ft(0, 1) })
		d.give(6, r, "stair_width", func() decimal.Decimal { return d.ft(2, 5) })
		d.give(6, r, "stair_rail_run", func() decimal.Decimal { return d.ft(0, 20) })
	}
}
