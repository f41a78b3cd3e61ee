package best

import (
	"cmp"
	"math"
	"slices"

	"ledgerboard/pkg/choose"
)

// refine cuts boxes until the planes over them are tight, or nothing in them can be as
// good as what was found; the box of the highest bound first.
func (p *problem) refine() error {
	for range mostBoxes {
		at := -1
		for i, b := range p.bounds {
			if b.top < p.floor || b.err <= tight || p.wide(&b.spans) < 0 {
				continue
			}
			if at < 0 || b.top > p.bounds[at].top {
				at = i
			}
		}
		if at < 0 {
			break
		}
		spans := p.bounds[at].spans
		p.bounds = slices.DeleteFunc(p.bounds, func(b *sliceBound) bool { return b.spans == spans })
		k := p.wide(&spans)
		low, high := spans, spans
		low[k].hi, high[k].lo = spans[k].mid(), spans[k].mid()
		for _, half := range [][ways]span{low, high} {
			if err := p.live(half); err != nil {
				return err
			}
		}
	}
	return p.lighten()
}

// lighten leaves out what only tells boxes apart that are out of the question. A limit of
// cash needs it: what a plane says of cash is far off outside of its box.
func (p *problem) lighten() error {
	full := p.bounds
	p.bounds = nil
	for _, b := range full {
		if err := p.add(b.slice, p.limits.Cash != nil); err != nil {
			return err
		}
	}
	slices.SortStableFunc(p.bounds, func(a, b *sliceBound) int { return cmp.Compare(b.top, a.top) })
	return nil
}

const (
	tight     = 1000 // dollars of error that are good enough
	narrow    = 8000 // dollars of cost, either way, that are not cut further
	mostBoxes = 80
)

// live adds the bounds of the pieces of a box in which a choice may be as good as what
// was found.
func (p *problem) live(spans [ways]span) error {
	all, err := p.slices(spans)
	for _, s := range all {
		if err == nil {
			err = p.add(s, true)
		}
	}
	return err
}

// add adds the bound of a piece, if a choice in it may be as good as what was found.
func (p *problem) add(s slice, full bool) error {
	b, err := p.boundOf(s, full)
	if b == nil || err != nil {
		return err
	}
	top, can := b.additive.Bound(p.open)
	if b.top = top + b.at; can && b.top >= p.floor {
		p.bounds = append(p.bounds, b)
	}
	return nil
}

// coarse are the boxes that all choices within the limits lie in.
func (p *problem) coarse() [][ways]span {
	spans := p.spans()
	var out [][ways]span
	for _, c := range p.timeCuts() {
		spans[costWay].hi = p.costMost(c.hi)
		if most, limited := p.limits.monthsAtMost(); limited && p.moves && c.lo > most+slack/fine {
			continue
		}
		spans[timeWay] = c
		out = append(out, spans)
	}
	return out
}

// wide is the way along which a box is cut next, or -1 if it is narrow in all.
func (p *problem) wide(spans *[ways]span) int {
	t, c := spans[timeWay], spans[costWay]
	byTime, byCost := t.radius()/max(t.mid(), 0.01), c.radius()/max(c.mid(), 1)
	switch {
	case p.moves && byTime > 0.04 && byTime > byCost/8:
		return timeWay
	case c.radius() > narrow:
		return costWay
	}
	return -1
}

// costMost is more than any choice costs whose work takes so many months at the most.
func (p *problem) costMost(months float64) float64 {
	q, all := p.parts, p.spans()[costWay]
	if !p.moves {
		return all.hi
	}
	rooms, most := make([][]choose.Option, len(q.rooms)), make([]int64, len(q.forms))
	for k, f := range q.forms {
		most[k] = int64(math.Ceil((months/q.months(1)-f.of(&q.sure))*fine)) + 10
	}
	full := q.cost(&q.sure)
	for i, room := range q.rooms {
		dear := 0.0
		for o := range room {
			x := choose.Option{Value: int64(math.Ceil(100 * q.cost(&room[o])))}
			dear = max(dear, q.cost(&room[o]))
			for _, f := range q.forms {
				x.Uses = append(x.Uses, int64(math.Floor(f.of(&room[o])*fine)))
			}
			rooms[i] = append(rooms[i], x)
		}
		full += dear
	}
	a, err := choose.NewAdditive(rooms, most)
	if err != nil {
		return all.hi
	}
	x, can := a.Bound(p.open)
	if !can {
		return all.lo
	}
	return min(all.hi, float64(x)/100+q.cost(&q.sure)+all.hi-full)
}
