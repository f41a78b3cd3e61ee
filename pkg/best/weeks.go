package best

import (
	"slices"

	"ledgerboard/pkg/model"
)

// A form is a sum of own weeks and of crew weeks that the weeks of work are no less
// than.
type form struct{ own, crew float64 }

// forms are those of each way in which own work and trades fit together, in the order
// of the model's choice.
var forms = [][]form{
	{{1, 0.5}, {0.5, 1}, {0.75, 0.75}}, // the longer and half of the shorter
	{{1, 0}, {0, 1}, {0.5, 0.5}},       // the longer
	{{1, 1}},                           // both
}

func (f form) of(p *part) float64 { return f.own*p.ownWeeks + f.crew*p.crew }

// tightest is the form that comes to most with everything at once.
func (p *parts) tightest() form {
	best, most := p.forms[0], -1.0
	for _, f := range p.forms {
		sum := f.of(&p.sure)
		for i := range p.rooms {
			for o := range p.rooms[i] {
				sum += f.of(&p.rooms[i][o])
			}
		}
		if sum > most {
			best, most = f, sum
		}
	}
	return best
}

// months is how long an option's weeks by a form take.
func (p *parts) months(weeks float64) float64 { return weeks * p.weekly * p.daily }

// shortestOf is the least time of any choice, from that where nothing is chosen. Work that
// is called for then, but yields to the same done otherwise, may take longer than that.
func (h *House) shortestOf(nothing float64) float64 {
	p := h.parts
	yields := func(c *model.Cell) bool {
		return slices.ContainsFunc(p.callers[c.Member], func(at [2]int) bool { return at[0] < 0 })
	}
	if !slices.ContainsFunc(h.loose, yields) {
		return nothing
	}
	weeks := 0.0
	for _, f := range p.forms {
		weeks = max(weeks, f.of(&p.sure))
	}
	return min(nothing, p.months(weeks)+p.sure.waits*p.daily)
}

// shortestWork is the least time that any work takes that takes any, where none is
// done whatever is chosen.
func (h *House) shortestWork() float64 {
	p := h.parts
	least := p.longest.InexactFloat64()
	for i := range p.rooms {
		for o := range p.rooms[i] {
			x := &p.rooms[i][o]
			weeks := 0.0
			for _, f := range p.forms {
				weeks = max(weeks, f.of(x))
			}
			if t := p.months(weeks) + x.waits*p.daily; t > 0 {
				least = min(least, t)
			}
		}
	}
	if wait := h.shortestWait(); wait > 0 {
		least = min(least, wait*p.daily)
	}
	if len(h.loose) > 0 {
		least = min(least, briefest)
	}
	return least * (1 - 1e-9)
}

// shortestWait is the fewest days that any work waits that waits at all, be it what others call for; 0 where
// none does, or where the file says how long is waited.
func (h *House) shortestWait() (least float64) {
	if h.find("waiting_days").Given != nil {
		return 0
	}
	for _, room := range h.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			for _, it := range o.In("item") {
				if x := it.Given.Of("waiting").Number.InexactFloat64(); x > 0 && (least == 0 || x < least) {
					least = x
				}
			}
		}
	}
	return least
}

// briefest is in months how long what takes no time may seem to, so that no work falls between.
// Work that is not firm counts with no option, so that a choice may come to no more than it takes.
const briefest = 1e-6
