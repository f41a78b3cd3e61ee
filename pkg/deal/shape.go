package deal

import (
	"errors"
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// each returns the values of a list, or the single value that stands for one.
func (r *reader) each(f *Field, g *reading) []*node {
	if g.node.shape == list {
		g.ok = true
		return g.node.items
	}
	if g.ok = r.wants(f, g, scalar); g.ok {
		return []*node{g.node}
	}
	return nil
}

// one checks an item of such a list.
func (r *reader) one(f *Field, n *node) bool {
	switch n.shape {
	case scalar:
		return true
	case refused:
	default:
		r.say("want-value", n.at, "an entry of %s is %s, not a single value", f.title(), n.shape.words())("write it like   %s", f.example())
	}
	return false
}

// sizes reads rectangles: 8' 2" x 5', with what they share with another and with a
// ceiling of their own behind.
func (r *reader) sizes(s scope, f *Field, g *reading) {
	all := r.each(f, g)
	if s.member.Set != "room" && len(all) > 1 {
		r.say("want-value", all[1].at, "%s has %d sizes, and is one thing", s.member.Label, len(all))("write one size here, and name each other part by itself")
		g.ok = false
		return
	}
	for i, n := range all {
		if !r.one(f, n) {
			continue
		}
		text, m := n.span, s.member
		if r.severalInOne(s, f, all, i) {
			g.ok = false
			continue
		}
		if s.member.Set == "room" {
			m = s.member.Add("section", "", sectionLabel(f, i, len(all)))
			m.Pos = n.at
			if f.Key() == "closets" {
				m.Give("closet", model.Value{Number: one, Text: n.text, Pos: n.at})
			}
		}
		if !r.standsAlone(s, f, text, len(all)) {
			g.ok = false
			continue
		}
		if j := lastWord(text.text, " ceiling "); j >= 0 {
			r.ceiling(m, text.cut(j+len(" ceiling "), len(text.text)), "height")
			text = text.cut(0, j)
		}
		if j := lastWord(text.text, " sharing "); j >= 0 {
			shared := text.cut(j+len(" sharing "), len(text.text))
			x, ok := r.length(f, shared)
			if m.Give("shared", model.Value{Number: x, Text: shared.text, Pos: shared.at}); !ok {
				g.ok = false
			}
			text = text.cut(0, j)
		}
		if !r.size(f, m, text) {
			g.ok = false
		}
	}
}

// standsAlone refuses a joint of what has no other rectangle beside it, and a ceiling of what is no
// room; it reports whether there is none.
func (r *reader) standsAlone(s scope, f *Field, text span, rectangles int) bool {
	for _, word := range []string{" sharing ", " ceiling "} {
		j := lastWord(text.text, word)
		switch {
		case j < 0 || s.member.Set == "room" && (rectangles > 1 || word == " ceiling "):
			continue
		case s.member.Set == "room":
			r.say("bad-size", text.at, "%s is one rectangle, which shares nothing: %s", f.title(), diag.Quote(text.text))("leave   %s   out, or write the other rectangle before it, as   size: [18' x 13', 9' x 7' sharing 9']", strings.TrimSpace(text.text[j:]))
		default:
			r.say("bad-size", text.at, "%s is no rectangle of a room: %s", s.member.Label, diag.Quote(text.text))("leave   %s   out", strings.TrimSpace(text.text[j:]))
		}
		return false
	}
	return true
}

func sectionLabel(f *Field, i, of int) string {
	name := strings.TrimSuffix(f.Key(), "s")
	if name == "size" {
		name = "floor"
	}
	if of > 1 {
		return name + " " + decimal.NewFromInt(int64(i+1)).String()
	}
	return name
}

// sideLines are the lines that the two lengths of a size feed, by the set.
var sideLines = map[string][2]string{
	"section": {"length", "width"},
	"fitting": {"fitting_length", "fitting_depth"},
	"plane":   {"plane_length", "plane_width"},
	"opening": {"opening_width", "opening_height"},
}

func (r *reader) size(f *Field, m *model.Member, text span) bool {
	x, err := quantity.ParseSize(text.text)
	if err != nil {
		var q *quantity.Error
		if errors.As(err, &q) && f.Path == "<room>.size" {
			switch {
			case strings.Count(text.text, "x") == 2 && !strings.ContainsAny(text.text, ",;+"):
				q.Want = "its length and width here, and how high it is as   ceiling: 8'"
			case strings.HasPrefix(q.Found, "+") || strings.Count(text.text, "x") > 1: // of several rectangles, of which one is no size
				q.Want = "the rectangles as a list in brackets, the later ones with what they share: [18' x 13', 9' x 7' sharing 9']"
			case strings.HasPrefix(q.Found, "shar"):
				q.Want = "what a rectangle shares behind the word sharing, as   9' x 7' sharing 9'"
			}
		}
		if yes, unsaid := quantity.ParseYesNo(text.text); m.Set == "fitting" && unsaid == nil && yes {
			q.Want = "how many there are, as   " + m.Label + ": 1   , or its size, as   5' x 2'6\""
		}
		r.unread(f.title(), text, "bad-size", err, f.example())
		return false
	}
	if m.Set == "section" && x.First.Feet().LessThan(leastRoom) && x.Second.Feet().LessThan(leastRoom) && !x.First.Feet().IsZero() && !x.Second.Feet().IsZero() {
		r.say("too-small", text.at, "%s is %s, which is less than a room can be", f.title(), diag.Quote(text.text))("%s", roomMeant(x))
		return false
	}
	return r.giveSize(f, m, text, x)
}

// roomMeant is what the size of a room that is too small was probably meant for: a foot mark
// in place of an inch mark, or another of the metric units.
func roomMeant(x quantity.Size) string {
	if !x.First.Metric || !x.Second.Metric {
		return fmt.Sprintf("a stroke is a foot, two are an inch: %s' x %s'", x.First.Inches().Round(4), x.Second.Inches().Round(4))
	}
	a, b := x.First.Metres(), x.Second.Metres()
	for a.LessThan(one) || b.LessThan(one) {
		a, b = a.Shift(1), b.Shift(1)
	}
	return fmt.Sprintf("did you mean %s m x %s m? in centimetres that is %s cm x %s cm", a, b, a.Shift(2), b.Shift(2))
}

func (r *reader) giveSize(f *Field, m *model.Member, text span, x quantity.Size) bool {
	for i, side := range []quantity.Side{x.First, x.Second} {
		at := text.cut(side.At, side.At+len(side.Text))
		switch feet := side.Feet(); {
		case feet.IsZero():
			r.say("size-zero", at.at, "%s: %s is no length", f.title(), diag.Quote(side.Text))("write both lengths, e.g. %s", f.example())
			return false
		case feet.GreaterThan(longestSide):
			r.say("too-large", at.at, "%s: %s is more than can be right", f.title(), diag.Quote(side.Text))("accepted is at most 500 ft")
			return false
		default:
			m.Give(sideLines[m.Set][i], model.Value{Number: feet, Text: side.Text, Key: f.Key(), Pos: at.at})
		}
	}
	r.mixed(f, text, x)
	return true
}

// mixed doubts a size with metres on one side and feet or inches on the other.
func (r *reader) mixed(f *Field, text span, x quantity.Size) {
	if x.First.Metric == x.Second.Metric {
		return
	}
	r.say("size-mixed", text.at, "%s: %s has one side that is metric and one that is not", f.title(), diag.Quote(text.text))("write both in feet and inches, or both in metres; it is used as it stands, %s", x)
}

// leastRoom is less than both sides of any room, in feet: inches are written for feet.
var leastRoom = decimal.NewFromInt(2)

var longestSide = decimal.NewFromInt(500) // feet

// leastCeiling and mostCeiling are what the ceiling of a room may be, in feet.
var leastCeiling, mostCeiling = one, decimal.NewFromInt(40)

func (r *reader) length(f *Field, text span) (decimal.Decimal, bool) {
	return r.lengthOr(f, text, "")
}

// orSlope is what else a ceiling may be that cannot be read as a height.
const orSlope = "; a ceiling that slopes is   5' to 9'   , one with a ridge   5' to 9' both sides"

// lengthOr reads a length where something else may stand too, of which the hint tells.
func (r *reader) lengthOr(f *Field, text span, or string) (decimal.Decimal, bool) {
	x, err := quantity.ParseLength(text.text)
	bare := strings.Trim(text.text, "0123456789.") == "" // of which only the unit is missing
	if q := (*quantity.Error)(nil); !bare && errors.As(err, &q) {
		told := *q
		told.Want += or
		err = &told
	}
	if err != nil {
		r.unread(f.title(), text, "bad-length", err, f.example())
		return decimal.Zero, false
	}
	return x.Feet(), true
}

// ceilingField reads the ceiling of a room, for each of its rectangles.
func (r *reader) ceilingField(s scope, f *Field, g *reading) {
	if g.ok = r.wants(f, g, scalar); !g.ok {
		return
	}
	r.ceiling(s.member, g.node.span, "room_ceiling")
}

// ceiling reads 9 ft, 5' to 9', or 5' to 9' both sides.
func (r *reader) ceiling(m *model.Member, text span, line string) {
	f := &Field{Path: "ceiling", Example: "9 ft"}
	low := ""
	if i := lastWord(text.text, " both sides"); i > 0 {
		m.Give("two_slopes", model.Value{Number: one, Text: text.text, Pos: text.at})
		text = text.cut(0, i)
	}
	if i := lastWord(text.text, " to "); i > 0 {
		part := text.cut(0, i)
		x, ok := r.lengthOr(f, part, orSlope)
		if !ok {
			return
		}
		low = part.text
		m.Give("low_height", model.Value{Number: x, Text: part.text, Pos: part.at})
		text = text.cut(i+len(" to "), len(text.text))
		line = "height"
	}
	x, ok := r.lengthOr(f, text, orSlope)
	switch {
	case !ok:
	case low != "" && !x.GreaterThan(m.Given.Of("low_height").Number):
		r.say("ceiling-order", text.at, "a ceiling from %s to %s does not rise", diag.Quote(low), diag.Quote(text.text))("write the lower end first, e.g. 5' to 9'")
	case x.LessThan(leastCeiling) || x.GreaterThan(mostCeiling):
		r.say("too-large", text.at, "a ceiling of %s cannot be right", diag.Quote(text.text))("accepted is at least 1 ft, at most 40 ft")
	default:
		m.Give(line, model.Value{Number: x, Text: text.text, Key: "ceiling", Pos: text.at})
	}
}

// slopeToSections hands a sloped ceiling of the room on to its rectangles, which are
// what slopes.
func slopeToSections(room *model.Member) {
	high, sloped := room.Given.Look("height")
	if !sloped {
		return
	}
	for _, sec := range room.In("section") {
		if _, own := sec.Given.Look("height"); own {
			continue
		}
		for _, line := range []string{"height", "low_height", "two_slopes"} {
			if v, ok := room.Given.Look(line); ok {
				sec.Give(line, v)
			}
		}
	}
	room.Give("room_ceiling", high)
	for _, line := range []string{"height", "low_height", "two_slopes"} {
		room.Withdraw(line)
	}
}
