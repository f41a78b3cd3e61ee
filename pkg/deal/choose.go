package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// AsItIs is the option of doing nothing, which every room has.
const AsItIs = "as it is"

// A picked is the option that the scope takes of a room, and where it says so.
type picked struct {
	name string
	at   diag.Pos
	own  bool // said of this room alone
}

// scopeField reads which option is taken: one for all rooms, or one for each.
func (r *reader) scopeField(f *Field, g *reading) {
	switch g.node.shape {
	case scalar:
		g.ok = true
		r.scopeAll = &picked{plainKey(g.node.text), g.node.at, false}
	case mapping:
		g.ok = true
		for i := range g.node.entries {
			e := &g.node.entries[i]
			if !r.one(f, e.value) {
				continue
			}
			p := &picked{plainKey(e.value.text), e.value.at, true}
			if e.name == "all rooms" || e.name == "all" {
				p.own = false
				r.scopeAll = p
				continue
			}
			r.scopeOf[e.name] = p
			r.scopeKeys[e.name] = e.key
		}
	default:
		r.wants(f, g, scalar)
	}
}

// choose drops the options that are not taken, or keeps all and marks those that are.
func (r *reader) choose() {
	r.scopeNames()
	byRoom := map[*model.Member][]*plan{}
	var rooms []*model.Member
	for _, p := range r.plans {
		if byRoom[p.room] == nil {
			rooms = append(rooms, p.room)
		}
		byRoom[p.room] = append(byRoom[p.room], p)
	}
	var kept []*plan
	for _, room := range rooms {
		taken := r.taken(room, byRoom[room])
		for _, p := range byRoom[room] {
			switch {
			case r.allOptions:
				p.option.Give("chosen", model.Value{Number: flag(p == taken), Text: "scope", Pos: p.at})
				kept = append(kept, p)
			case p == taken:
				kept = append(kept, p)
			default:
				room.Remove(p.option)
			}
		}
	}
	r.plans = kept
	r.addedOptions()
}

// taken is the plan that the scope takes of a room, or nil for as it is.
func (r *reader) taken(room *model.Member, plans []*plan) *plan {
	pick := r.scopeOf[plainKey(room.Label)]
	if pick == nil {
		pick = r.scopeAll
	}
	if pick == nil {
		return plans[0]
	}
	if pick.name == AsItIs {
		return nil
	}
	for _, p := range plans {
		if plainKey(p.option.Label) == pick.name {
			return p
		}
	}
	if len(plans) == 1 && plans[0].option.Label == onlyOption {
		return plans[0]
	}
	names := optionNames(plans)
	switch near, ok := diag.Nearest(pick.name, names); {
	case pick.own && ok:
		r.say("unknown-option", pick.at, "%s has no option %s", room.Label, diag.Quote(pick.name))("did you mean %q?", near)
	case pick.own:
		r.say("unknown-option", pick.at, "%s has no option %s", room.Label, diag.Quote(pick.name))("its options are: %s", strings.Join(append(names, AsItIs), ", "))
	case r.known(pick.name):
		r.say("option-missing", plans[0].room.Pos, "%s has no option %s, so it stays as it is", room.Label, diag.Quote(pick.name))("add the option, or say   scope: {all rooms: %s, %s: %s}", pick.name, room.Label, names[0])
	}
	return nil
}

func optionNames(plans []*plan) []string {
	var out []string
	for _, p := range plans {
		out = append(out, p.option.Label)
	}
	return out
}

// known reports whether any room has the option.
func (r *reader) known(name string) bool {
	return slices.ContainsFunc(r.plans, func(p *plan) bool { return plainKey(p.option.Label) == name })
}

// scopeNames refuses an option that no room has, and rooms that there are not.
func (r *reader) scopeNames() {
	var options, rooms []string
	for _, p := range r.plans {
		options = append(options, p.option.Label)
		rooms = append(rooms, p.room.Label)
	}
	if all := r.scopeAll; all != nil && all.name != AsItIs && !r.known(all.name) && len(options) > 0 {
		tell := r.say("unknown-option", all.at, "no room has an option %s", diag.Quote(all.name))
		if near, ok := diag.Nearest(all.name, options); ok {
			tell("did you mean %q?", near)
		} else {
			slices.Sort(options)
			tell("the options are: %s", strings.Join(slices.Compact(options), ", "))
		}
	}
	for name, key := range r.scopeKeys {
		if slices.ContainsFunc(rooms, func(l string) bool { return plainKey(l) == name }) {
			continue
		}
		tell := r.say("unknown-room", key.at, "there is no room %s with options", diag.Quote(key.text))
		if near, ok := diag.Nearest(name, rooms); ok {
			tell("did you mean %q?", near)
		} else {
			tell("write a room's name, or   all rooms")
		}
	}
}

// addedOptions remembers what the options of rooms without work are; they cost nothing.
func (r *reader) addedOptions() {
	if r.allOptions {
		return
	}
	for _, room := range r.deal.Root.In("room") {
		for _, o := range room.In("option") {
			if !slices.ContainsFunc(r.plans, func(p *plan) bool { return p.option == o }) {
				room.Remove(o)
			}
		}
	}
}
