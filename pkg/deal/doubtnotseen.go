package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtNotSeen looks for parts of the house that the work sees to while money is still set aside
// because they were not seen: it may leave some of them as they were, or words alone tell of it.
func (r *reader) doubtNotSeen() {
	var parts, keys []string
	var sum decimal.Decimal
	var at diag.Pos
	for _, m := range r.deal.Root.In("check") {
		aside, ok := r.worked(m, "set_aside")
		i := slices.IndexFunc(pricebook.Checks(), func(c *pricebook.Check) bool { return c.Name == m.Label })
		if !ok || !aside.IsPositive() || i < 0 {
			continue
		}
		if pos, name, found := r.replaces(pricebook.Checks()[i]); found {
			if parts == nil {
				at = pos
			}
			parts, keys, sum = append(parts, m.Label+" (by "+diag.Quote(name)+")"), append(keys, m.Label+": good"), sum.Add(aside)
		}
	}
	if parts != nil {
		every := ""
		if len(r.deal.Options) > 0 {
			every = "   , which holds for every option"
		}
		r.say("not-seen-replaced", at, "%s is set aside for what was not seen and the work sees to: %s", quantity.FormatMoney(sum), strings.Join(parts, ", "))("if nothing of it can be bad any more, say   seen: {%s}%s", strings.Join(keys, ", "), every)
	}
}

// replaces finds the work that sees to all of a part of the house: an item of its check, or
// one of an own book or a line beside the rooms that tells so.
func (r *reader) replaces(c *pricebook.Check) (at diag.Pos, name string, found bool) {
	if at, name, found = r.seenTo(c, mendingOf(c, false)); found {
		return at, name, true
	}
	return r.roomByRoom(c)
}

// roomByRoom finds work that sees to a part room by room, where it is done in most of the finished floor.
func (r *reader) roomByRoom(c *pricebook.Check) (at diag.Pos, name string, found bool) {
	var floor decimal.Decimal
	for _, p := range r.chosenPlans() {
		i := slices.IndexFunc(p.works, func(w *work) bool { return slices.Contains(c.ByRoom, w.item.Name) })
		if i < 0 || !r.lives(p.room) {
			continue
		}
		room, _ := r.worked(p.room, "floor_area")
		floor, at, name = floor.Add(room), p.works[i].at, p.works[i].label+" in each room"
	}
	all, _ := r.worked(r.deal.Root, "house_finished_floor")
	return at, name, floor.IsPositive() && floor.GreaterThan(all.Mul(measuredLeast))
}

// mends reports whether work sees to a part of the house, or to a piece of it.
func (r *reader) mends(c *pricebook.Check) bool {
	_, _, found := r.seenTo(c, mendingOf(c, true))
	return found
}

func (r *reader) seenTo(c *pricebook.Check, by mending) (at diag.Pos, name string, found bool) {
	sees := func(item string) bool {
		if name := plainKey(item); c.Item == "" && strings.Contains(name, plainKey(c.Name)) && !onlyTouches().MatchString(name) { // of a part that the file alone knows
			return true
		}
		return slices.Contains(by.items, item) || pricebook.Starter().Item(item) == nil && by.toldIn(item)
	}
	for _, w := range r.chosenWorks() {
		if sees(w.item.Name) || slices.ContainsFunc(w.includes(), sees) {
			return w.at, w.label, true
		}
	}
	for _, p := range r.chosenPlans() {
		for _, w := range p.works {
			if r.quoteHoldsMore(w) && slices.ContainsFunc(r.heldUnderWithout(p), sees) {
				return w.at, w.label, true
			}
		}
	}
	for _, m := range r.deal.Root.In("cost") {
		if by.toldIn(m.Label) {
			return m.Pos, m.Label, true
		}
	}
	return diag.Pos{}, "", false
}

// heldUnderWithout are the names that an option leaves out since a quote that holds more has them: none that
// work outside such a quote brings too, which may go without.
func (r *reader) heldUnderWithout(p *plan) (out []string) {
	for _, s := range p.without {
		it := r.itemNamed(plainKey(s.text))
		if it != nil && !slices.ContainsFunc(p.works, func(w *work) bool { return !r.quoteHoldsMore(w) && bringsAny(w.item, []string{it.Name}) }) {
			out = append(out, it.Name)
		}
	}
	return out
}
