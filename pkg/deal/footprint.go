package deal

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

// far is all there is where nobody says how much: further than any count goes.
var far = decimal.New(1, 12)

// A stretch is a part of all there is of a measure, from one point of it to another.
type stretch struct{ from, to toDo }

// A footprint is where work is done on all there is of its measure: stretches of it in order, none of which
// touches the next. Where two pieces of work are done is compared by it: what lies side by side adds up, and
// what lies one on the other is done to no more than the larger of the two.
type footprint struct {
	on       []stretch
	of, less []toDo // in the words of the file: what it is made up of, and what is taken off that
}

// everywhere is all there is.
func everywhere() footprint { return footprint{on: []stretch{{to: whole}}} }

// theFirst is so much of all there is, from its beginning.
func theFirst(much toDo) footprint {
	p := footprint{on: []stretch{{to: much}}}
	if !much.isWhole() {
		p.of = []toDo{much}
	}
	return p
}

func (p footprint) none() bool { return len(p.on) == 0 }

func (p footprint) isAll() bool {
	return len(p.on) == 1 && p.on[0].from.of(far).IsZero() && p.on[0].to.isWhole()
}

// and is one place and another, of so much as there is in all.
func (p footprint) and(q footprint, all decimal.Decimal) footprint {
	switch {
	case q.isAll() && p.within(all):
		return q
	case p.isAll() && q.within(all):
		return p
	}
	out := footprint{of: said(p.of, q.of), less: said(p.less, q.less)}
	both := slices.Concat(p.on, q.on)
	slices.SortStableFunc(both, func(s, t stretch) int { return s.from.of(all).Cmp(t.from.of(all)) })
	for _, s := range both {
		last := len(out.on) - 1
		switch {
		case !s.from.of(all).LessThan(s.to.of(all)):
		case last < 0 || s.from.of(all).GreaterThan(out.on[last].to.of(all)):
			out.on = append(out.on, s)
		case s.to.of(all).GreaterThan(out.on[last].to.of(all)):
			out.on[last].to = s.to
		}
	}
	return out
}

// but is a place without another, of so much as there is in all.
func (p footprint) but(q footprint, all decimal.Decimal) footprint {
	out := footprint{of: p.of, less: p.less}
	for _, s := range p.on {
		for _, t := range q.on {
			if t.to.of(all).LessThanOrEqual(s.from.of(all)) || t.from.of(all).GreaterThanOrEqual(s.to.of(all)) || !t.from.of(all).LessThan(t.to.of(all)) {
				continue
			}
			if t.from.of(all).GreaterThan(s.from.of(all)) {
				out.on = append(out.on, stretch{s.from, t.from})
			}
			s.from, out.less = t.to, said(out.less, q.of)
		}
		if s.from.of(all).LessThan(s.to.of(all)) {
			out.on = append(out.on, s)
		}
	}
	return out
}

// within reports whether a place goes nowhere beyond all there is.
func (p footprint) within(all decimal.Decimal) bool {
	return p.none() || p.on[len(p.on)-1].to.of(all).LessThanOrEqual(all)
}

// first is so much of a place from its beginning, and how much it is short of that.
func (p footprint) first(much toDo, all decimal.Decimal) (out footprint, short toDo) {
	for _, s := range p.on {
		if !much.of(all).IsPositive() {
			break
		}
		if long := s.to.less(s.from); long.of(all).LessThan(much.of(all)) {
			out.on, much = append(out.on, s), much.less(long)
			continue
		}
		out.on, much = append(out.on, stretch{s.from, s.from.plus(much)}), toDo{}
	}
	return out, much
}

// length is how much a place takes up.
func (p footprint) length() (sum toDo) {
	for _, s := range p.on {
		sum = sum.plus(s.to.less(s.from))
	}
	sum.text, sum.at = p.words(sum)
	return sum
}

// words say how a length comes about, and where the file says the last of it.
func (p footprint) words(length toDo) (text string, at diag.Pos) {
	var of, less []string
	var sum toDo
	for _, a := range p.of {
		of, sum = append(of, a.text), sum.plus(a)
		at = cmp.Or(at, a.at)
	}
	if text = strings.Join(of, " and "); len(of) > 1 && !length.equal(sum) && len(p.less) == 0 {
		text += ", as far as they lie apart"
	}
	if len(p.of) == 0 {
		sum = whole
	}
	for _, a := range p.less {
		less, sum, at = append(less, a.text), sum.less(a), a.at
	}
	if len(less) > 0 {
		if text = cmp.Or(text, "all") + " less " + strings.Join(less, " and "); !length.equal(sum) {
			text += ", as far as that lies there"
		}
	}
	return text, at
}

// said are the words of two places, each once.
func said(some, others []toDo) []toDo {
	out := slices.Clone(some)
	for _, a := range others {
		if a.text != "" && !slices.ContainsFunc(out, func(b toDo) bool { return b.text == a.text && b.at == a.at }) {
			out = append(out, a)
		}
	}
	return out
}

// fit is so much of all there is, as far as it goes in one place and then in the next.
func fit(much toDo, all decimal.Decimal, places ...footprint) (out footprint) {
	for _, p := range places {
		more, short := p.but(out, all).first(much, all)
		if out, much = out.and(more, all), short; !much.of(all).IsPositive() {
			break
		}
	}
	out.of, out.less = nil, nil // which is only where there was room
	return out
}
