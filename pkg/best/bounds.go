package best

import (
	"cmp"
	"math"
	"slices"

	"ledgerboard/pkg/choose"
)

// A sliceBound bounds the choices of a slice of time: each option adds to profit at
// most and takes of the limits at least so much.
type sliceBound struct {
	slice
	additive *choose.Additive
	at       int64 // cents besides the options
	top      int64 // cents at most of all
}

// parts of a millionth of hours, weeks and dollars that uses are counted in.
const fine = 1e6

// boundOf is nil where the most of every room together is less than what was found. A
// full bound tells besides what choices lie outside of the slice.
func (p *problem) boundOf(s slice, full bool) (*sliceBound, error) {
	spans, q := s.spans, p.parts
	f := q.tightest()
	profit, base := p.weigh(&s.profit, &spans, f, 1)
	out := &sliceBound{slice: s, at: upCents(base)}
	most := base
	for _, room := range q.rooms {
		best := math.Inf(-1)
		for o := range room {
			best = max(best, profit(&room[o]))
		}
		most += best
	}
	if upCents(most) < p.floor {
		return nil, nil
	}
	limits := p.limited(&s, f, full)
	ends := make([]int64, len(limits))
	for k, l := range limits {
		ends[k] = int64(math.Ceil(l.most*fine)) + 10
	}
	rooms := make([][]choose.Option, len(q.rooms))
	for i, room := range q.rooms {
		rooms[i] = make([]choose.Option, 0, len(room))
		for o := range room {
			x := choose.Option{Value: int64(math.Ceil(100 * profit(&room[o]))), Uses: make([]int64, 0, len(limits))}
			for _, l := range limits {
				x.Uses = append(x.Uses, int64(math.Floor(l.use(&room[o])*fine)))
			}
			rooms[i] = append(rooms[i], x)
		}
	}
	var err error
	out.additive, err = choose.NewAdditive(rooms, ends)
	return out, err
}

// A limited is what options use no more of than so much.
type limited struct {
	use  func(*part) float64
	most float64
}

// limited is what choices within the limits keep to and, if full, those in the slice.
func (p *problem) limited(s *slice, f form, full bool) (out []limited) {
	q := p.parts
	if p.limits.OwnHours != nil {
		out = append(out, limited{func(x *part) float64 { return x.hours }, p.limits.OwnHours.InexactFloat64() - q.sure.hours})
	}
	months := math.Inf(1)
	if full {
		months = s.spans[timeWay].hi
	}
	if most, is := p.limits.monthsAtMost(); is {
		months = min(months, most)
	}
	if p.moves && !math.IsInf(months, 1) {
		for _, f := range q.forms {
			out = append(out, limited{f.of, months/q.months(1) - f.of(&q.sure)})
		}
	}
	if p.limits.Cash != nil {
		for _, i := range s.tightest() {
			if math.IsInf(s.cash[i].at, 0) {
				continue
			}
			need, sure := p.weigh(&s.cash[i], &s.spans, f, -1)
			out = append(out, limited{need, p.limits.Cash.InexactFloat64() - sure})
		}
	}
	if full {
		out = append(out, limited{q.cost, s.spans[costWay].hi - q.cost(&q.sure)})
	}
	for _, l := range s.where {
		if !full {
			break
		}
		back := l.negative()
		use, sure := p.weigh(&back, &s.spans, f, -1)
		out = append(out, limited{use, -sure})
	}
	return out
}

// anything is more cents than any profit, where nothing is known of it.
const anything = 1 << 60

// upCents is dollars in cents, rounded up.
func upCents(x float64) int64 {
	if !(x < anything/100) {
		return anything
	}
	return int64(math.Ceil(100 * x))
}

// weigh turns a line over totals into a sum over options: what each comes to at the
// most (side 1) or at the least (side -1), and what there is besides. Where more of a
// total would count the other way than the least of it does, the end of its span does.
func (p *problem) weigh(l *line, spans *[ways]span, f form, side float64) (of func(*part) float64, base float64) {
	q, s := p.parts, l.slopes
	base = l.at
	least := func(k int) bool { return side*s[k] <= 0 } // the least of the total bounds
	total := [ways]float64{q.cost(&q.sure), 0, p.sureWaste(), q.sure.added, q.months(f.of(&q.sure))}
	for _, k := range []int{costWay, wasteWay, timeWay} {
		if !least(k) {
			base += s[k] * spans[k].hi
			s[k] = 0
		}
	}
	for k := range s {
		base += s[k] * total[k]
	}
	own := func(x *part) float64 { return x.own }
	if !least(ownWay) {
		own = func(x *part) float64 { return x.ownMost }
	}
	base += s[ownWay] * own(&q.sure)
	return func(x *part) float64 {
		return s[costWay]*q.cost(x) + s[ownWay]*own(x) + s[wasteWay]*q.waste(x) + s[addedWay]*x.added + s[timeWay]*q.months(f.of(x))
	}, base
}

