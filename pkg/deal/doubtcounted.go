package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// goWith are the measures of a place that go with what work counts there: where the place says
// nothing of that, there is 0 of them. Each is by the name of the measure of the work that the file
// counts. Never written to.
var goWith = map[string][]string{
	"tubs": {"tub walls", "wet walls"}, "showers": {"wet walls"}, "shower walls": {"showers"},
	alongWalls: {"counter", "wall cabinet run"}, "closets": {"closet rod run"},
	"doors": {"casing run"}, "windows": {"casing run"}, "cased openings": {"casing run"},
	"gutters": {"downspouts"},
}

// leastRun is from how many ft on counted cabinets are those of a kitchen, with wall cabinets; fewer may
// be base cabinets alone. Common practice, no source.
var leastRun = six

// A lostWork is what is not priced as the file counts work of which its place says nothing.
type lostWork struct {
	measure  string  // of the work that is counted
	roots    []*work // which that is
	names    []string
	measures []string
	idle     []*pricebook.Item // of the names, those that would come along; the others are goods
	place    string
}

// doubtCounted looks for counted work of which the place says nothing, so that what it would bring along, or
// takes, by sizes of the place costs nothing without a word: the tile around a tub, or wall cabinets.
func (r *reader) doubtCounted() {
	for _, p := range r.chosenPlans() {
		for _, l := range r.lostIn(p) {
			says, are := strings.Join(l.names, ", "), "is"
			if slices.ContainsFunc(l.idle, func(it *pricebook.Item) bool { return len(it.Brings) > 0 }) {
				says += ", nor of what that brings along"
			}
			if len(l.measures) > 1 {
				are = "are"
			}
			r.say("count-alone", l.roots[0].at, "%s is counted, and nothing is priced of %s: %s of %s %s 0", diag.Quote(l.roots[0].label), says, strings.Join(l.measures, " and "), l.place, are)("%s", l.hint())
		}
	}
}

// lostIn is what is not priced in a plan, by the measure of what is counted.
func (r *reader) lostIn(p *plan) (out []*lostWork) {
	note := func(root *work, measure, name string, it *pricebook.Item) {
		if !slices.Contains(goWith[root.item.Measure], measure) || !r.countsOfNothing(p, root) {
			return
		}
		i := slices.IndexFunc(out, func(l *lostWork) bool { return l.measure == root.item.Measure })
		if i < 0 {
			i, out = len(out), append(out, &lostWork{measure: root.item.Measure, place: p.room.Label})
		}
		l := out[i]
		if !slices.Contains(l.roots, root) {
			l.roots = append(l.roots, root)
		}
		if slices.Contains(l.names, name) {
			return
		}
		l.names = append(l.names, name)
		if !slices.Contains(l.measures, measure) {
			l.measures = append(l.measures, measure)
		}
		if it != nil {
			l.idle = append(l.idle, it)
		}
	}
	for _, w := range p.works {
		for _, use := range w.member.In("use") {
			if along := use.Given.Of("along"); along.Refers != "" && r.buysFor(w, along.Text) {
				if x, known := r.worked(p.room, along.Refers); known && x.IsZero() {
					note(w.named(), along.Text, use.Label, nil)
				}
			}
		}
	}
	for _, x := range p.idle {
		if it := r.prices().Item(x.Item); r.unpriced(p, x) {
			note(x.by.named(), it.Measure, it.Name, it)
		}
	}
	return out
}

// unpriced reports whether what would come along in a plan, were there any of it, is neither done by name,
// nor said to be none, nor in a quote.
func (r *reader) unpriced(p *plan, x brought) bool {
	it := r.prices().Item(x.Item)
	return !p.has(it.Name) && !p.saysNone(it) && !x.by.broughtByQuote(x.Companion, r.prices())
}

// saysNone reports whether the place of a plan says in so many words that there is nothing of what an item
// goes by.
func (p *plan) saysNone(it *pricebook.Item) bool {
	v, said := p.room.Given.Look(pricebook.MeasureNamed(it.Measure).Line)
	return said && v.Number.IsZero()
}

// countsOfNothing reports whether the file counts work of which its place says nothing, and it is paid for
// by that count.
func (r *reader) countsOfNothing(p *plan, w *work) bool {
	switch {
	case w.scope.path == "" || r.good(w.scope.path+"count") == nil || w.free() || w.quotedAll() && r.holdsMore(w):
		return false
	case w.item.Measure == alongWalls && r.roomKinds[p.room] != "kitchen":
		return false // a laundry or a garage may well have cabinets without a counter
	}
	m := pricebook.MeasureNamed(w.item.Measure)
	return m.Of == p.room.Kind && r.nothingOf(p.room, *m)
}

// buysFor reports whether work buys what goes by another measure, and not a few base cabinets alone.
func (r *reader) buysFor(w *work, measure string) bool {
	if w.quotedAll() || r.allowedAll(w) {
		return false
	}
	return measure != "wall cabinet run" || !w.stated().of(decimal.Zero).LessThan(leastRun)
}

// hint says what gives the place its sizes, or, where all of it comes out and may stand there no more in
// the end, what else to count.
func (l *lostWork) hint() string {
	var names []string
	for _, it := range l.idle {
		names = append(names, it.Name)
	}
	leave := "   ; what is not wanted goes under   without: [" + strings.Join(names, ", ") + "]"
	if stays := func(w *work) bool { return w.item.Trade != demolition }; len(names) > 0 && !slices.ContainsFunc(l.roots, stays) {
		return "count that too, as   " + (&work{item: l.idle[0], member: l.roots[0].member, label: names[0]}).counted() + leave
	}
	from := givenBy(l.measure)
	if size, own := strings.CutPrefix(from, l.measure+": "); own && !strings.Contains(size, " x ") { // as many as are counted
		from = strings.TrimSuffix(l.measure+": "+short(l.roots[0].member.Given.Of("measure").Number)+" "+string(l.roots[0].item.Unit), " each")
	}
	hint := "add   " + from + "   to " + l.place
	if l.measure == "shower walls" {
		hint += "   , or the tub that they are around,   " + givenBy("tubs")
	}
	if len(names) == 0 {
		return hint
	}
	return hint + leave
}
