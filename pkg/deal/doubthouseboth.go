package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtHouseBoth doubts work on all of the whole house beside work in rooms that it is in
// place of or has in it: wires run anew by the floor of all rooms, and those of one room, or
// the circuits that come along there.
func (r *reader) doubtHouseBoth() {
	plans := r.chosenPlans()
	for _, h := range plans {
		if h.room.Kind != "whole_house" {
			continue
		}
		for _, w := range h.works {
			if len(w.item.InsteadOf) == 0 || !r.allOf(w) {
				continue
			}
			var rooms []string
			var first *work
			for _, p := range plans {
				for _, x := range p.works {
					if p != h && x.by == "" && slices.Contains(w.item.InsteadOf, x.item.Name) && !slices.Contains(rooms, p.room.Label) {
						rooms = append(rooms, p.room.Label)
						first = cmp.Or(first, x)
					}
				}
			}
			if first != nil {
				r.say("done-twice", first.at, "%s on the whole house counts the floor of all rooms, and %s is beside it in %s", diag.Quote(w.label), diag.Quote(first.label), strings.Join(rooms, ", "))("leave %s out there, or say how much floor %s is for, with   part: 80%%   or   count: 900 sq ft", first.item.Name, w.item.Name)
			}
			r.doubtHeldByHouse(h, w, plans)
		}
	}
}

// doubtHeldByHouse doubts what comes along in rooms and that work on all of the whole house has
// in it: what it is in place of, and what would not come beside that. What is named in a room is
// taken to be beyond it, and so is what comes along for other work.
func (r *reader) doubtHeldByHouse(h *plan, w *work, plans []*plan) {
	held := func(x brought) bool {
		return slices.Contains(w.item.InsteadOf, x.Item) || slices.ContainsFunc(x.Unless, func(name string) bool { return slices.Contains(w.item.InsteadOf, name) })
	}
	var names []string
	of := map[string][]*comesAlong{}
	for _, p := range plans {
		for _, x := range p.works {
			if p == h || x.by == "" || h.named(x.item.Name) {
				continue
			}
			if a := r.alongIn(p, x, held); a != nil {
				if of[x.item.Name] == nil {
					names = append(names, x.item.Name)
				}
				of[x.item.Name] = append(of[x.item.Name], a)
			}
		}
	}
	for _, name := range names {
		r.say("done-twice", of[name][0].work.at, "%s on the whole house counts the floor of all rooms, and %s comes along besides in %s", diag.Quote(w.label), name, alongNames(of[name]))("if %s holds that, write   %s", w.item.Name, alongHint(of[name], h))
	}
}

// comesAlong is what comes along in a place, as far as some of the work brings it that is asked for.
type comesAlong struct {
	plan       *plan
	work       *work
	much, left decimal.Decimal // how much of it that work brings, and other work besides
}

// alongIn is what comes along in a plan as far as that of its bringers is asked for; nil where
// none of it does, or where it is a room that is only counted, of which the file can say nothing.
func (r *reader) alongIn(p *plan, x *work, asked func(brought) bool) *comesAlong {
	all, known := r.worked(x.member, "quantity")
	if !slices.ContainsFunc(x.bringers, asked) || x.at.File == pricebook.QuickFile || known && !all.IsPositive() {
		return nil
	}
	a := &comesAlong{plan: p, work: x, much: all}
	if x.item.ForEach {
		for _, b := range x.bringers {
			if !asked(b) {
				a.left = a.left.Add(takenBy(x.item, b.by))
			}
		}
		a.much = all.Sub(a.left)
	}
	return a
}

// takenBy is how many of an item that each takes one piece of work takes.
func takenBy(it *pricebook.Item, w *work) decimal.Decimal {
	return takes(it, w, w.stated().of(one))
}

// alongNames are the places where something comes along, with how much of it.
func alongNames(places []*comesAlong) string {
	var out []string
	for _, a := range places {
		out = append(out, fmt.Sprintf("%s (%s)", a.plan.room.Label, a.count(a.much)))
	}
	return strings.Join(out, ", ")
}

func (a *comesAlong) count(n decimal.Decimal) string {
	if u := string(a.work.item.Unit); u != "each" {
		return quantity.FormatCount(n, 0) + " " + u
	}
	return quantity.FormatCount(n, 2)
}

// alongHint says where to leave out what comes along beside work of an option of the whole house,
// and how to name what is to stay. What a room does without it does without beside every option.
func alongHint(places []*comesAlong, beside *plan) string {
	const most = 3 // more of them nobody reads
	var write []string
	for _, a := range places[:min(len(places), most)] {
		write = append(write, a.leftOut())
	}
	out := strings.Join(write, "   and   ") + "   "
	if len(places) > most {
		out += ", and so in the others"
	}
	if beside.option.Label != onlyOption {
		out += ", which leaves it out beside the other options of the whole house too"
	}
	there := "there"
	if len(places) > 1 {
		there += ", in " + places[0].plan.room.Label
	}
	return out + "; else name it " + there + ", as   " + places[0].counted(places[0].much.Add(places[0].left))
}

// leftOut is what the file says to leave it out, but for what other work takes of it.
func (a *comesAlong) leftOut() string {
	if a.left.IsPositive() {
		return a.plan.holding("work: {" + a.counted(a.left) + "}")
	}
	var names []string
	for _, s := range a.plan.without {
		names = append(names, s.text)
	}
	return a.plan.holding("without: [" + strings.Join(append(names, a.work.item.Name), ", ") + "]")
}

// counted is so much of it, named in the file.
func (a *comesAlong) counted(n decimal.Decimal) string {
	return fmt.Sprintf("%s: {by: %s, count: %s}", a.work.item.Name, a.work.doer(), a.count(n))
}

// holding is what is written into a plan, as it stands in the file.
func (p *plan) holding(what string) string {
	if p.option.Label != onlyOption {
		what = fmt.Sprintf("options: {%s: {%s}}", p.option.Label, what)
	}
	what = fmt.Sprintf("%s: {%s}", p.room.Label, what)
	if p.room.Kind == "inside" {
		what = "rooms: {" + what + "}"
	}
	return what
}
