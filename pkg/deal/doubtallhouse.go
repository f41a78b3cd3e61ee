package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// doubtAllTheHouse doubts work on the whole house that several rooms name, so that it is
// done to more house than there is, and what a room names while it comes along once for the
// house too.
func (r *reader) doubtAllTheHouse() {
	type named struct {
		by  *plan
		sum decimal.Decimal
	}
	before := map[*pricebook.Item]named{}
	comesOnce := r.comesOnce()
	for _, p := range r.plans {
		if !p.taken {
			continue
		}
		for _, w := range p.works {
			if w.by != "" {
				continue
			}
			if !r.allOptions && p.room.Kind != "whole_house" && r.callPlan != nil && r.callPlan.has(w.item.Name) {
				r.say("done-twice", w.at, "%s stands in %s, and comes along once for the whole house too", diag.Quote(w.label), p.room.Label)("write it once, under   whole house: {work: {%s: ...}}", w.item.Name)
				continue
			}
			if b, again := before[w.item]; comesOnce[plainKey(w.item.Name)] && again && b.by != p {
				r.say("done-twice", w.at, "%s is once for the whole house, and stands in %s and in %s", diag.Quote(w.label), b.by.room.Label, p.room.Label)("write it once, under   whole house: {work: {%s: ...}}   ; if it takes two, with   count: 2", w.item.Name)
				continue
			} else if comesOnce[plainKey(w.item.Name)] {
				before[w.item] = named{by: p}
				continue
			}
			part, known := r.partOf(w)
			if m := pricebook.MeasureNamed(w.item.Measure); !known || m.Of != "house" || m.Unit == "month" {
				continue
			}
			b, again := before[w.item]
			if b.sum = b.sum.Add(part); again && b.by != p && b.sum.GreaterThan(one) {
				r.say("done-twice", w.at, "%s goes by the whole house, and stands in %s and in %s", diag.Quote(w.label), b.by.room.Label, p.room.Label)("write it once, under   whole house: {work: {%s: ...}}   , or say how much each is for, with   part: 50%%", w.item.Name)
			}
			before[w.item] = named{p, b.sum}
		}
	}
}

// comesOnce are the names of what some work of the price book brings once for the house.
func (r *reader) comesOnce() map[string]bool {
	out := map[string]bool{}
	for _, w := range r.eachWork() {
		for _, c := range w.item.Brings {
			if c.House {
				out[plainKey(c.Item)] = true
			}
		}
	}
	return out
}
