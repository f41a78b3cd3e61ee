package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Unfit are the ways in which what is in a room cannot be beside it: higher than its ceiling, wider than
// its walls or longer than it is across; and how a roll of wallpaper gives no drop. The file refuses such, and so does the workbook.
func (d *Deal) Unfit(c *model.Cell) []Beside {
	room := c.Member.Parent
	switch c.Line.ID() {
	case "drop.roll_long":
		return d.noDrop(c.Member)
	case "inside.backsplash_height":
		room = c.Member
	}
	if room == nil || room.Kind != "inside" {
		return nil
	}
	switch c.Line.ID() {
	case "opening.opening_height", "fitting.surround", "inside.backsplash_height":
		return over(c, Part{Cell: d.Model.Find(room, "highest_ceiling"), Times: one})
	case "opening.opening_width":
		return over(c, d.longestOf(room)...)
	case "fitting.fitting_length", "fitting.fitting_depth":
		length := c.Line.Name == "fitting_length"
		switch sort := c.Member.Given.Of("sort").Choice; {
		case length && slices.Contains(oneWall, sort):
			return over(c, d.longestOf(room)...)
		case sort == "island":
			return over(c, d.acrossOf(room)...)
		case length && unknownSort(c.Member): // a bench may go around a corner
			return over(c, d.cornerOf(room)...)
		}
	}
	return nil
}

// noDrop is how not one drop can be cut of a roll, or of a half-drop pattern not one that is begun half of
// the repeat later.
func (d *Deal) noDrop(drop *model.Member) []Beside {
	none := func(line string) Beside {
		return Beside{{Parts: []Part{{Cell: d.Model.Find(drop, line), Times: one.Neg()}}, And: half}}
	}
	if drop.Given.Of("half_drop").Number.IsZero() {
		return []Beside{none("drops_a_roll")}
	}
	return []Beside{none("first_drops"), none("second_drops")}
}

// oneWall are the fixed parts that stand along one wall; cabinets go around corners.
var oneWall = []string{"tub", "shower", "vanity", "toilet", "sink"}

// over is how a cell is above some parts together; not at all without any.
func over(c *model.Cell, of ...Part) []Beside {
	if len(of) == 0 {
		return nil
	}
	s := Sum{Parts: []Part{{Cell: c, Times: one}}}
	for _, p := range of {
		p.Times = p.Times.Neg()
		s.Parts = append(s.Parts, p)
	}
	return []Beside{{s}}
}

// sidesOfFloor are the sides of a rectangle of a room.
func (d *Deal) sidesOfFloor(m *model.Member) []*model.Cell {
	return []*model.Cell{d.Model.Find(m, "length"), d.Model.Find(m, "width")}
}

// largestOf is the largest of some cells, none of none.
func largestOf(all []*model.Cell) []Part {
	if len(all) == 0 {
		return nil
	}
	return []Part{{Cell: all[0], Or: all[1:], Times: one}}
}

// longestOf is the longest side of a room's rectangles, or wall of a walk around it.
func (d *Deal) longestOf(room *model.Member) []Part {
	var all []*model.Cell
	for _, m := range room.In("section") {
		all = append(all, d.sidesOfFloor(m)...)
	}
	for _, leg := range room.In("leg") {
		all = append(all, d.Model.Find(leg, "leg_length"))
	}
	return largestOf(all)
}

// cornerOf is how long a length and a width of a room are together.
func (d *Deal) cornerOf(room *model.Member) (out []Part) {
	for _, m := range rectangles(room) {
		for _, side := range d.sidesOfFloor(m) {
			out = append(out, Part{Cell: side, Times: one})
		}
	}
	for _, leg := range room.In("leg") {
		out = append(out, Part{Cell: d.Model.Find(leg, "leg_length"), Times: half})
	}
	return out
}

// acrossOf is how far a room can be at most from wall to wall: the longer sides of its rectangles end to
// end, or half of a walk around.
func (d *Deal) acrossOf(room *model.Member) (out []Part) {
	if len(room.In("leg")) > 0 {
		return d.cornerOf(room)
	}
	for _, m := range rectangles(room) {
		out = append(out, largestOf(d.sidesOfFloor(m))...)
	}
	return out
}

// come is what some parts come to together, nothing where that cannot be told.
func (r *reader) come(parts []Part) decimal.Decimal {
	x, _ := Sum{Parts: parts}.Of(r.comesTo)
	return x
}

// longCloset is how a side of a closet is doubted as longer than its room is across, and largeCloset how a
// closet is as larger than all the rest of it.
func (d *Deal) longCloset(side *model.Cell) []Beside {
	return over(side, d.acrossOf(side.Member.Parent)...)
}

func (d *Deal) largeCloset(m *model.Member) []Beside {
	area := func(m *model.Member) Part { return Part{Cell: d.Model.Find(m, "area"), Times: one} }
	rest := []Part{{Cell: d.Model.Find(m.Parent, "floor_area"), Times: one}}
	for _, x := range m.Parent.In("section") {
		if isCloset(x) {
			taken := area(x)
			taken.Times = one.Neg()
			rest = append(rest, taken)
		}
	}
	return []Beside{append(over(area(m).Cell, rest...)[0], Sum{Parts: rest})} // and there is some
}

// isCloset reports whether a rectangle of a room is a closet.
func isCloset(m *model.Member) bool { return !m.Given.Of("closet").Number.IsZero() }

// besideFloor are the ways in which a side of a room's floor is doubted beside all of it.
func (d *Deal) besideFloor(c *model.Cell) (out []Beside) {
	room := c.Member.Parent
	floor := func(times decimal.Decimal) []Part {
		return []Part{{Cell: d.Model.Find(room, "floor_area"), Times: times}}
	}
	out = append(out, Beside{{Parts: floor(one), And: d.reader.usualFloor(room).Neg()}}) // feet for metres slip on both sides
	switch {
	case isCloset(c.Member):
		return append(append(out, d.longCloset(c)...), d.largeCloset(c.Member)...)
	case d.reader.livedIn(room):
		return append(out, d.smallFloor(room))
	}
	return out
}

// smallFloor is how a room is doubted for next to no floor.
func (d *Deal) smallFloor(room *model.Member) Beside {
	floor := d.Model.Find(room, "floor_area")
	return Beside{{Parts: []Part{{Cell: floor, Times: one.Neg()}}, And: smallRoom}, {Parts: []Part{{Cell: floor, Times: one}}}}
}
