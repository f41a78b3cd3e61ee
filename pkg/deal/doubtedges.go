package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// edges are the keys of what work outside goes by that an area alone does not tell, by line: lengths,
// and footings where the deck has no size.
var edges = map[string]string{
	"eaves": "eaves: 84 ft", "rakes": "rakes: 62 ft", "gutters": "gutters: 84 ft",
	"foundation_run": onceAround, "house_perimeter": onceAround, "deck_footings": "deck footings: 6",
}

const onceAround = "around: 136 ft"

// ofRoof are the lines of edges that a roof given by its parts tells.
var ofRoof = []string{"eaves", "rakes", "gutters"}

// doubtEdges looks for work and materials along the edges of the roof or once around the
// house whose lengths nobody gave, be it as 0, and for footings that nobody counted: they would cost
// nothing without a word.
func (r *reader) doubtEdges() {
	var keys, names []string
	var roof, along bool
	note := func(room *model.Member, line, what string) {
		if line == "house_perimeter" {
			room = r.deal.Root
		}
		x, ok := r.worked(room, line)
		if _, said := room.Given.Look(line); edges[line] == "" || said || !ok || !x.IsZero() {
			return
		}
		if key := edges[line]; !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
		if !slices.Contains(names, what) {
			names = append(names, what)
		}
		roof = roof || slices.Contains(ofRoof, line)
	}
	for _, w := range r.chosenWorks() {
		room := w.member.Parent.Parent
		if w.quotedAll() {
			continue // all that it takes is in the quote
		}
		note(room, w.member.Given.Of("measure").Refers, w.label)
		for _, use := range w.member.In("use") {
			note(room, use.Given.Of("along").Refers, use.Label)
		}
	}
	for _, p := range r.chosenPlans() {
		for _, x := range p.idle {
			if it := r.prices().Item(x.Item); !r.does(it) && !x.by.broughtByQuote(x.Companion, r.prices()) {
				note(p.room, pricebook.MeasureNamed(it.Measure).Line, it.Name)
				along = along || slices.Contains(names, it.Name)
			}
		}
	}
	if keys != nil {
		tell := r.say("edges-missing", r.where("outside", "whole house"), "nothing is priced of %s: what they are measured by is 0", strings.Join(names, ", "))
		add := "add   outside: {" + strings.Join(keys, ", ") + "}"
		if roof {
			add += "   or give the roof its parts: roof: [{size: 40' x 28', pitch: 6/12}]"
		}
		if along {
			add += "   ; what would come along and is not wanted goes under   without"
		}
		tell("%s", add)
	}
}

// does reports whether the file names an item somewhere, such as by its number.
func (r *reader) does(it *pricebook.Item) bool {
	return slices.ContainsFunc(r.chosenWorks(), func(w *work) bool { return w.item == it && w.by == "" })
}

// doubtBedrooms looks for work that would come for each bedroom, such as alarms, where no room
// counts as one: nothing of it is priced. It is told at the work that the file names.
func (r *reader) doubtBedrooms() {
	for _, p := range r.chosenPlans() {
		for _, x := range p.idle {
			if it := r.prices().Item(x.Item); it.Measure == "house bedrooms" && !r.does(it) {
				r.say("no-bedroom", x.by.at, "no room counts as a bedroom, so nothing is priced of %s, which %s would bring along", it.Name, x.by.fromWhat())("say   kind: bedroom   in the rooms that are slept in, or count it:   %s", r.workIn("whole house", it.Name+": {by: hired, count: 3}"))
				return
			}
		}
	}
}

// doubtOutsideAlone looks for work that would come along and goes by the outside of the house,
// with work in a room or on the house as a whole: where that stands there is nothing of it. An outside
// that stays as it is since it has no such option is told of as such.
func (r *reader) doubtOutsideAlone() {
	asItIs, said := r.outsideAsItIs()
	if asItIs && !said {
		return
	}
	done := func(it *pricebook.Item) bool {
		return slices.ContainsFunc(r.chosenWorks(), func(w *work) bool {
			return w.item == it && (w.by == "" || w.member.Parent.Parent.Kind == "outside")
		})
	}
	for _, p := range r.chosenPlans() {
		for _, x := range p.idle {
			it := r.prices().Item(x.Item)
			if p.room.Kind == "outside" || pricebook.MeasureNamed(it.Measure).Of != "outside" || done(it) {
				continue
			}
			add := r.hiredOutside(it)
			if asItIs {
				add = r.countedIn(p.room, it)
			}
			r.say("outside-alone", x.by.at, "nothing is priced of %s, which %s would bring along: it goes by %s, outside", it.Name, x.by.fromWhat(), it.Measure)("add   %s   , or, if it is not wanted,   without: [%s]   beside the work", add, it.Name)
		}
	}
}