// sureWaste is what containers cost at the least whatever is chosen, and what is set aside.
func (p *problem) sureWaste() float64 {
	for i := range p.parts.pools {
		if q := &p.parts.pools[i]; q.waste {
			return p.parts.aside + q.unit*q.sure
		}
	}
	return p.parts.aside
}

// Bound is the most that any slice says.
func (p *problem) Bound(partial []int) (int64, bool) {
	whole := true
	for _, o := range partial {
		whole = whole && o >= 0
	}
	if whole {
		return p.wholeBound(partial)
	}
	cost, waste, waits := p.packs(partial)
	best, possible := int64(math.MinInt64), false
	for _, b := range p.bounds {
		if possible && b.top <= best {
			break // they come by what they are worth at most
		}
		x, can := b.additive.Bound(partial)
		if !can {
			continue
		}
		s := &b.profit.slopes
		less := min(0, s[costWay])*cost + min(0, s[wasteWay])*waste + min(0, s[timeWay])*waits*p.parts.daily
		x += b.at + int64(math.Ceil(100*less))
		best, possible = max(best, x), true
	}
	return best, possible
}

// packs is what whole packs take more than the parts that bounds count, as far as the
// rooms decided tell, in dollars; and the days that one of them waits.
func (p *problem) packs(partial []int) (cost, waste, waits float64) {
	q := p.parts
	for i := range q.pools {
		p.taken[i], p.more[i] = q.pools[i].sure, 0
	}
	waits = q.sure.waits
	for i, o := range partial {
		if o < 0 {
			for _, a := range q.roomMost[i] {
				p.more[a.pool] += a.x
			}
			continue
		}
		x := &q.rooms[i][o]
		waits = max(waits, x.waits)
		for _, a := range x.takes {
			p.taken[a.pool] += a.x
		}
	}
	for i := range q.pools {
		k := &q.pools[i]
		if k.holds == 0 || p.taken[i] == 0 {
			continue
		}
		if rest := math.Ceil(p.taken[i]/k.holds-1e-8)*k.holds - p.taken[i] - p.more[i]; rest > 0 {
			if k.waste {
				waste += k.unit * rest
			} else {
				cost += k.unit * rest
			}
		}
	}
	return cost, waste, waits
}

// wholeBound works the totals of a choice out nearly and asks the planes of its slice.
func (p *problem) wholeBound(choice []int) (int64, bool) {
	p.nearly(choice)
	best, possible := int64(math.MinInt64), false
	if l := p.limits.OwnHours; l != nil && p.out[hours]+p.parts.lines > l.InexactFloat64()+slack/1e3 {
		return 0, false
	}
	left := p.floor > math.MinInt64 // its slice may be left out, for nothing in it is worth as much
	for _, b := range p.bounds {
		if !b.holds(&p.z, p.moves) {
			continue
		}
		left = false
		if p.limits.Cash != nil && b.needs(&p.z) > p.limits.Cash.InexactFloat64() {
			continue
		}
		best, possible = max(best, upCents(b.profit.of(&p.z))), true
	}
	if left {
		return p.floor - 1, true
	}
	return best, possible
}

// holds reports whether totals lie in the slice, or so near that float64 cannot tell.
func (s *slice) holds(z *[ways]float64, moves bool) bool {
	for k, x := range s.spans {
		near := float64(slack)
		if k == timeWay {
			near = briefest
		}
		if (k != timeWay || moves) && (z[k] < x.lo-near || z[k] > x.hi+near) {
			return false
		}
	}
	return !slices.ContainsFunc(s.where, func(l line) bool { return l.of(z) < 0 })
}

// tightest are the months in which most cash is needed in the middle of the slice, as
// many as are worth a bound of their own.
func (s *slice) tightest() []int {
	var z [ways]float64
	for k := range z {
		z[k] = s.spans[k].mid()
	}
	all := make([]int, len(s.cash))
	for i := range all {
		all[i] = i
	}
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(s.cash[b].of(&z), s.cash[a].of(&z)) })
	return all[:min(3, len(all))]
}

// needs is the cash that is needed at the least.
func (s *slice) needs(z *[ways]float64) (most float64) {
	for i := range s.cash {
		most = max(most, s.cash[i].of(z))
	}
	return most
}

// set says which options are chosen.
func (p *problem) set(choice []int) {
	n := 0
	for i, o := range choice {
		for k := 1; k < p.sizes[i]; k++ {
			p.in[n] = 0
			if k == o {
				p.in[n] = 1
			}
			n++
		}
	}
}

// nearly works out the totals of a choice in float64, with parts of sticks.
func (p *problem) nearly(choice []int) {
	p.set(choice)
	n := p.options()
	for k, s := range p.sticks {
		feet := p.parts.sure.feet[k]
		for i, o := range choice {
			feet += p.parts.rooms[i][o].feet[k]
		}
		for i := range s.cells {
			p.in[n] = 0
			if i == s.cheapest() {
				p.in[n] = feet / s.feet[i]
			}
			n++
		}
	}
	p.near.Run(p.in, p.out)
	p.z = [ways]float64{p.out[cost], p.out[atTrade] - p.out[cost], p.out[shared], p.out[added], p.out[time]}
}
