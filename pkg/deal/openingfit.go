package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// lowOpening is, in ft, how high a way through a wall that one walks through is at least;
// common practice, no source.
var lowOpening = decimal.NewFromInt(6)

// lowOpeningOld is likewise, in ft, under a roof or a low ceiling, as of an old attic; common practice,
// no source.
var lowOpeningOld = decimal.NewFromInt(5)

// lowRoom is how high, in ft, a room is at its highest in which doors may be lower; common practice, no
// source.
var lowRoom = decimal.New(75, -1)

// leastHeight is how high an opening that one walks through is at least. Where feet stand across and
// inches alone up, as in 2'8" x 68", feet have slipped, under a roof too.
func (d *Deal) leastHeight(o *model.Member) decimal.Decimal {
	high, slopes := d.highest(o.Parent), slices.ContainsFunc(o.Parent.In("section"), func(m *model.Member) bool {
		return m.Given.Of("low_height").Number.IsPositive()
	})
	sizes, _ := openingSizes(o)
	mixed := inchesAlone(sizes.Second.Text) != "" && inchesAlone(sizes.First.Text) == ""
	if mixed || !slopes && !(high.IsPositive() && high.LessThan(lowRoom)) {
		return lowOpening
	}
	return lowOpeningOld
}

// highest is how high a room is at its highest by what the file gives; none where it gives nothing.
func (d *Deal) highest(room *model.Member) decimal.Decimal {
	if high := highestGiven(room); high.Text != "" {
		return high.Number
	}
	return d.Root.Given.Of("usual_ceiling").Number
}

// inLowWall reports whether an opening is where no usual door can stand: in a room that is nowhere so
// high, or no higher than a knee wall of it.
func (d *Deal) inLowWall(o *model.Member) bool {
	door := usualSizes()["doors"].Second.Feet()
	low := func(x decimal.Decimal) bool { return x.IsPositive() && x.LessThan(door) }
	return low(d.highest(o.Parent)) || slices.ContainsFunc(o.Parent.In("section"), func(m *model.Member) bool {
		wall := m.Given.Of("low_height").Number
		return low(wall) && !o.Given.Of("opening_height").Number.GreaterThan(wall)
	})
}

// openingFits refuses an opening higher than its room or wider than the longest wall, and a door that
// lies on its side.
func (r *reader) openingFits(room, o *model.Member, longest, ceiling decimal.Decimal) {
	w, h, kind := o.Given.Of("opening_width").Number, o.Given.Of("opening_height").Number, o.Given.Of("kind").Choice
	high, wide := r.unfit(o, "opening_height"), r.unfit(o, "opening_width")
	lies := w.GreaterThan(h) && kind != "window" && h.LessThan(lowOpening) // a garage door and a slider are wide
	if !high && !wide && !lies {
		return
	}
	number := o.Given.Of("number")
	sizes, counted := openingSizes(o)
	most := func(x decimal.Decimal) string { return lengthText(x, sizes.First.Text) }
	turned := sideText(sizes.Second) + " x " + sideText(sizes.First)
	fitsTurned := !h.Round(9).GreaterThan(longest.Round(9)) && !w.Round(9).GreaterThan(ceiling.Round(9)) && (kind == "window" || h.LessThan(w))
	name := strings.TrimSuffix(number.Key, "s") + " " + sideText(sizes.First) + " x " + sideText(sizes.Second)
	switch {
	case high && counted: // so of the usual size
		low := "6'"
		if ceiling.LessThan(lowOpening) {
			low = "5'"
		}
		r.say("opening-over-ceiling", o.Pos, "%s: %s are taken as %s, higher than the room, %s", number.Key, number.Text, strings.TrimPrefix(o.Label, strings.TrimSuffix(number.Key, "s")+" "), lengthText(ceiling, sideOf(room)))("write their size in place of the count, e.g.   %s: %s of 2'6\" x %s", number.Key, number.Text, low)
	case high:
		tell := r.say("opening-over-ceiling", o.Pos, "%s is higher than the room, %s", name, most(ceiling))
		if fitsTurned {
			tell("if it is wider than high, write across first and up second: %s; or give the room its ceiling", turned)
		} else {
			tell("check how high it is, the second of the two; or give the room its ceiling")
		}
	case wide:
		tell := r.say("opening-over-wall", o.Pos, "%s is wider than the longest wall, %s", name, most(longest))
		if fitsTurned {
			tell("if it is higher than wide, write across first and up second: %s", turned)
		} else {
			tell("check how wide it is, the first of the two, and the size of the room; what goes around a corner is two")
		}
	default:
		tell := r.say("door-wide", o.Pos, "%s is wider than it is high", name)
		if kind == "door" {
			tell("write across first and up second: %s", turned)
		} else {
			tell("write across first and up second: %s; what does not reach the floor goes under windows", turned)
		}
	}
}

// openingSizes are the two sides of an opening, and whether it is counted alone, so of the usual size.
func openingSizes(o *model.Member) (quantity.Size, bool) {
	number := o.Given.Of("number")
	if _, err := quantity.ParseCount(number.Text); err == nil {
		return usualSizes()[number.Key], true
	}
	x, _ := quantity.ParseOpenings(number.Text) // it was read so
	return x.Size, false
}

// sideOf is a side of a room as the file writes it, or nothing.
func sideOf(room *model.Member) string {
	if floors := room.In("section"); len(floors) > 0 {
		return floors[0].Given.Of("length").Text
	}
	return ""
}

// sideText is a side as the file writes it: in metres or in feet and inches.
func sideText(s quantity.Side) string {
	if s.Metric {
		return s.Metres().Round(3).String() + " m"
	}
	return s.Length.String()
}
