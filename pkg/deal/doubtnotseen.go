package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtNotSeen looks for parts of the house that the work replaces while money is still
// set aside because they were not seen.
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
		r.say("not-seen-replaced", at, "%s is set aside for what was not seen and the work replaces: %s", quantity.FormatMoney(sum), strings.Join(parts, ", "))("if nothing of it can be bad any more, say   seen: {%s}", strings.Join(keys, ", "))
	}
}

// replaces finds the work that sees to all of a part of the house: the item of its check,
// another kind of the same thing, such as of a water heater, or a line beside the rooms
// that names either.
func (r *reader) replaces(c *pricebook.Check) (at diag.Pos, name string, found bool) {
	words := strings.Fields(plainKey(c.Name))
	for _, w := range r.chosenWorks() {
		if w.item.Name == c.Item || len(words) > 1 && strings.HasPrefix(w.item.Name, c.Name+" ") {
			return w.at, w.label, true
		}
	}
	for _, m := range r.deal.Root.In("cost") {
		label := plainKey(strings.ReplaceAll(m.Label, ":", " "))
		if strings.Contains(label, plainKey(c.Item)) || len(words) > 1 && allIn(words, strings.Fields(label)) {
			return m.Pos, m.Label, true
		}
	}
	return diag.Pos{}, "", false
}

// mends reports whether work sees to a part of the house, or to a piece of it.
func (r *reader) mends(c *pricebook.Check) bool {
	_, _, all := r.replaces(c)
	return all || slices.ContainsFunc(r.chosenWorks(), func(w *work) bool { return strings.HasPrefix(w.item.Name, c.Name+" ") })
}

func allIn(words, of []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(of, w) })
}
