package deal

import (
	"cmp"
	"slices"
	"strings"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// A returned thing is what else is put where it came out, what the price book makes in its place
// where it makes nothing of that name, and the words by which a line of the file tells of it.
type returned struct {
	also []string
	made string
	work string // the item of the price book to name, where it is not the first that makes it
	told []string
}

// trimWords are how lines tell of base and casing.
var trimWords = []string{"baseboard", "casing", "trim", "moulding", "molding", "millwork"}

// returns are the things that come out, where their name does not say it all: a shower for a
// tub, a bare basin for a vanity. Never written to.
var returns = map[string]returned{
	"tub":            {also: []string{"shower pan", "shower walls"}},
	"shower pan":     {also: []string{"shower walls", "tub"}},
	"vanity":         {also: []string{"sink"}},
	"floor":          {also: []string{pricebook.WoodFinish, "level floor"}, told: []string{"floor", "wood", "level", "carpet", "laminate", "plank", "parquet"}},
	"tub walls":      {also: []string{"shower walls"}, told: []string{"tub", "shower", "surround", "tile"}},
	"shower walls":   {also: []string{"tub walls"}, told: []string{"tub", "shower", "surround", "tile"}},
	"wall surface":   {told: []string{}}, // a line for a wall tells nothing of its surface
	"ceiling finish": {also: []string{"ceiling surface"}, made: "ceiling surface", work: "skim ceiling", told: []string{"paint", "plaster"}},
	"wall finish":    {also: []string{"wall surface", "wall lining"}, told: []string{"paint", "wallpaper"}},
	"hung ceiling":   {also: []string{"ceiling surface"}, made: "ceiling surface", told: []string{"ceiling", "drywall"}},
	"backsplash":     {told: []string{"backsplash", "tile"}},
	"stair treads":   {told: []string{"stair", "tread", "carpet"}},
	"base":           {also: []string{"wainscot"}, work: "baseboard", told: trimWords},
	"casing":         {told: trimWords},
	"inside doors":   {also: []string{"closet doors"}, told: []string{"door"}},
	"appliances":     {also: []string{"range"}, made: "range", told: []string{"appliance", "range", "stove", "fridge", "refrigerator", "dishwasher"}},
}

// inItsPlace is all that is put where a thing came out.
func inItsPlace(thing string) []string { return append([]string{thing}, returns[thing].also...) }

// newThing is what the price book makes where a thing came out.
func newThing(thing string) string { return cmp.Or(returns[thing].made, thing) }

// takesOut is the thing that work takes out and that needs a new one in its place, "" where it
// takes out none: the walls of a surround are those of the tub or shower that has one, a floor
// of which a layer stays is there yet, and only a kitchen is never without appliances.
func (r *reader) takesOut(p *plan, w *work) string {
	switch thing := w.item.TakesOut; {
	case thing == "wet walls":
		if has := r.place(p); has.Shower && !has.Tub {
			return "shower walls"
		}
		return "tub walls"
	case thing == "appliances" && r.roomKinds[p.room] != "kitchen":
		return ""
	case thing == "floor" && r.layerLeft(p):
		return ""
	default:
		return thing
	}
}

// layerLeft reports whether the floor of a room has more layers than work of an option takes up.
func (r *reader) layerLeft(p *plan) bool {
	g := r.good(r.roomPaths[p.room] + "layers")
	if g == nil {
		return false
	}
	up := 0
	for _, w := range p.works {
		if w.item.TakesOut == "floor" || w.item.Name == "strip second floor layer" {
			up++
		}
	}
	return len(g.words()) > up
}

// putBack reports whether a thing is made new in an option or for the whole house, is named by
// a line of the file, or is said to be left out.
func (r *reader) putBack(p *plan, thing string) bool {
	made := func(x *work) bool {
		held := func(h *work) bool { return r.makes(h.item, thing) }
		return held(x) || slices.ContainsFunc(x.holds, held)
	}
	for _, o := range r.plans {
		if o == p || o.room.Kind == "whole_house" {
			left := func(s span) bool { return r.leftFor(r.itemNamed(plainKey(s.text)), thing) }
			if slices.ContainsFunc(o.works, made) || slices.ContainsFunc(o.without, left) {
				return true
			}
		}
	}
	told := func(m *model.Member) bool { return namesThing(m.Label, thing) }
	return slices.ContainsFunc(slices.Concat(r.deal.Root.In("cost"), r.deal.Root.In("general_fee")), told)
}

// makes reports whether an item makes a thing or what is put in its place; an owner's own item
// does where its name has the thing in it, and so does what finishes bare what came to light.
func (r *reader) makes(it *pricebook.Item, thing string) bool {
	switch {
	case it == nil || it.TakesOut != "":
		return false
	case slices.Contains(inItsPlace(thing), it.Thing()), finishes(it, thing):
		return true
	}
	return pricebook.Starter().Item(it.Name) == nil && it.Trade != "demolition" && namesThing(it.Name, thing)
}

// finishes reports whether an item makes do with what came to light under a thing, or makes its
// parts one by one.
func finishes(it *pricebook.Item, thing string) bool {
	switch thing {
	case "floor":
		return it.Measure == "open floor" && (it.Trade == "paint" || strings.HasSuffix(it.Name, " wood floor"))
	case "stair treads":
		return it.Measure == thing && it.Trade == "paint"
	case "hung ceiling":
		return it.Measure == "ceiling" && it.Trade == "paint"
	case "casing":
		return it.Trade == "carpentry" && strings.HasSuffix(it.Name, " casing")
	case "appliances":
		return it.Trade == thing
	}
	return false
}

// standsFor reports whether an item makes just this thing or brings along what does.
func (r *reader) standsFor(it *pricebook.Item, thing string) bool {
	makes := func(x *pricebook.Item) bool {
		return x != nil && (x.Thing() == newThing(thing) || finishes(x, thing))
	}
	brings := func(c pricebook.Companion) bool { return makes(r.itemNamed(plainKey(c.Item))) }
	return makes(it) || it != nil && slices.ContainsFunc(it.Brings, brings)
}

// leftFor reports whether to leave an item out says that no new thing is wanted: the walls of a
// surround are named as those of the tub that was there or of the shower in its place.
func (r *reader) leftFor(it *pricebook.Item, thing string) bool {
	if !slices.Contains([]string{"tub walls", "shower walls"}, thing) {
		return r.standsFor(it, thing)
	}
	return slices.ContainsFunc(inItsPlace(thing), func(walls string) bool { return r.standsFor(it, walls) })
}

// namesThing reports whether a name has a thing in it, or what is put in its place: countertops
// for a counter, a vanity for vanities.
func namesThing(name, thing string) bool {
	stems := returns[thing].told
	if stems == nil {
		for _, t := range inItsPlace(thing) {
			first, _, _ := strings.Cut(t, " ")
			stems = append(stems, strings.TrimRight(first, "sy"))
		}
	}
	return slices.ContainsFunc(strings.Fields(plainKey(name)), func(word string) bool {
		return slices.ContainsFunc(stems, func(stem string) bool { return strings.HasPrefix(word, stem) })
	})
}
