package deal

import (
	"cmp"
	"slices"

	"ledgerboard/pkg/pricebook"
)

// round decides on those that do not come where something else is done, by name: first on
// those of which all is known, then, where they wait for each other, on the first of all.
// Those of one name stay in the order of the file.
func (b *bringing) round() {
	all := b.later
	b.later = nil
	slices.SortStableFunc(all, func(x, y brought) int { return cmp.Compare(x.Item, y.Item) })
	turn := b.turn(all)
	var now []brought
	for _, x := range all {
		switch {
		case !slices.Contains(turn, x.Item):
			b.later = append(b.later, x)
		case !slices.ContainsFunc(x.Unless, func(name string) bool { return b.allDone(x, name) }):
			now = append(now, x)
		}
	}
	for i, x := range now {
		if i == 0 || x.Item != now[i-1].Item {
			b.ofOne(x.Item, now)
		}
	}
}

// turn are the names whose turn it is among companions sorted by name. One waits for others
// that are, or could bring in the end, what is done in its place.
func (b *bringing) turn(all []brought) []string {
	var names, waiting []string
	for _, x := range all {
		if !slices.Contains(names, x.Item) {
			names = append(names, x.Item)
		}
	}
	for _, x := range all {
		if !slices.Contains(waiting, x.Item) && slices.ContainsFunc(names, func(name string) bool { return b.leadsToAny(name, x.Unless) }) {
			waiting = append(waiting, x.Item)
		}
	}
	if len(waiting) == len(names) {
		return names[:1]
	}
	return slices.DeleteFunc(names, func(name string) bool { return slices.Contains(waiting, name) })
}

func (r *reader) leadsToAny(name string, others []string) bool {
	leads := r.leadsTo(chain{from: name})
	return slices.ContainsFunc(others, func(o string) bool { return leads[o] })
}

// bringsInEnd reports whether an item is another, brings it along, or brings what does.
func (r *reader) bringsInEnd(it, other *pricebook.Item) bool {
	return r.leadsTo(chain{from: it.Name})[other.Name]
}

// A chain starts at an item and goes on to what that brings, also once for the house if it is to.
type chain struct {
	from  string
	house bool
}

// leadsTo are the names of an item and of all that it could bring in the end.
func (r *reader) leadsTo(of chain) map[string]bool {
	if out := r.leads[of]; out != nil {
		return out
	}
	out := map[string]bool{}
	var follow func(name string)
	follow = func(name string) {
		it := r.book.Item(name)
		if out[name] || it == nil {
			return
		}
		out[name] = true
		for _, c := range it.Brings {
			if !c.House || of.house {
				follow(c.Item)
			}
		}
	}
	follow(of.from)
	if r.leads == nil {
		r.leads = map[chain]map[string]bool{}
	}
	r.leads[of] = out
	return out
}
