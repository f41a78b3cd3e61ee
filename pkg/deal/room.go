package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// kindWords are the words in a room's name that tell what sort of room it is. Never
// written to.
var kindWords = []struct{ word, kind string }{
	{"closet", "closet"}, {"pantry", "closet"}, {"larder", "closet"}, {"bedroom", "bedroom"}, {"bed ", "bedroom"}, {"nursery", "bedroom"},
	{"bath", "bath"}, {"powder", "bath"}, {"ensuite", "bath"}, {"washroom", "bath"}, {"lavatory", "bath"}, {"shower", "bath"}, {"toilet", "bath"},
	{"kitchen", "kitchen"}, {"laundry", "laundry"}, {"utility", "laundry"},
	{"basement", "basement"}, {"cellar", "basement"},
	{"hall", "hall"}, {"entry", "hall"}, {"foyer", "hall"}, {"stair", "hall"},
	{"living", "living"}, {"dining", "living"}, {"family", "living"}, {"den", "living"}, {"office", "living"},
	{"master", "bedroom"}, {"primary", "bedroom"}, {"guest room", "bedroom"},
}

// bathName matches the name of a room that is a bath if it has what only baths have; alone, or
// last in a name, it is one in any case.
var bathName = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(bath(room)?|en-?suite|en suite|w\.?c|water closet|wash ?room|rest ?room|lavatory|powder( room)?|toilet|shower( room)?)\b`)
})

// bedName matches a bedroom that is named by its number.
var bedName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\b(br|bed|bdrm) ?\d+\b`) })

// plumbed reports whether what only baths have stands fixed in a room.
func plumbed(room *model.Member) bool {
	return slices.ContainsFunc(room.In("fitting"), func(m *model.Member) bool {
		return slices.Contains([]string{"tub", "toilet", "shower"}, m.Given.Of("sort").Choice)
	})
}

// kindOfRoom is what sort of room a room is by its name and by whether it is plumbed.
func kindOfRoom(name string, plumbed bool) string {
	name = plainKey(name) + " "
	at := bathName().FindAllStringIndex(name, -1)
	switch {
	case at != nil && (plumbed || at[len(at)-1][1] == len(name)-1):
		return "bath"
	case strings.ContainsAny(name, "123456789") && bedName().MatchString(name):
		return "bedroom"
	}
	for _, k := range kindWords {
		if strings.Contains(name, k.word) {
			return k.kind
		}
	}
	if plumbed {
		return "bath"
	}
	return "other"
}

// kindOf is what sort of room a room of a deal that was read is; of any other its name alone tells.
func (d *Deal) kindOf(room *model.Member) string {
	if d.reader == nil {
		return kindOfRoom(room.Label, false)
	}
	return d.reader.roomKinds[room]
}

