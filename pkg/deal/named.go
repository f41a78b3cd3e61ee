package deal

import (
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

const mostNamed = 200

// byName reads groups by name: rooms, options, fixed parts, trades, checks.
func (r *reader) byName(s scope, f *Field, g *reading) {
	if !r.wants(f, g, mapping) {
		return
	}
	if n := len(g.node.entries); n > mostNamed {
		r.say("too-many", g.key.at, "%d entries in %s, more than the %d that are read", n, f.Key(), mostNamed)("leave out those that do not matter")
		return
	}
	g.ok = true
	for i := range g.node.entries {
		e := &g.node.entries[i]
		if e.value.shape == refused || r.stray(e) || r.nameless(f, e) {
			continue
		}
		inner := scope{path: s.path + f.Key() + "." + e.name + ".", group: f.Of, member: r.namedMember(s, f, e), at: e.key.at}
		r.items[f.Of] = append(r.items[f.Of], inner)
		r.namedGroup(inner, f, e)
	}
}

// nameless refuses an entry with an empty name, by which pages and --set would not find it.
func (r *reader) nameless(f *Field, e *entry) bool {
	if strings.TrimSpace(e.key.text) != "" {
		return false
	}
	r.say("unknown-key", e.key.at, "there is no name before the colon")("name it, as in   %s", unbraced(f.Example))
	return true
}

// namedMember is the member of the model that an entry makes.
func (r *reader) namedMember(s scope, f *Field, e *entry) *model.Member {
	label := strings.Join(strings.Fields(e.key.text), " ")
	switch f.Of {
	case "<trade>":
		return r.trade(e.name)
	case "<check>":
		return r.houseCheck(e)
	case "<comp>", "<range>": // a sale becomes a member once it is chosen
		return s.member
	}
	kind := ""
	if f.Set == "room" {
		kind = "inside"
	}
	m := s.member.Add(f.Set, kind, label)
	m.Pos = e.key.at
	if f.Set == "room" {
		r.roomPaths[m] = s.path + f.Key() + "." + e.name + "."
	}
	return m
}

// shorts are the details that a single value means, by the rows of the group.
var shorts = map[string]string{"<fixed>": "size", "<room>": "size", "<check>": "state", "<trade>": "rate"}

func (r *reader) namedGroup(s scope, f *Field, e *entry) {
	switch {
	case e.value.shape == nothing && f.Of == "<option>": // as it is
	case e.value.shape == nothing:
		r.say("missing-value", e.key.at, "%s has no value", diag.Quote(e.key.text))("write it like   %s", unbraced(f.Example))
	case e.value.shape == scalar && shorts[f.Of] != "":
		short := shorts[f.Of]
		if _, err := quantity.ParseCount(e.value.text); err == nil && f.Of == "<fixed>" {
			short = "count"
		}
		part := *fieldNamed(f.Of, short)
		part.said = e.key.text
		r.field(s, &part, &entry{plainKey(part.Key()), e.key, e.value})
	case f.Of == "<range>" && e.value.shape == scalar:
		r.say("want-group", e.key.at, "%s is %s, not a group of keys", diag.Quote(e.key.text), e.value.shape.words())("for what comes out as planned write   %s: {spread: none}   , else low and high, as in   %s", e.key.text, unbraced(f.Example))
	case f.Of == "<fixed>" && e.value.shape == list:
		r.severalParts(s, e)
	case e.value.shape != mapping:
		r.say("want-group", e.key.at, "%s is %s, not a group of keys", diag.Quote(e.key.text), e.value.shape.words())("write it like   %s", unbraced(f.Example))
	default:
		r.group(s, e.value)
	}
	if finish := finishers[f.Of]; finish != nil {
		finish(r, s, e)
	}
}

// severalParts refuses fixed parts in one list: each stands along a wall by itself.
func (r *reader) severalParts(s scope, e *entry) {
	r.odd[s.path] = true
	key, sizes := e.key.text, []string{"5' x 2'6\"", "4' x 2'"}
	for i, n := range e.value.items[:min(len(sizes), len(e.value.items))] {
		sizes[i] = n.text
	}
	r.say("want-value", e.key.at, "%s is a list, and stands for one part of the room", diag.Quote(key))("write each by itself, named apart, e.g.   %s: %s   and   second %s: %s", key, plainSize(sizes[0]), key, plainSize(sizes[1]))
}

// finishers see to what a group leaves open, by its rows.
var finishers map[string]func(*reader, scope, *entry)

func init() {
	finishers = map[string]func(*reader, scope, *entry){"<room>": (*reader).finishRoom, "<fixed>": (*reader).finishFixed, "<option>": (*reader).finishOption, "<comp>": (*reader).finishComp}
}

// unbraced is an example of a group without its outer brackets.
func unbraced(example string) string {
	return strings.TrimSuffix(strings.TrimPrefix(example, "{"), "}")
}

// plainSize is a size without a joint, which a part of a room has none of.
func plainSize(text string) string {
	size, _, _ := strings.Cut(text, " sharing ")
	return size
}
