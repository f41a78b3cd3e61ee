package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// AsItIs is the option of doing nothing, which every room has.
const AsItIs = "as it is"

// picks are what a scope says: one option for all rooms, or some for rooms by name.
type picks struct {
	all    *picked
	byRoom map[string]*picked // by evened-out name
	keys   map[string]span
}

// A picked is the option that the scope takes of a room, and where it says so.
type picked struct {
	name string
	at   diag.Pos
	own  bool // said of this room alone
}

// picksOf is what a scope says, as far as it can be read.
func picksOf(n *node) picks {
	out := picks{byRoom: map[string]*picked{}, keys: map[string]span{}}
	if n == nil {
		return out
	}
	if n.shape == scalar {
		out.all = &picked{plainKey(n.text), n.at, false}
	}
	for i := range n.entries {
		e := &n.entries[i]
		if e.value.shape != scalar {
			continue
		}
		p := &picked{plainKey(e.value.text), e.value.at, true}
		if e.name == "all rooms" || e.name == "all" {
			p.own = false
			out.all = p
			continue
		}
		out.byRoom[e.name] = p
		out.keys[e.name] = e.key
	}
	return out
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
		if l := p.option.Label; l != onlyOption && !slices.ContainsFunc(r.deal.Options, func(o string) bool { return plainKey(o) == plainKey(l) }) {
			r.deal.Options = append(r.deal.Options, l)
		}
		for _, w := range p.works {
			if w.byTheHour() {
				r.hourly[w.item.Trade] = true
			}
		}
		if p.room.Kind == "whole_house" {
			for _, w := range p.works {
				r.housePlans[w.item.Name] = append(r.housePlans[w.item.Name], p)
			}
			for _, s := range p.without {
				if it := r.itemNamed(plainKey(s.text)); it != nil {
					r.housePlans[it.Name] = append(r.housePlans[it.Name], p)
				}
			}
		}
	}
	r.checkOptions()
	counted := func(o scope) bool { return o.at.File == pricebook.QuickFile }
	own := func(o scope) bool { return !counted(o) }
	r.deal.OnlyCounted = slices.ContainsFunc(r.items["<option>"], counted) && !slices.ContainsFunc(r.items["<option>"], own)
	r.planned = r.ownScope(byRoom, rooms)
	r.inFile = r.plans
	var kept []*plan
	for _, room := range rooms {
		taken := r.taken(room, byRoom[room])
		if taken != nil {
			taken.taken = true
			r.takes = append(r.takes, plainKey(taken.option.Label))
			if r.pickFor(room) == nil && taken.option.Label != onlyOption {
				r.deal.Firsts = append(r.deal.Firsts, taken.option)
				if len(byRoom[room]) > 1 {
					r.unnamed = append(r.unnamed, taken.option)
				}
			}
		} else {
			r.takes = append(r.takes, AsItIs)
		}
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
	r.deal.Mixed = len(r.picks.byRoom) > 0
	r.plans = kept
	r.followScope()
	r.addedOptions()
}

// checkOptions refuses work beside options, which would be one more option that nobody asks
// for, and an option by the name of doing nothing.
func (r *reader) checkOptions() {
	with := map[*model.Member]bool{}
	for _, o := range r.items["<option>"] {
		with[o.member.Parent] = true
		if plainKey(o.member.Label) == AsItIs {
			r.say("option-name-taken", o.at, "an option of %s is called %s, as every room has one in which nothing is done", o.member.Parent.Label, diag.Quote(o.member.Label))("call it something else, e.g. light refresh; doing nothing needs no option")
		}
	}
	for _, p := range r.plans {
		if p.scope.member.Set != "option" && with[p.room] {
			r.say("work-beside-options", p.at, "%s has work and options", p.room.Label)("write the work in each of the options that it is part of; or, for a choice, make it an option of its own")
		}
	}
}

// pick is the plan that a scope takes of a room, or nil for as it is.
func (r *reader) pick(room *model.Member, plans []*plan) *plan {
	pick := r.pickFor(room)
	switch {
	case pick == nil:
		return plans[0]
	case pick.name == AsItIs:
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
	return nil
}

func (r *reader) pickFor(room *model.Member) *picked {
	if p := r.byRoom[plainKey(room.Label)]; p != nil {
		return p
	}
	return r.all
}

// taken is the plan that the scope takes of a room; it says where there is none.
func (r *reader) taken(room *model.Member, plans []*plan) *plan {
	found, pick := r.pick(room, plans), r.pickFor(room)
	if found != nil && found.option.Label == onlyOption && pick != nil && pick.own && pick.name != onlyOption {
		r.say("unknown-option", pick.at, "%s has work and no options", room.Label)("leave it out of the scope, for its work is done anyway, or make it   options: {%s: {work: {...}}}", pick.name)
	}
	if found != nil || pick.name == AsItIs {
		return found
	}
	names := optionNames(plans)
	switch near, ok := diag.Nearest(pick.name, append(slices.Clone(names), AsItIs)); {
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
		if p.option.Label != onlyOption {
			options = append(options, p.option.Label)
		}
		if !slices.Contains(rooms, p.room.Label) {
			rooms = append(rooms, p.room.Label)
		}
	}
	if all := r.picks.all; all != nil && all.name != AsItIs && !r.known(all.name) {
		tell := r.say("unknown-option", all.at, "no room has an option %s", diag.Quote(all.name))
		if near, ok := diag.Nearest(all.name, append(slices.Clone(options), AsItIs)); ok {
			tell("did you mean %q?", near)
		} else if options == nil {
			tell("no room has options: leave the scope out, or write them under a room, as   options: {%s: {work: {paint walls: hired}}}", all.name)
		} else {
			slices.Sort(options)
			tell("the options are: %s", strings.Join(slices.Compact(options), ", "))
		}
	}
	for name, key := range r.keys {
		if slices.ContainsFunc(rooms, func(l string) bool { return plainKey(l) == name }) {
			continue
		}
		tell := r.say("unknown-room", key.at, "there is no room %s with options", diag.Quote(key.text))
		if near, ok := diag.Nearest(name, rooms); ok {
			tell("did you mean %q?", near)
		} else if rooms == nil {
			tell("leave the scope out, or list the room, as   rooms: {%s: {size: 12' x 10', options: {...}}}", key.text)
		} else {
			tell("those are: %s; or write   all rooms", strings.Join(rooms, ", "))
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
