package deal

import (
	"iter"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A work is one piece of work that the file names, or that another brings along.
type work struct {
	item   *pricebook.Item
	member *model.Member
	scope  scope // of its details; without a path where it was brought
	label  string
	by     string // the work that brought it, or ""

	bringers []brought // all that bring it, where it is not done for the whole house

	holds  []*work         // what a quote for all of it is taken to bring
	within *work           // the quote that holds it, which is then not done besides; or nil
	rest   decimal.Decimal // of what a quote holds, the share that is left of it where other work of the plan brings it too
	left   decimal.Decimal // that share, by the measure of the work
	at     diag.Pos

	products []*pricebook.Product // that it buys at the price of the book
}

// A plan is an option of a room with its work.
type plan struct {
	room, option *model.Member
	works        []*work
	without      []span
	idle         []brought  // what would come along, but for having nothing to be done to
	beside       [][2]*work // companions that are done whole, and what is done to a part in their place
	whole        []brought  // companions that are done whole, with work that is done to a small part
	taken        bool       // by the scope
	scope        scope      // of the option
	at           diag.Pos
}

// eachWork goes through all work with the plan that it is in.
func (r *reader) eachWork() iter.Seq2[*plan, *work] {
	return func(yield func(*plan, *work) bool) {
		for _, p := range r.plans {
			for _, w := range p.works {
				if !yield(p, w) {
					return
				}
			}
		}
	}
}

const mostWorks = 300

// works reads work by name: who does it, a quote, or a group of details.
func (r *reader) works(s scope, f *Field, g *reading) {
	if !r.wants(f, g, mapping) {
		return
	}
	if n := len(g.node.entries); n > mostWorks {
		r.say("too-many", g.key.at, "%d pieces of work, more than the %d that are read", n, mostWorks)("leave out those that do not matter")
		return
	}
	g.ok = true
	p := r.planOf(s, g)
	for i := range g.node.entries {
		e := &g.node.entries[i]
		if e.value.shape == refused || r.stray(e) || r.nameless(f, e) || r.noWork(e) {
			continue
		}
		label := strings.Join(strings.Fields(e.key.text), " ")
		w := &work{label: label, at: e.key.at, member: p.option.Add("item", "", label)}
		w.member.Pos = e.key.at
		w.scope = scope{path: s.path + "work." + e.name + ".", group: "<work>", member: w.member, at: e.key.at}
		r.workDetails(w, e)
		if w.item = r.bookItem(w, e); w.item != nil {
			p.works = append(p.works, w)
		}
	}
}

// noWork tells of a key among work that is no work: what stands beside it, or an item and
// who does it with no space behind the colon.
func (r *reader) noWork(e *entry) bool {
	item, who, colon := strings.Cut(e.key.text, ":")
	switch {
	case e.name == "without" || e.name == "adds" && e.value.shape == scalar:
		r.besideWork(e)
	case colon && e.value.shape == nothing && r.itemNamed(plainKey(item)) != nil:
		r.noSpaceBehind(e, item, who)
	default:
		return false
	}
	return true
}

// besideWork tells of what is left out, or what an option adds, in the wrong place.
func (r *reader) besideWork(e *entry) {
	if e.name == "adds" {
		r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))("it stands beside work, not in it; write   work: {...}, adds: %s", e.value.text)
		return
	}
	var names []string
	for _, s := range (&reading{node: e.value}).words() {
		names = append(names, s.text)
	}
	r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))("it stands beside work, not in it; write   work: {...}, without: [%s]", strings.Join(names, ", "))
}

// planOf is the plan of an option; work that stands outside of options is the only
// option of its room.
func (r *reader) planOf(s scope, g *reading) *plan {
	option, at := s.member, s.at
	if option.Set != "option" {
		option = option.Add("option", "", onlyOption)
		option.Pos, at = g.key.at, g.key.at
	}
	p := &plan{room: option.Parent, option: option, scope: s, at: at}
	r.plans = append(r.plans, p)
	return p
}

// onlyOption is what the option of a room with one list of work is called.
const onlyOption = "the work"

// workDetails reads what stands behind a piece of work.
func (r *reader) workDetails(w *work, e *entry) {
	short := func(key string) {
		part := *fieldNamed("<work>", key)
		part.said = e.key.text
		r.field(w.scope, &part, &entry{key, e.key, e.value})
	}
	switch e.value.shape {
	case mapping:
		r.group(w.scope, e.value)
	case nothing:
		r.say("missing-value", e.key.at, "%s does not say who does it", diag.Quote(e.key.text))("write   %s: own hands   or hired, or a quote such as $1,450", e.key.text)
	case list:
		r.say("want-group", e.key.at, "%s is a list, not a piece of work", diag.Quote(e.key.text))("write who does it, a quote, or details, e.g.   %s: {by: own hands, count: 3}", e.key.text)
	case scalar:
		if _, err := quantity.ParseMoney(e.value.text); err == nil {
			if _, bare := quantity.ParseCount(e.value.text); bare == nil {
				r.say("quote-or-count", e.value.at, "%s is %s, which could be dollars or a count", diag.Quote(e.key.text), e.value.text)("write $%s for a quote, or {by: hired, count: %s}", e.value.text, e.value.text)
				break
			}
			short("quote")
			break
		}
		if r.rateAlone(e) {
			break
		}
		short("by")
	}
	if covers := r.of(w.scope, "covers"); r.unquoted && (covers == nil || covers.choice != "labour") {
		w.member.Withdraw("quote")
	}
	w.finish()
	if q, by := r.of(w.scope, "quote"), r.of(w.scope, "by"); q != nil && by != nil && by.choice == "own hands" {
		r.say("quote-and-own", by.at(), "%s has a quote and is done by own hands", diag.Quote(e.key.text))("keep one of them; what is bought for own work is in the price book, or an allowance")
	}
}

