package deal

import (
	"fmt"
	"strings"
)

// scopeField reads which option is taken: one for all rooms, or one for each.
func (r *reader) scopeField(f *Field, g *reading) {
	if g.node.shape == list {
		r.say("want-value", g.key.at, "scope is a list, and names one option for all rooms, or one for each room")("%s", r.scopeMeant(g))
		return
	}
	if g.node.shape != scalar && g.node.shape != mapping {
		r.wants(f, g, scalar)
		return
	}
	g.ok = true
	for _, e := range g.node.entries {
		if e.value.shape == list {
			option := r.anOption()
			if len(e.value.items) > 0 && e.value.items[0].text != "" {
				option = e.value.items[0].text
			}
			r.say("want-value", e.key.at, "the scope of %s is a list, and takes one option", e.key.text)("write   %s: %s", e.key.text, option)
			continue
		}
		r.one(f, e.value)
	}
	r.picks = picksOf(g.node)
}

// scopeMeant is how a scope is written that a list was meant for: of rooms with their options, of rooms
// alone, or of an option.
func (r *reader) scopeMeant(g *reading) string {
	var each []string
	for _, item := range g.node.items {
		for _, e := range item.entries {
			each = append(each, e.key.text+": "+e.value.text)
		}
	}
	if len(each) > 0 {
		return "write the rooms without dashes and square brackets:   scope: {" + strings.Join(each, ", ") + "}"
	}
	option, rooms := r.anOption(), r.root.find("rooms")
	for _, word := range g.words() {
		if rooms != nil && rooms.value.find(plainKey(word.text)) != nil {
			return fmt.Sprintf("write behind each room its option, as   scope: {%s: %s}", word.text, option)
		}
	}
	if named := g.words(); len(named) > 0 {
		option = named[0].text
	}
	return fmt.Sprintf("write   scope: %s   , or name rooms that differ, as   scope: {all rooms: %[1]s, bath: as it is}", option)
}

// anOption is an option of the file, for an example.
func (r *reader) anOption() string {
	if rooms := r.root.find("rooms"); rooms != nil {
		for _, room := range rooms.value.entries {
			if options := room.value.find("options"); options != nil && len(options.value.entries) > 0 {
				return options.value.entries[0].key.text
			}
		}
	}
	return "full gut"
}
