package deal

import (
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
	for _, n := range g.node.items {
		if !r.one(f, n) {
			continue
		}
		word, rest, _ := strings.Cut(n.text, " ")
		d, known := directions[strings.ToLower(word)]
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
		if d.line == "walk_east" {
			east = east.Add(x)
		} else {
			north = north.Add(x)
		}
	}
	if g.ok && (!east.Round(9).IsZero() || !north.Round(9).IsZero()) {
		r.say("walk-open", g.key.at, "the walk ends %s off to the %s", off(east, north), way(east, north))("the walls should lead back to where they began; check their lengths")
	}
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
