package best

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// called shares work that options call for among the rooms that may: of n rooms, each
// takes an nth at the least, for the work is done once.
func (t *taker) called() {
	for _, room := range t.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			for _, it := range o.In("item") {
				switch at := t.callers[it]; {
				case len(at) == 0:
				case firm(it):
					t.share(it, at)
				default:
					t.addLoose(it)
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
		if t.pace > 0 {
			p.ownWeeks += hours * share / t.pace
		}
		p.crew += crew * share
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
	t.mayTake(it, 1-1/n) // one that calls alone bears all of it
	t.pools = append(t.pools, pool{holds: n, unit: cost / n})
	for _, x := range at {
		p := &t.rooms[x[0]][x[1]]
		give(p, 1/n)
		p.take(len(t.pools)-1, 1)
	}
}

// firm reports whether a piece of work that is called for is done as soon as any option is
// chosen that calls for it, itself or by other work.
func firm(it *model.Member) bool {
	for _, c := range it.In("caller") {
		if c.Given.Of("yields").Number.IsPositive() {
			return false
		}
		if by := c.Parent; by.Set == "bringer" && !firm(by.Parent) {
			return false
		}
	}
	return true
}

// findLoose finds the work that is called for and is not firm.
func (h *House) findLoose() {
	for _, room := range h.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			for _, it := range o.In("item") {
				if len(it.In("caller")) > 0 && !firm(it) {
					h.loose = append(h.loose, h.Deal.Model.Find(it, "called_for"))
				}
			}
		}
	}
}

// calling has what is loose done where it is called for, or whatever is chosen.
func (h *House) calling(only bool) []exact.Change {
	var out []exact.Change
	for _, c := range h.loose {
		x := decimal.Decimal{}
		if only {
			x = decimal.NewFromInt(1)
		}
		out = append(out, exact.Change{Cell: c, Value: x})
	}
	return out
}

// addLoose adds what a piece of work comes to at the most that may not be done although some
// option calls for it: it may be done otherwise, or what calls for it may.
func (t *taker) addLoose(it *model.Member) {
	t.besides += t.of(it, "labour") + t.of(it, "found")
	t.sure.ownMost += t.of(it, "labour_at_trade") - t.of(it, "labour")
	t.mayTake(it, 1)
	for _, u := range it.In("use") {
		t.uncut = t.uncut || t.stick(u.Links[0]) >= 0
	}
}

// mayTake adds what products cost, at the most, of which a piece of work takes a share more
// than its callers bear at the least. A pack begun counts once for each product elsewhere.
func (t *taker) mayTake(it *model.Member, share float64) {
	for _, u := range it.In("use") {
		x := t.of(u, "bought") * share
		t.besides += t.pools[t.pool[u.Links[0]]].unit * x
		if s := t.stick(u.Links[0]); s >= 0 {
			t.besides += cutMost * t.sticks[s].dearest() * x
		}
	}
}

// add adds what another part takes for sure.
func (p *part) add(q part) {
	p.own += q.own
	p.ownMost += q.ownMost
	p.hours += q.hours
	p.ownWeeks += q.ownWeeks
	p.crew += q.crew
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
	case len(at) == 0 || t.of(it, line) == 0 || !firm(it):
	case rooms[-1]:
		t.pools[pool].sure += t.of(it, line)
	default:
		for _, a := range at {
			t.rooms[a[0]][a[1]].take(pool, t.of(it, line)/float64(len(rooms)))
		}
	}
}
