package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// directions are the lines that a wall of a walk feeds, and their sign.
var directions = map[string]struct {
	line string
	back bool
}{
	"east": {"walk_east", false}, "west": {"walk_east", true}, "north": {"walk_north", false}, "south": {"walk_north", true},
}

// walls reads a walk around the walls: [east 12', north 10', west 12', south 10'].
func (r *reader) walls(s scope, f *Field, g *reading) {
	if !r.wants(f, g, list) {
		return
	}
	g.ok = true
	var east, north decimal.Decimal
	var walls []wall
	for _, n := range g.node.items {
		if !r.one(f, n) {
			continue
		}
		word, rest, _ := strings.Cut(n.text, " ")
		d, known := directions[strings.ToLower(word)]
		if !known && slants(word) {
			r.say("bad-walk", n.at, "%s slants, and a walk knows north, south, east and west alone", diag.Quote(n.text))("write a wall that slants as a step halfway, as   north 1' 6\", east 3', north 1' 6\"   for one that goes 3' east and 3' north: the floor is right, and the walls a little long")
			g.ok = false
			continue
		}
		if !known {
			r.say("bad-walk", n.at, "%s does not begin with north, south, east or west", diag.Quote(n.text))("say which way the wall runs and how long it is, e.g. east 12'; any wall may be called north")
			g.ok = false
			continue
		}
		length := n.cut(len(n.text)-len(rest), len(n.text))
		x, ok := r.length(f, length)
		if !ok {
			g.ok = false
			continue
		}
		if d.back {
			x = x.Neg()
		}
		m := s.member.Add("leg", "", strings.ToLower(word)+" "+length.text)
		m.Pos = n.at
		m.Give(d.line, model.Value{Number: x, Text: n.text, Key: "walls", Pos: length.at})
		from := corner{east, north}
		if d.line == "walk_east" {
			east = east.Add(x)
		} else {
			north = north.Add(x)
		}
		walls = append(walls, wall{from, corner{east, north}, n})
	}
	if g.ok && (!east.Round(9).IsZero() || !north.Round(9).IsZero()) {
		r.say("walk-open", g.key.at, "the walk ends %s off to the %s", off(east, north), way(east, north))("the walls should lead back to where they began; check their lengths")
		return
	}
	if a, b := crossing(walls); g.ok && b != nil {
		r.say("walk-crosses", b.at, "the wall %s meets the wall %s", diag.Quote(b.text), diag.Quote(a.text))("each wall of a walk ends where the next begins, and meets no other; check the lengths and the ways")
	}
}

// slants reports whether a direction lies between two of those that a walk knows.
func slants(word string) bool {
	word = strings.ReplaceAll(strings.ToLower(word), "-", "")
	return slices.Contains([]string{"northeast", "northwest", "southeast", "southwest", "ne", "nw", "se", "sw"}, word)
}

// A corner is where a walk has come to, in ft to the east and to the north of where it began.
type corner struct{ east, north decimal.Decimal }

// A wall of a walk, with where it stands in the file.
type wall struct {
	from, to corner
	said     *node
}

// crossing is the first wall of a walk that meets one before it, its neighbours apart, and
// that one; or nothing. Neighbours meet if one runs back over the other.
func crossing(walls []wall) (before, at *node) {
	for j := range walls {
		for i := range j {
			beside := i == j-1 || i == 0 && j == len(walls)-1
			if !beside && walls[i].meets(walls[j]) || beside && walls[i].overlaps(walls[j]) {
				return walls[i].said, walls[j].said
			}
		}
	}
	return nil, nil
}

// meets reports whether two walls have a point in common.
func (w wall) meets(o wall) bool {
	return shares(w.from.east, w.to.east, o.from.east, o.to.east) && shares(w.from.north, w.to.north, o.from.north, o.to.north)
}

// overlaps reports whether two walls that meet at a corner lie on one another.
func (w wall) overlaps(o wall) bool {
	back := func(a, b, c, d decimal.Decimal) bool { return b.Sub(a).Mul(d.Sub(c)).IsNegative() }
	return back(w.from.east, w.to.east, o.from.east, o.to.east) || back(w.from.north, w.to.north, o.from.north, o.to.north)
}

// shares reports whether two stretches, of which either may run back, have a point in common.
func shares(a, b, c, d decimal.Decimal) bool {
	return decimal.Max(decimal.Min(a, b), decimal.Min(c, d)).Round(9).LessThanOrEqual(decimal.Min(decimal.Max(a, b), decimal.Max(c, d)).Round(9))
}

func off(east, north decimal.Decimal) string {
	parts := []string{}
	for _, x := range []decimal.Decimal{east, north} {
		if !x.Round(9).IsZero() {
			parts = append(parts, x.Abs().Round(2).String()+" ft")
		}
	}
	return strings.Join(parts, " and ")
}

func way(east, north decimal.Decimal) string {
	parts := []string{}
	for _, d := range []struct {
		x          decimal.Decimal
		over, back string
	}{{east, "east", "west"}, {north, "north", "south"}} {
		switch {
		case d.x.Round(9).IsPositive():
			parts = append(parts, d.over)
		case d.x.Round(9).IsNegative():
			parts = append(parts, d.back)
		}
	}
	return strings.Join(parts, " and ")
}