// rateAlone tells of what a trade charges by the unit in the place of who does the work.
func (r *reader) rateAlone(e *entry) bool {
	x, err := quantity.ParsePer(e.value.text)
	if err != nil || !x.Money {
		return false
	}
	r.say("bad-choice", e.value.at, "%s is %s, which does not say who does it", diag.Quote(e.key.text), diag.Quote(e.value.text))("write   %s: {by: hired, hired: %s}", e.key.text, e.value.text)
	return true
}

// finish puts details into the model's words.
func (w *work) finish() {
	given := w.member.Given
	if by, ok := given.Look("who"); ok && by.Choice == "own hands" {
		by.Choice = "own"
		w.member.Give("who", by)
	}
	if q, ok := given.Look("quote"); ok {
		if _, said := given.Look("quote_covers"); !said {
			w.member.Give("quote_covers", model.Value{Choice: "all", Text: q.Text, Pos: q.Pos})
		}
	} else {
		w.member.Withdraw("quote_covers") // else nothing would be paid; it is doubted
	}
}

// mostMeant is how many names are told that work could be meant for.
const mostMeant = 5

// bookItem finds the item of the price book that a piece of work is.
func (r *reader) bookItem(w *work, e *entry) *pricebook.Item {
	name, at := e.name, e.key.at
	if g := r.of(w.scope, "item"); g != nil && g.ok {
		name, at = plainKey(g.choice), g.at()
	}
	if it := r.itemNamed(name); it != nil {
		return it
	}
	if r.inLost(name) {
		return nil
	}
	tell := r.say("unknown-item", at, "the price book has no item %s", diag.Quote(name))
	switch all := r.prices().ItemsWith(name); {
	case len(all) == 1:
		tell("did you mean %q? see   ledgerboard prices   for all, or name it with   item:", all[0])
		return nil
	case len(all) > 1 && len(all) <= mostMeant:
		tell("did you mean one of these? %s", strings.Join(all, ", "))
		return nil
	case len(all) > mostMeant: // no slip of one of them
		tell("did you mean one of these? %s; see   %s   for more", strings.Join(r.prices().Foremost(name, all)[:mostMeant], ", "), r.prices().LookFor(name))
		return nil
	}
	if near, ok := diag.Nearest(name, r.prices().Items()); ok && (near[0] == name[0] || !r.prices().Knows(name)) { // plaster is no rafter
		tell("did you mean %q? see   ledgerboard prices   for all, or name it with   item:", near)
		return nil
	}
	if near := r.prices().ItemsNear(name); len(near) > 0 {
		tell("did you mean one of these? %s; see   %s   for more", strings.Join(near, ", "), r.prices().LookFor(name))
		return nil
	}
	if meant := respelt(name, r.prices().Items()); meant != name {
		if near := r.prices().ItemsWith(meant); len(near) > 0 {
			tell("did you mean one of these? %s; see   %s   for more", strings.Join(near[:min(len(near), mostMeant)], ", "), r.prices().LookFor(meant))
			return nil
		}
	}
	tell("look for it with   %s   or add it to your own price book", r.prices().LookFor(name))
	return nil
}

// leastRespelt is how many letters a word has in which a slip is forgiven alone.
const leastRespelt = 5

// respelt are words with each that no name has as the one of the names that it is a slip of; as they are
// where there is none.
func respelt(words string, names []string) string {
	known := strings.Fields(strings.Join(names, " "))
	slices.Sort(known)
	known = slices.Compact(known)
	out := strings.Fields(words)
	for i, w := range out {
		near, ok := diag.Nearest(w, known)
		if slices.Contains(known, w) || !ok || len(w) < leastRespelt || near[0] != w[0] || !diag.Misspelt(w, near) {
			continue
		}
		out[i] = near
	}
	return strings.Join(out, " ")
}

// itemNamed is the item of an evened-out name, or nil.
func (r *reader) itemNamed(name string) *pricebook.Item {
	if r.itemNames == nil {
		r.itemNames = evenedOut(r.prices().Items())
	}
	return r.prices().Item(r.itemNames[name])
}

// productNamed is the product of an evened-out name, or nil.
func (r *reader) productNamed(name string) *pricebook.Product {
	if r.productNames == nil {
		r.productNames = evenedOut(r.prices().Products())
	}
	return r.prices().Product(r.productNames[name])
}

// evenedOut are names by their evened-out spelling.
func evenedOut(names []string) map[string]string {
	out := make(map[string]string, len(names))
	for _, n := range names {
		out[plainKey(n)] = n
	}
	return out
}
