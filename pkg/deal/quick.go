package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// quickKinds are the sorts of room that are counted, by the keys of quick, and how many of each a home
// hardly has more than; common practice, no source.
var quickKinds = []struct {
	key, kind string
	most      int64
}{
	{"bedrooms", "bedroom", 10}, {"baths", "bath", 8}, {"kitchens", "kitchen", 3}, {"living rooms", "living", 8},
	{"halls", "hall", 10}, {"laundries", "laundry", 3}, {"basements", "basement", 3},
}

// quick adds rooms that are only counted to those that are measured, so that a house
// is priced before it is. A measured room of the same sort replaces a counted one.
func (r *reader) quick(root *node) {
	e := root.find("quick")
	if e == nil || e.value.shape != mapping {
		return
	}
	usual := grow(newSource(pricebook.QuickFile, pricebook.Quick), &r.diags)
	rooms := root.find("rooms")
	if rooms == nil {
		root.entries = append(root.entries, entry{"rooms", e.key, &node{shape: mapping, span: span{at: e.key.at}}})
		rooms = root.find("rooms")
	}
	if rooms.value.shape != mapping {
		return
	}
	hands := e.value.find("by")
	for _, q := range quickKinds {
		counted := e.value.find(q.key)
		if counted == nil || counted.value.shape != scalar {
			continue
		}
		n, err := quantity.ParseCount(counted.value.text)
		if err != nil || !n.IsInteger() || n.IntPart() > 20 {
			continue // refused where the key is read
		}
		if measured := measuredOf(rooms.value, q.kind); measured > int(n.IntPart()) {
			r.say("quick-fewer", counted.value.at, "%s: %s counted, and %d measured", q.key, counted.value.text, measured)("the measured ones count, and none is added; write how many there are in all, measured or not, or leave the key out")
		}
		for _, name := range freeNames(rooms.value, q.kind, int(n.IntPart())) {
			room := usual.find(q.kind).value.copied()
			room.entries = append(room.entries, text("kind", q.kind, counted.key), text("sized", "guessed", counted.key))
			if hands != nil && plainKey(hands.value.text) == "own hands" {
				room.replace("hired", "own hands")
			}
			rooms.value.entries = append(rooms.value.entries, entry{name, span{text: name, at: counted.key.at}, room})
		}
	}
	r.books[pricebook.QuickFile] = pricebook.Quick
}

// doubtQuick doubts more rooms of a sort counted than the house is said to have, or than homes have.
func (r *reader) doubtQuick() {
	for _, q := range quickKinds {
		g := r.good("quick." + q.key)
		if g == nil {
			continue
		}
		has, said := r.houseHas(q.kind)
		switch {
		case said && g.number.GreaterThan(decimal.NewFromInt(int64(has))):
			r.say("quick-many", g.at(), "%s: %s counted, and the house has %s when the work is done", q.key, g.node.text, quantity.Counted(has, q.kind))("check both, for a digit too many; they are used as they stand")
		case !said && g.number.GreaterThan(decimal.NewFromInt(q.most).Mul(r.units())):
			r.say("quick-many", g.at(), "%s: %s counted, many for a house", q.key, g.node.text)("check it, for a digit too many; a house of several homes says so, as   house: {units: 3}   ; it is used as it stands")
		}
	}
}

// freeNames are names for the rooms of a sort that are counted beyond the measured ones: the
// highest of the numbers that no room has.
func freeNames(rooms *node, kind string, counted int) (free []string) {
	missing := max(0, counted-measuredOf(rooms, kind))
	for i := 1; i <= counted || len(free) < missing; i++ {
		if name := fmt.Sprintf("%s %d", kind, i); rooms.find(name) == nil {
			free = append(free, name)
		}
	}
	return free[max(0, len(free)-missing):]
}

// measuredOf counts the rooms of a sort that the file names.
func measuredOf(rooms *node, kind string) int {
	n := 0
	for _, e := range rooms.entries {
		is := kindOfRoom(e.name, false)
		if said := e.value.entryOf("kind"); said != nil {
			is = plainKey(said.value.text)
		}
		if is == kind {
			n++
		}
	}
	return n
}

func text(key, value string, at span) entry {
	return entry{key, span{text: key, at: at.at}, &node{shape: scalar, span: span{text: value, at: at.at}}}
}

// copied is a copy of a node and all below it.
func (n *node) copied() *node {
	out := *n
	out.entries, out.items = nil, nil
	for _, e := range n.entries {
		out.entries = append(out.entries, entry{e.name, e.key, e.value.copied()})
	}
	for _, x := range n.items {
		out.items = append(out.items, x.copied())
	}
	return &out
}

// replace changes single values below a node.
func (n *node) replace(old, new string) {
	if n.shape == scalar && n.text == old {
		n.text = new
	}
	for _, e := range n.entries {
		e.value.replace(old, new)
	}
}
