package deal

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/takeoff"
)

// runs are the lengths that a use needs in one piece each, before they are cut to the
// sticks there are: by the walls and openings of the room, for each door or window where
// it is so much for each, and else one run. What is bought beyond, for spoiled pieces, is
// one more, or several no longer than the longest.
func (c cutter) runs(use *model.Member) (out []takeoff.Piece) {
	need, net := units(c.of(use, "bought")), units(c.of(use, "net_use"))
	room := use.Parent.Parent.Parent.Label
	if need <= 0 {
		return nil
	}
	id := room
	if c.renews(use) {
		id += " (spare)"
	}
	for _, x := range c.following(use, net) {
		out = append(out, takeoff.Piece{Length: x, ID: id})
	}
	switch spare := need - net; {
	case len(out) == 0:
		return []takeoff.Piece{{Length: need, ID: id}}
	case spare > 0:
		longest := slices.MaxFunc(out, func(a, b takeoff.Piece) int { return cmp.Compare(a.Length, b.Length) }).Length
		parts, err := takeoff.Split(spare, longest)
		if err != nil {
			parts = []int64{spare} // which is too much to cut, and is refused there
		}
		for _, x := range parts {
			out = append(out, takeoff.Piece{Length: x, ID: room + " (spare)"})
		}
	}
	return out
}

// renews reports whether a use takes less than a foot for each foot along the walls: what
// breaks of trim that is taken off and set back.
func (c cutter) renews(use *model.Member) bool {
	line := cmp.Or(measureOf(use), use.Parent.Given.Of("measured").Refers) // of a count, what it counts of
	return slices.Contains([]string{"base_run", "crown_run", "casing_run"}, line) && c.of(use, "takes").LessThan(one)
}

// following are the pieces that make up a net length, or none where it follows neither
// walls nor openings nor a count.
func (c cutter) following(use *model.Member, net int64) []int64 {
	if all := along(c.shaped(use), net); len(all) > 0 {
		return c.mitred(use, all)
	}
	takes, item := c.of(use, "takes"), use.Parent
	if q := c.of(item, "quantity"); c.Work[item].Item.Unit == "each" && q.IsInteger() && q.IsPositive() && takes.Mul(q).Equal(c.of(use, "net_use")) {
		if one, err := takeoff.Split(units(takes), min(units(decimal.NewFromInt(7)), units(takes))); err == nil {
			return slices.Repeat(one, int(q.IntPart()))
		}
	}
	return nil
}

// along are the pieces of a room for a net length: each as often as it goes into that,
// or, where it is less than once around, one after the other until it is used up. The
// pieces are rounded singly, so their sum may be off by a unit for each.
func along(pieces []int64, net int64) []int64 {
	once, off := sum(pieces), int64(len(pieces))
	if once == 0 {
		return nil
	}
	if times := (net + off) / once; times > 0 {
		if rest := net - times*once; rest > off*times || rest < -off*times {
			return nil
		}
		return slices.Repeat(pieces, int(times))
	}
	var out []int64
	for _, x := range pieces {
		if x = min(x, net); x > 0 {
			out, net = append(out, x), net-x
		}
	}
	return out
}

func sum(all []int64) (total int64) {
	for _, x := range all {
		total += x
	}
	return total
}

// shaped are the pieces of a room for the measure that the use follows.
func (c cutter) shaped(use *model.Member) []int64 {
	room := use.Parent.Parent.Parent
	switch measureOf(use) {
	case "base_run":
		return c.seen(room, c.gaps(room))
	case "perimeter", "crown_run":
		return c.seen(room, takeoff.Gaps{})
	case "casing_run":
		return c.casings(room)
	case "closet_rod_run":
		var out []int64
		for _, s := range room.In("section") {
			if rod := units(c.of(s, "rod")); rod > 0 {
				out = append(out, rod)
			}
		}
		return out
	}
	return nil
}

// mitre is what a piece of casing is longer than the opening, for its corners: common
// practice, no source.
var mitre = units(decimal.New(25, -2)) // 3 inches

// mitred are the lengths to cut: casing goes around its opening and is longer.
func (c cutter) mitred(use *model.Member, all []int64) []int64 {
	if measureOf(use) != "casing_run" {
		return all
	}
	for i := range all {
		all[i] += mitre
	}
	return all
}

func measureOf(use *model.Member) string {
	if along, found := use.Given.Look("along"); found {
		return along.Refers
	}
	return use.Parent.Given.Of("measure").Refers
}

// seen are the pieces of a room's walls that are seen. All gaps come off the walls of the room, for a
// closet's door comes off on the room's side alone; those of its closets stay whole, unless the room's
// do not hold the gaps.
func (c cutter) seen(room *model.Member, gaps takeoff.Gaps) []int64 {
	own, closets := c.walls(room)
	if takeoff.Total(gaps) > sum(own) {
		return takeoff.Walls(slices.Concat(own, closets), gaps)
	}
	return takeoff.Walls(slices.Concat(takeoff.Walls(own, gaps), closets), takeoff.Gaps{})
}

// walls are the runs of wall of a room, and those of its closets. What a rectangle shares comes off its
// own wall of that length, or else the end of its longest, and off the longest of those before.
func (c cutter) walls(room *model.Member) (out, closets []int64) {
	for _, s := range room.In("section") {
		l, w := units(c.of(s, "length")), units(c.of(s, "width"))
		own := []int64{l, l, w, w}
		if s.Given.Of("closet").Number.IsPositive() {
			closets = append(closets, own...)
			continue
		}
		if x := units(c.of(s, "shared")); x > 0 {
			if i := slices.Index(own, x); i >= 0 {
				own = slices.Delete(own, i, i+1)
			} else {
				own = takeoff.Walls(own, takeoff.Gaps{Corners: []int64{x}})
			}
			out = takeoff.Walls(out, takeoff.Gaps{Corners: []int64{x}})
		}
		out = append(out, own...)
	}
	for _, l := range room.In("leg") {
		out = append(out, units(c.of(l, "leg_length")))
	}
	return out, closets
}

// gaps are what of a room's walls has no base: what stands against three of them stands
// across one, between the two others.
func (c cutter) gaps(room *model.Member) (out takeoff.Gaps) {
	for _, o := range room.In("opening") {
		if c.of(o, "floor_width").IsPositive() {
			n := c.of(o, "number").IntPart()
			out.Doors = append(out.Doors, slices.Repeat([]int64{units(c.of(o, "opening_width"))}, int(n))...)
		}
	}
	for _, f := range room.In("fitting") {
		x := units(c.of(f, "no_base"))
		switch deep := units(c.of(f, "fitting_depth")); {
		case x <= 0:
		case c.of(f, "walls_touched").Equal(decimal.NewFromInt(3)):
			one := takeoff.Alcove{Across: units(c.of(f, "fitting_length")), Deep: deep}
			out.Alcoves = append(out.Alcoves, slices.Repeat([]takeoff.Alcove{one}, int(c.of(f, "fitted").IntPart()))...)
		default:
			out.Corners = append(out.Corners, x)
		}
	}
	return out
}

func (c cutter) casings(room *model.Member) []int64 {
	var out []int64
	for _, o := range room.In("opening") {
		leg, head := units(c.of(o, "opening_height")), units(c.of(o, "opening_width"))
		one := []int64{leg, leg, head}
		if o.Given.Of("kind").Choice == "window" {
			one = append(one, head)
		}
		n := c.of(o, "number").Mul(c.of(o, "faces")).IntPart()
		out = append(out, slices.Repeat(one, int(n))...)
	}
	return out
}
