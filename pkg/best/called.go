package best

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// called shares work that options call for among the rooms that may: of n rooms, each
// takes an nth at the least, for the work is done once.
func (t *taker) called() {
	for _, room := range t.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			for _, it := range o.In("item") {
				if at := t.callers[it]; len(at) > 0 {
					t.share(it, at)
				}
			}
		}
	}
}

func (t *taker) share(it *model.Member, at [][2]int) {
	rooms := map[int]bool{}
	for _, x := range at {
		rooms[x[0]] = true
	}
	trade := it.Links[0]
	cost := t.of(it, "labour") + t.of(it, "found")
	own := t.of(it, "labour_at_trade") - t.of(it, "labour")
	hours := t.of(it, "own_hours")
	crew := 0.0
	if x := t.of(trade, "crew") * t.of(trade, "hours_a_week"); x > 0 {
		crew = t.of(it, "crew_hours") / x
	}
	give := func(p *part, share float64) {
		p.own += own * share
		p.ownMost += own
		p.hours += hours * share
		p.hoursMost += hours
		if t.pace > 0 {
			p.ownWeeks += hours * share / t.pace
		}
		p.crew += crew * share
		p.crewMost += crew
		t.uses(p, []*model.Member{it}, share)
	}
	if rooms[-1] {
		t.House.always[it] = true
		t.sure.besides += cost
		extra := part{feet: t.ofFeet(nil)}
		give(&extra, 1)
		t.sure.add(extra)
		for _, a := range extra.takes {
			t.pools[a.pool].sure += a.x
		}
		return
	}
	n := float64(len(rooms))
	if yields(it) { // it may not be done although it is called for
		t.other(it)
		return
	}
	t.pools = append(t.pools, pool{holds: n, unit: cost / n})
	for _, x := range at {
		p := &t.rooms[x[0]][x[1]]
		give(p, 1/n)
		p.take(len(t.pools)-1, 1)
	}
}

// other adds what a piece of work comes to at the most that may be done otherwise: by own
// hands, as another piece of work, or as the whole house plans it. With everything chosen
// it is, so that its own figures are nothing then, but for those that were asked of it.
func (t *taker) other(it *model.Member) {
	for _, done := range []*model.Member{it, twin(it)} {
		if done == nil {
			continue
		}
		t.besides += t.atMost(done, "labour_at_trade") + t.atMost(done, "found")
		for _, u := range done.In("use") {
			p := &t.pools[t.pool[u.Links[0]]]
			t.besides += p.unit * (t.atMost(u, "bought") + p.holds)
			t.uncut = t.uncut || t.stick(u.Links[0]) >= 0
		}
		trade := it.Links[0]
		if x := t.of(trade, "crew") * t.of(trade, "hours_a_week"); x > 0 {
			t.longest = t.longest.Add(decimal.NewFromFloat(t.months(t.atMost(done, "trade_hours") / x)))
		}
	}
}

// atMost is a value of called work at the most: with everything chosen, or without what the
// whole house plans itself.
func (t *taker) atMost(m *model.Member, line string) float64 {
	return max(t.of(m, line), formula.Near(t.asked[t.Deal.Model.Find(m, line).Index]))
}

// twin is the same work that is called for from others, or nil.
func twin(it *model.Member) *model.Member {
	for _, x := range it.Parent.In("item") {
		if x != it && x.Label == it.Label {
			return x
		}
	}
	return nil
}

// unplanned asks what called work comes to where the options of the whole house that
// plan it themselves are not taken.
func (h *House) unplanned(seen []*model.Cell) error {
	changes, asked := h.everything(), map[*model.Member]bool{}
	n := 0
	for _, r := range h.Rooms {
		for _, o := range r.Options[1:] {
			for _, c := range o.In("caller") {
				if _, said := c.Given.Look("yields"); said && h.plans(o, c.Links[0]) {
					changes[n].Value, asked[c.Links[0]] = decimal.Decimal{}, true
				}
			}
			n++
		}
	}
	if len(asked) == 0 {
		return nil
	}
	if err := h.work.Evaluate(changes...); err != nil {
		return err
	}
	for _, c := range seen {
		if asked[c.Member] || asked[c.Member.Parent] {
			h.asked[c.Index] = h.work.Of(c)
		}
	}
	return h.work.Evaluate(h.everything()...)
}

// plans reports whether an option holds the same work itself.
func (h *House) plans(o, it *model.Member) bool {
	return slices.ContainsFunc(o.In("item"), func(x *model.Member) bool { return h.Deal.Work[x].Item == h.Deal.Work[it].Item })
}

// yields reports whether own hands may do a piece of work instead, as another one.
func yields(it *model.Member) bool {
	for _, c := range it.In("caller") {
		if _, said := c.Given.Look("yields"); said {
			return true
		}
	}
	return false
}

// add adds what another part takes for sure.
func (p *part) add(q part) {
	p.own += q.own
	p.ownMost += q.ownMost
	p.hours += q.hours
	p.hoursMost += q.hoursMost
	p.ownWeeks += q.ownWeeks
	p.crew += q.crew
	p.crewMost += q.crewMost
	for _, a := range q.takes {
		p.take(a.pool, a.x)
	}
	for i, x := range q.feet {
		p.feet[i] += x
	}
}

// containers makes a pool of the limit of a container that all options together use
// most of, by volume or by weight; by the other alone it takes no more of them.
func (t *taker) containers() {
	root := t.Deal.Root
	line, all, limit := "debris", "all_debris", "container_holds"
	if t.of(root, "all_weight")*t.of(root, "container_holds") > t.of(root, "all_debris")*t.of(root, "container_limit") {
		line, all, limit = "weight", "all_weight", "container_limit"
	}
	holds := t.of(root, limit)
	if holds <= 0 || t.of(root, all) <= 0 {
		return
	}
	n := len(t.pools)
	t.pools = append(t.pools, pool{holds: holds, unit: t.of(root, "container_price") / holds, waste: true})
	for _, room := range root.In("room") {
		for _, o := range room.In("option") {
			i, k := t.choosable(o)
			switch {
			case isCalled(o):
				for _, it := range o.In("item") {
					t.shareDebris(n, it, line)
				}
			case i < 0:
				t.pools[n].sure += t.of(o, line)
			case t.of(o, line) > 0:
				t.rooms[i][k].take(n, t.of(o, line))
			}
		}
	}
}

func (t *taker) shareDebris(pool int, it *model.Member, line string) {
	at := t.callers[it]
	rooms := map[int]bool{}
	for _, a := range at {
		rooms[a[0]] = true
	}
	switch {
	case len(at) == 0 || t.of(it, line) == 0 || yields(it):
	case rooms[-1]:
		t.pools[pool].sure += t.of(it, line)
	default:
		for _, a := range at {
			t.rooms[a[0]][a[1]].take(pool, t.of(it, line)/float64(len(rooms)))
		}
	}
}
