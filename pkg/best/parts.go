package best

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/model"
)

// An amount is what an option takes of a pool.
type amount struct {
	pool int
	x    float64
}

// A pool is something that is taken in whole packs over the whole house: a product, a
// container, or a piece of work that is done once however many rooms call for it, of
// which each call takes one part.
type pool struct {
	holds float64 // what a pack holds; 0 where parts can be had
	unit  float64 // dollars for 1 of it, at the least
	sure  float64 // taken whatever is chosen
	waste bool    // a container: it is not part of the cost of the rooms
}

// A part is what an option comes to at the least, and in all at the most where that
// is needed: dollars, hours, weeks, days.
type part struct {
	added          float64
	besides        float64
	own, ownMost   float64 // own labour: what trades would charge for it
	hours          float64
	ownWeeks, crew float64
	waits          float64
	clears         float64 // dollars set aside for parts of the house that it makes new, at the most
	takes          []amount
	feet           []float64 // by stick product
}

// parts are the options taken apart.
type parts struct {
	longest  decimal.Decimal // months with all options at once
	rooms    [][]part
	sure     part // what is done whatever is chosen
	pools    []pool
	pace     float64    // own hours a week
	lines    float64    // own hours outside of the rooms
	kept     float64    // set aside for parts of the house not seen, whatever is chosen
	aside    float64    // the same with what an option would clear
	cleared  float64    // what of it all options together clear
	daily    float64    // months of a day
	most     [6]float64 // the totals with everything at once
	besides  float64    // dollars of called-for work, at the most, that options need not bear at the least
	uncut    bool       // some of it takes sticks
	weekly   float64    // days of a week
	forms    []form
	roomMost [][]amount // by room, what an option takes of a pool at the most
	shortest float64    // months that any choice takes at the least

	callers map[*model.Member][][2]int // rooms and options that call for work; room -1 is sure
}

// takeApart reads what the options take, where all are chosen at once.
func (h *House) takeApart() *parts {
	t := &taker{House: h, parts: &parts{longest: h.work.Of(h.totals[time]), callers: map[*model.Member][][2]int{}}, pool: map[*model.Member]int{}}
	t.pace = t.of(h.Deal.Root, "own_hours_a_week")
	t.daily, t.weekly = t.of(h.Deal.Root, "months_a_day"), t.of(h.Deal.Root, "days_a_week")
	t.forms = forms[int(t.of(h.Deal.Root, "sequence"))-1]
	t.products()
	t.findCallers()
	t.rooms = make([][]part, len(h.Rooms))
	for i, room := range h.Rooms {
		t.rooms[i] = make([]part, len(room.Options))
		for o, m := range room.Options {
			if m != nil {
				t.option(&t.rooms[i][o], m)
				t.uses(&t.rooms[i][o], m.In("item"), 1)
			}
			t.rooms[i][o].feet = t.ofFeet(t.rooms[i][o].feet)
		}
	}
	t.always()
	t.called()
	t.containers()
	t.notSeen()
	t.singles()
	t.waiting()
	for i := range h.totals {
		t.most[i] = h.work.Of(h.totals[i]).InexactFloat64()
	}
	t.roomMost = make([][]amount, len(t.rooms))
	for i := range t.rooms {
		t.roomMost[i] = mostOf(t.rooms[i])
	}
	return t.parts
}

// singles makes the parts of a pack dearer where all rooms together take no more than
// one: any that takes of it pays for the pack with the others.
func (t *taker) singles() {
	all := make([]float64, len(t.pools))
	for _, room := range t.rooms {
		for _, a := range mostOf(room) {
			all[a.pool] += a.x
		}
	}
	for i := range t.pools {
		if p := &t.pools[i]; p.sure == 0 && all[i] > 0 && all[i] < p.holds {
			p.unit *= p.holds / all[i]
			p.holds = all[i]
		}
	}
}

// mostOf is what the options of a room take of each pool at the most.
func mostOf(room []part) []amount {
	var out []amount
	for o := range room {
		for _, a := range room[o].takes {
			i := slices.IndexFunc(out, func(b amount) bool { return b.pool == a.pool })
			if i < 0 {
				out = append(out, a)
			} else {
				out[i].x = max(out[i].x, a.x)
			}
		}
	}
	return out
}

type taker struct {
	*House
	*parts
	pool map[*model.Member]int
}

func (t *taker) ofFeet(x []float64) []float64 {
	if x == nil {
		return make([]float64, len(t.sticks))
	}
	return x
}

// of is a value of a member, as far as it is near enough for a bound.
func (t *taker) of(m *model.Member, line string) float64 {
	return float.Near(t.work.Of(t.Deal.Model.Find(m, line)))
}

