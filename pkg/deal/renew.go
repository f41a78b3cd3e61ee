package deal

import (
	"slices"

	"ledgerboard/pkg/model"
)

// renew ties work that makes all of a part of the house new to that part, for which nothing
// is set aside where the work is done, seen or not.
func (r *reader) renew() {
	var parts []*model.Member
	var by [][]string
	for _, m := range r.deal.Root.In("check") {
		if c := checkOf(m); c.New {
			parts, by = append(parts, m), append(by, mendingOf(c, false).items)
		}
	}
	for _, w := range r.eachWork() {
		for i, part := range parts {
			if w.does(by[i]) {
				x := w.member.Add("renewal", "", part.Label)
				x.Pos = w.at
				x.Link(part)
			}
		}
	}
}

// does reports whether work is one of these by name, or is quoted with one of them in it.
func (w *work) does(names []string) bool {
	return slices.Contains(names, w.item.Name) || slices.ContainsFunc(w.includes(), func(name string) bool { return slices.Contains(names, name) })
}