// outsideAsItIs reports whether the outside has work and the scope takes none of it, and whether it
// says so.
func (r *reader) outsideAsItIs() (is, said bool) {
	for _, p := range r.inFile {
		if p.room.Kind == "outside" && p.taken {
			return false, false
		}
		if p.room.Kind == "outside" {
			is, said = true, r.pickFor(p.room).name == AsItIs
		}
	}
	return is, said
}

// hiredOutside writes hired work outside, with what it goes by where the file says none of that.
func (r *reader) hiredOutside(it *pricebook.Item) string {
	work := r.workIn("outside", it.Name+": hired")
	if from := givenBy(it.Measure); from != "" && r.thereOutside(it).IsZero() {
		work = strings.Replace(work, "outside: {", "outside: {"+from+", ", 1)
	}
	return work
}

// countedIn writes hired work that goes by the outside where other work is done, with how much.
func (r *reader) countedIn(room *model.Member, it *pricebook.Item) string {
	_, count, _ := strings.Cut(givenBy(it.Measure), ": ")
	if much := r.thereOutside(it); much.IsPositive() {
		count = short(much) + " " + string(it.Unit)
	}
	work := r.workIn(room.Label, fmt.Sprintf("%s: {by: hired, count: %s}", it.Name, count))
	if room.Kind == "inside" {
		return "rooms: {" + work + "}"
	}
	return work
}

// thereOutside is how much there is outside of what an item goes by, as far as the file says.
func (r *reader) thereOutside(it *pricebook.Item) (much decimal.Decimal) {
	for _, out := range r.deal.Root.In("outside") {
		much, _ = r.worked(out, pricebook.MeasureNamed(it.Measure).Line)
	}
	return much
}

// doubtSinks looks for kitchens whose work would bring a new sink along, and that do not say that they
// have one: nothing of it is priced.
func (r *reader) doubtSinks() {
	for _, p := range r.chosenPlans() {
		for _, x := range p.idle {
			if it := r.prices().Item(x.Item); r.roomKinds[p.room] == "kitchen" && it.Measure == "sinks" && it.Makes == "sink" && !r.does(it) {
				r.say("sink-unsaid", x.by.at, "nothing is priced of %s, which %s would bring along: %s does not say that it has a sink", it.Name, x.by.fromWhat(), p.room.Label)("add   fixed: {sink: 1}   in the room, or, if the sink stays,   without: [%s]   beside the work", it.Name)
				break
			}
		}
	}
}

// doubtRails looks for work on stairs that would bring a handrail along, where nobody says how long it is.
func (r *reader) doubtRails() {
	for _, p := range r.chosenPlans() {
		for _, x := range p.idle {
			if it := r.prices().Item(x.Item); p.room.Kind == "inside" && it.Measure == "stair rail run" && r.unpriced(p, x) {
				r.say("rail-unsaid", x.by.at, "nothing is priced of %s, which %s would bring along: %s does not say how long the rail of its stairs is", it.Name, x.by.fromWhat(), p.room.Label)("add   rail: 12 ft   under   stairs   of the room, or, if it stays,   without: [%s]   beside the work", it.Name)
				break
			}
		}
	}
}

// fromWhat names work, with what brought it.
func (w *work) fromWhat() string {
	if w.by == "" {
		return diag.Quote(w.label)
	}
	return fmt.Sprintf("%s (brought by %s)", w.item.Name, diag.Quote(w.by))
}

// doubtOwnWithoutHours looks for own work that the file names and of which the price book
// knows no hours: it seems to take no time, and what is paid by the month is paid anyway.
func (r *reader) doubtOwnWithoutHours() {
	for _, w := range r.chosenWorks() {
		if w.by != "" || w.item.Hired.IsZero() {
			continue
		}
		if by := r.of(w.scope, "by"); by == nil || by.choice != "own hands" {
			continue
		}
		_, each := w.member.Given.Look("hours_each")
		_, once := w.member.Given.Look("set_up")
		switch {
		case w.item.Measure == pricebook.Months:
			r.say("own-without-hours", w.at, "%s is paid by the month, whoever does it", w.label)("leave it out if you see to it yourself, or write   %s: hired", w.label)
		case !each && !once:
			r.say("own-without-hours", w.at, "%s by own hands costs nothing and takes no time, for nobody says its hours", w.label)("write   %s: {by: own hands, hours: 6}", w.label)
		}
	}
}
