package deal

import (
	"fmt"
	"slices"
	"strings"
)

const mostLoans = 10

// list reads the items of a list, each a member of the model.
func (r *reader) list(s scope, f *Field, g *reading) {
	if !r.wants(f, g, list) {
		return
	}
	if f.Set == "loan" && len(g.node.items) > mostLoans {
		r.say("too-many", g.key.at, "%d loans, more than the %d that are read", len(g.node.items), mostLoans)("leave out those that do not matter")
		return
	}
	g.ok = true
	for i, item := range g.node.items {
		inner := scope{
			path:  fmt.Sprintf("%s%s[%d].", s.path, f.Key(), i+1),
			group: f.Path + "[]",
			at:    item.at,
		}
		if item.shape == refused {
			continue
		}
		if item.shape != mapping {
			r.say("want-group", item.at, "item %d of %s is %s, not a group of keys", i+1, f.Key(), item.shape.words())("write it like   - %s", strings.Trim(f.Example, "[]"))
			continue
		}
		inner.member = s.member.Add(f.Set, "", fmt.Sprintf("%s %d", f.Set, i+1))
		inner.member.Pos = item.at
		r.items[f.Set] = append(r.items[f.Set], inner)
		r.group(inner, item)
		r.label(inner, i, len(g.node.items))
	}
}

// listLoan makes a loan that stands by itself a list of one.
func (n *node) listLoan() {
	for _, name := range fieldAt("loans").names() {
		e := n.find(name)
		if e == nil || e.value.shape != mapping || !slices.ContainsFunc(e.value.entries, func(x entry) bool { return fieldNamed("loans[]", x.name) != nil }) {
			continue
		}
		e.value = &node{shape: list, span: span{at: e.value.at}, items: []*node{e.value}, flow: e.value.flow}
	}
}

// label names a member by what the file calls it.
func (r *reader) label(s scope, i, of int) {
	var parts []string
	for _, key := range []string{"name", "trade", "work"} {
		if g := r.got[s.path+key]; g != nil && g.ok {
			parts = append(parts, g.choice)
		}
	}
	switch {
	case len(parts) > 0:
		s.member.Label = strings.Join(parts, ": ")
	case s.member.Set == "loan" && of == 1:
		s.member.Label = "loan"
	case s.member.Set == "cost":
		s.member.Label = fmt.Sprintf("line %d", i+1)
	}
}

// loans are the scopes of the loans in order, lines those of the renovation lines.
func (r *reader) loans() []scope { return r.items["loan"] }
func (r *reader) lines() []scope { return r.items["cost"] }

// of returns what a group gives for a key, or nil.
func (r *reader) of(s scope, key string) *reading { return r.got[s.path+key] }

// good returns a reading that could be read, or nil.
func (r *reader) good(path string) *reading {
	if g := r.got[path]; g != nil && g.ok {
		return g
	}
	return nil
}