// apartName matches the name of a room that is out of the living area though above grade.
var apartName = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b((garage|carport|porch|patio|shed|crawl ?space)( \d+)?$|unfinished\b)`)
})

// apart is why a room is apart from the living area, by its name or kind, as in ANSI Z765: it
// is below grade, no room of the house, or unfinished; "" where it is not.
func apart(name, kind string) string {
	name = plainKey(name)
	switch {
	case belowGrade(name, kind):
		return "below grade"
	case apartName().MatchString(name) && !strings.Contains(name, "convert"):
		return "no finished room of the house"
	}
	return ""
}

// belowGrade reports whether a room is below grade by its name or kind.
func belowGrade(name, kind string) bool {
	return kind == "basement" || holdsAny(plainKey(name), "basement", "cellar")
}

// noRooms are what stands beside rooms, or for all of them, where they are listed.
var noRooms = []string{"outside", "whole house", "all rooms"}

func noRoomHint(name string) string {
	if name == "all rooms" {
		return "call it something else; in the scope, all rooms stands for every one"
	}
	return "write its work under   " + name + ": {work: ...}   beside the rooms, or call it something else, e.g. house"
}

// finishRoom sees to what a room leaves open.
func (r *reader) finishRoom(s scope, e *entry) {
	if at := plainKey(s.member.Label); slices.Contains(noRooms, at) {
		r.say("room-name-taken", e.key.at, "a room is called %s, which is no room here", diag.Quote(s.member.Label))("%s", noRoomHint(at))
	}
	kind := kindOfRoom(s.member.Label, plumbed(s.member))
	if g := r.of(s, "kind"); g != nil && g.ok {
		kind = g.choice
	}
	r.roomKinds[s.member] = kind
	for line, k := range map[string]string{"bath": "bath", "bedroom": "bedroom"} {
		if kind == k {
			s.member.Give(line, model.Value{Number: one, Text: s.member.Label, Pos: e.key.at})
		}
	}
	if _, said := s.member.Given.Look("counts_as_living"); !said {
		if why := apart(s.member.Label, kind); why != "" {
			s.member.Give("counts_as_living", model.Value{Text: why, Pos: e.key.at})
		}
	}
	size, walls := r.of(s, "size"), r.of(s, "walls")
	switch {
	case size != nil && walls != nil:
		r.say("shape-two-ways", walls.key.at, "the room has a size and a walk around its walls")("keep one of them")
	case walls != nil && s.member.Given.Of("low_height").Number.IsPositive():
		r.say("slope-of-walk", s.member.Given.Of("low_height").Pos, "a walk around the walls does not say how a sloped ceiling lies over %s", s.member.Label)(rectanglesForWalls)
	case size == nil && walls == nil && !r.odd[s.path] && e.value.shape == mapping:
		r.say("room-without-size", e.key.at, "the room has no size")("add   size: 12' x 14'   ; guess it first and measure later: sized: guessed")
	}
	if g := r.of(s, "sized"); g != nil && g.ok {
		if r.deal.Sized == nil {
			r.deal.Sized = map[string][]string{}
		}
		r.deal.Sized[g.choice] = append(r.deal.Sized[g.choice], s.member.Label)
	}
	if size != nil && size.ok {
		r.sharing(s.member)
	}
	slopeToSections(s.member)
}

// sortWords are the words in a fixed part's name that tell what it is.
var sortWords = []struct{ word, sort string }{
	{"tub", "tub"}, {"jacuzzi", "tub"}, {"whirlpool", "tub"}, {"shower", "shower"}, {"vanity", "vanity"},
	{"toilet", "toilet"}, {"commode", "toilet"}, {"water closet", "toilet"}, {" wc ", "toilet"}, {"medicine", "wall cabinet"},
	{"wall cabinet", "wall cabinet"}, {"upper", "wall cabinet"}, {"island", "island"}, {"base cabinet", "base cabinet"}, {"cabinet", "base cabinet"},
	{"lowers", "base cabinet"}, {"cupboard", "base cabinet"},
	{"sink", "sink"}, {"basin", "sink"},
}

// fixedWalls are how many walls a fixed part stands against where the file does not say, if
// not one: common practice, no source.
var fixedWalls = map[string]int64{"tub": 3, "shower": 3, "island": 0}

// sortOf is what a fixed part is by its name, or "".
func sortOf(name string) string {
	for _, w := range sortWords {
		if strings.Contains(" "+strings.ToLower(name)+" ", w.word) {
			return w.sort
		}
	}
	return ""
}

// leastFixed is the least side in feet of a cabinet, a tub or what else stands fixed by name:
// 6 inches; common practice, no source.
var leastFixed = decimal.New(5, -1)

// noFixedPart refuses what a room has a key of its own for, as doors and stairs.
func (r *reader) noFixedPart(s scope, e *entry) bool {
	for _, name := range []string{e.name, e.name + "s"} {
		if f := fieldNamed("<room>", name); f != nil && slices.Contains([]string{"doors", "windows", "closets", "stairs", "doorways", "cased openings"}, f.Key()) {
			r.odd[s.path] = true
			r.say("unknown-key", e.key.at, "%s is no fixed part, but belongs to the room", diag.Quote(e.key.text))("write it beside   fixed   , as   %s", f.example())
			return true
		}
	}
	return false
}

func (r *reader) finishFixed(s scope, e *entry) {
	m := s.member
	if r.noFixedPart(s, e) {
		return
	}
	if _, said := m.Given.Look("sort"); !said {
		if sort := sortOf(m.Label); sort != "" {
			m.Give("sort", model.Value{Choice: sort, Text: m.Label, Pos: e.key.at})
		}
	}
	sort := m.Given.Of("sort").Choice
	if _, said := m.Given.Look("walls_touched"); !said {
		walls, known := fixedWalls[sort]
		if !known {
			walls = 1
		}
		m.Give("walls_touched", model.Value{Number: decimal.NewFromInt(walls), Text: "usual for " + m.Label, Pos: e.key.at})
	}
	for _, line := range sideLines["fitting"] {
		if v, given := m.Given.Look(line); given && sort != "" && sort != "other" && v.Number.LessThan(leastFixed) {
			r.say("too-small", v.Pos, "%s: %s is less than one can be", m.Label, diag.Quote(v.Text))("write its length along the wall and its depth, with their units, e.g. 5' x 2'6\"")
			break
		}
	}
	if r.of(s, "size") == nil && !slices.Contains(sizeNeedless, sort) && !r.odd[s.path] {
		r.sizeless(e)
	}
}

// sizeNeedless are the fixed parts that a count is enough for. Never written to.
var sizeNeedless = []string{"toilet", "sink"}

// sizeless tells of a fixed part without a size, whose name may be misspelt.
func (r *reader) sizeless(e *entry) {
	tell := r.say("fixed-without-size", e.key.at, "%s has no size", diag.Quote(e.key.text))
	near, is := diag.Nearest(e.name, fittingSorts)
	switch {
	case is && near != e.name && slices.Contains(sizeNeedless, near):
		tell("did you mean %s? it needs none:   %s: 1", near, near)
	case is && near != e.name:
		tell("did you mean %s? write its length along the wall and its depth:   %s: 5' x 2'6\"", near, near)
	default:
		tell("write its length along the wall and its depth, e.g.   %s: 5' x 2'6\"", e.key.text)
	}
}