// products makes a pool of each, at the least that a part of a pack costs.
func (t *taker) products() {
	for _, p := range t.Deal.Root.In("product") {
		x := pool{holds: t.of(p, "holds")}
		for _, u := range p.In("use") {
			if q := t.of(u, "ordered"); q > 0 {
				x.unit = max(x.unit, (t.of(u, "by_parts")-0.005)/q)
			}
		}
		if s := t.stick(p); s >= 0 {
			i := t.sticks[s].cheapest()
			x.holds = 0
			if u := t.of(p, "unit_price") * t.of(p, "price_factor"); u > 0 {
				x.unit *= t.sticks[s].price[i] / t.sticks[s].feet[i] / u
			}
		}
		t.pool[p] = len(t.pools)
		t.pools = append(t.pools, x)
	}
}

// stick is which stick product a product is, or -1.
func (t *taker) stick(p *model.Member) int {
	return slices.IndexFunc(t.sticks, func(s *stickProduct) bool { return s.member == p })
}

// option reads the lines of an option.
func (t *taker) option(p *part, m *model.Member) {
	p.added += t.of(m, "added")
	b := t.of(m, "besides")
	p.besides += b
	p.own += t.of(m, "besides_at_trade") - b
	p.ownMost = p.own
	p.hours += t.of(m, "own_hours")
	if t.pace > 0 {
		p.ownWeeks = p.hours / t.pace
	}
	p.crew += t.of(m, "crew_weeks")
	p.waits = max(p.waits, t.of(m, "waits"))
}

// uses adds a share of what pieces of work take of products.
func (t *taker) uses(p *part, items []*model.Member, share float64) {
	for _, it := range items {
		for _, u := range it.In("use") {
			product := u.Links[0]
			x := t.of(u, "bought") * share
			if x == 0 {
				continue
			}
			p.take(t.pool[product], x)
			if s := t.stick(product); s >= 0 {
				p.feet = t.ofFeet(p.feet)
				p.feet[s] += x
			}
		}
	}
}

func (p *part) take(pool int, x float64) {
	for i := range p.takes {
		if p.takes[i].pool == pool {
			p.takes[i].x += x
			return
		}
	}
	p.takes = append(p.takes, amount{pool, x})
}

// choosable is the room and option of a member, or -1 where there is no choice.
func (t *taker) choosable(m *model.Member) (room, option int) {
	for i, r := range t.Rooms {
		if o := slices.Index(r.Options, m); o > 0 {
			return i, o
		}
	}
	return -1, -1
}

// findCallers finds which options call for which work, themselves or by other work, and
// which take which sticks.
func (t *taker) findCallers() {
	for _, room := range t.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			i, n := t.choosable(o)
			for _, it := range o.In("item") {
				t.takesSticks([2]int{i, n}, it)
				for _, at := range t.callersOf(it) {
					t.takesSticks(at, it)
				}
			}
		}
	}
}

// callersOf are the options on which it depends whether work is done that is called for.
func (t *taker) callersOf(it *model.Member) [][2]int {
	if known, is := t.callers[it]; is {
		return known
	}
	var out [][2]int
	add := func(more ...[2]int) {
		for _, at := range more {
			if !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	for _, c := range it.In("caller") {
		if by := c.Parent; by.Set == "bringer" {
			add(t.callersOf(by.Parent)...)
			continue
		}
		i, n := t.choosable(c.Parent)
		if v, said := c.Parent.Given.Look("chosen"); i >= 0 || !said || !v.Number.IsZero() {
			add([2]int{i, n})
		}
	}
	t.callers[it] = out
	return out
}

func (t *taker) takesSticks(at [2]int, it *model.Member) {
	for _, u := range it.In("use") {
		if s := t.stick(u.Links[0]); s >= 0 && at[0] >= 0 {
			t.sticks[s].takers[at] = true
		}
	}
}

// always adds up what is done whatever is chosen, without what is called for: own work
// outside of the rooms too.
func (t *taker) always() {
	t.sure.feet = t.ofFeet(nil)
	t.lines = t.of(t.Deal.Root, "line_own_hours")
	t.sure.hours = t.lines
	if t.pace > 0 {
		t.sure.ownWeeks = t.lines / t.pace
	}
	for _, room := range t.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			if i, _ := t.choosable(o); i < 0 && !isCalled(o) {
				t.option(&t.sure, o)
				t.uses(&t.sure, o.In("item"), 1)
			}
		}
	}
	for _, a := range t.sure.takes {
		t.pools[a.pool].sure += a.x
	}
}

// waiting takes the days of waiting that the file says in place of what work waits for.
func (t *taker) waiting() {
	if t.find("waiting_days").Given == nil {
		return
	}
	t.sure.waits = t.of(t.Deal.Root, "waiting_days")
	for _, room := range t.rooms {
		for o := range room {
			room[o].waits = 0
		}
	}
}

// isCalled reports whether an option holds what others call for.
func isCalled(o *model.Member) bool {
	for _, it := range o.In("item") {
		if _, called := it.Given.Look("called_for"); called {
			return true
		}
	}
	return false
}
