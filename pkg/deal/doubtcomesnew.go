package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

var (
	// someRooms is from what share of the floor on what rooms make needless is told of: below it costs little.
	someRooms    = decimal.NewFromFloat(0.25)
	allButLittle = decimal.NewFromFloat(0.9)
)

// doubtComesNew doubts what comes along on the whole house by the floor of its rooms, where rooms make all
// of that new which it would mend: patching after a rewire, where the walls are hung with board.
func (r *reader) doubtComesNew() {
	plans := r.chosenPlans()
	for _, h := range plans {
		for _, w := range h.works {
			if h.room.Kind != "whole_house" || len(w.bringers) == 0 || w.item.Measure != "house finished floor" {
				continue // what the house is called for has its conditions elsewhere
			}
			var of decimal.Decimal
			var rooms, by []string
			for _, p := range plans {
				makes := r.makesNeedless(p, w)
				if len(makes) == 0 {
					continue
				}
				floor, _ := r.worked(p.room, "floor_area")
				of, rooms = of.Add(floor), append(rooms, p.room.Label)
				for _, name := range makes {
					if !slices.Contains(by, name) {
						by = append(by, name)
					}
				}
			}
			if all, known := r.worked(w.member, "quantity"); known && all.IsPositive() && r.isWhole(w) && of.GreaterThanOrEqual(all.Mul(someRooms)) {
				rest := &comesAlong{plan: h, work: w, left: decimal.Max(all.Sub(of).Round(0), decimal.Zero)}
				r.say("done-twice", w.bringers[0].by.at, "%s, which %s brings along, is for %s of floor, and %s of that is in rooms where it has nothing to mend: %s, with %s", w.item.Name, diag.Quote(w.bringers[0].by.label), rest.count(all), rest.count(decimal.Min(of, all)), strings.Join(rooms, ", "), strings.Join(by, ", "))("if so, write   %s   , which stands whatever other options the rooms take", rest.leftOut())
			}
		}
	}
}

// makesNeedless are the names of the work on all of a finished room beside which none of what comes along on the
// house would come.
func (r *reader) makesNeedless(p *plan, along *work) (names []string) {
	if !r.lives(p.room) {
		return nil
	}
	for _, x := range p.works {
		besides := func(b brought) bool { return !slices.Contains(b.Unless, x.item.Name) }
		if !slices.ContainsFunc(along.bringers, besides) && r.isWhole(x) {
			names = append(names, x.item.Name)
		}
	}
	return names
}

// isWhole reports whether work is done to nearly all of its measure, be it said as a count.
func (r *reader) isWhole(w *work) bool {
	if r.allOf(w) {
		return true
	}
	done, known := r.worked(w.member, "quantity")
	all, there := r.worked(w.member.Parent.Parent, pricebook.MeasureNamed(w.item.Measure).Line)
	return known && there && all.IsPositive() && done.GreaterThanOrEqual(all.Mul(allButLittle))
}
