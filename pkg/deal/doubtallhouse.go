package deal

import (
	"cmp"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtAllTheHouse doubts work on the whole house that several rooms name, so that it is
// done to more house than there is, also where it comes along in one of them, and what a room
// names while it comes along once for the house too.
func (r *reader) doubtAllTheHouse() {
	comesOnce := r.comesOnce()
	var alone []*work // that goes by the whole house, and stands in one room
	once := func(w *work) string { return r.workIn("whole house", w.item.Name+": ...") }
	before, parts, along := map[*pricebook.Item]*plan{}, map[*pricebook.Item]decimal.Decimal{}, map[*pricebook.Item]string{}
	for p, w := range r.eachWork() {
		if !p.taken || w.by != "" && comesOnce[plainKey(w.item.Name)] {
			continue
		}
		by := before[w.item]
		again := by != nil && by != p
		part, known := r.partOf(w)
		m := pricebook.MeasureNamed(w.item.Measure)
		switch {
		case w.by == "" && !r.allOptions && p.room.Kind != "whole_house" && r.callPlan != nil && r.callPlan.has(w.item.Name):
			r.say("done-twice", w.at, "%s stands in %s, and comes along once for the whole house too", diag.Quote(w.label), p.room.Label)("write it once, under   %s", once(w))
		case comesOnce[plainKey(w.item.Name)]:
			if again {
				r.say("done-twice", w.at, "%s is once for the whole house, and stands in %s and in %s", diag.Quote(w.label), by.room.Label, p.room.Label)("write it once, under   %s   ; if it takes two, with   count: 2", once(w))
			} else {
				before[w.item] = p
			}
		case known && m.Of == "house" && m.Unit != "month":
			along[w.item] = cmp.Or(along[w.item], w.by)
			if !again && w.by == "" && p.room.Kind == "inside" && part.Equal(one) && m.Unit == "sq ft" && m.Line != "house_ceiling" { // done from an attic
				alone = append(alone, w)
			}
			switch parts[w.item] = parts[w.item].Add(part); {
			case !again || !parts[w.item].GreaterThan(one):
			case along[w.item] != "":
				r.say("done-twice", w.at, "%s goes by the whole house, and is done in %s and in %s: %s brings it along", diag.Quote(w.item.Name), by.room.Label, p.room.Label, along[w.item])("write   without: [%s]   beside what brings it along, or say how much it is for where you name it, with   part: 50%%", w.item.Name)
			default:
				r.say("done-twice", w.at, "%s goes by the whole house, and stands in %s and in %s", diag.Quote(w.label), by.room.Label, p.room.Label)("write it once, under   %s   , or say how much each is for, with   part: 50%%", once(w))
			}
			before[w.item] = p
		}
	}
	for _, w := range alone {
		if much, _ := r.worked(w.member, "quantity"); parts[w.item].Equal(one) && r.good(w.scope.path+"quote") == nil && much.IsPositive() {
			r.say("house-in-room", w.at, "%s goes by the whole house, %s of it, and stands in %s alone", diag.Quote(w.label), quantity.FormatCount(much, 0)+" "+string(w.item.Unit), before[w.item].room.Label)("for the whole house write it under   %s   ; for this room alone look for what is done by the room, or say how much it is, with   part: 10%%   or   count:", once(w))
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
