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

// replaces finds the work that sees to all of a part of the house: an item of its check,
// one of an own book that is called after the part, or a line beside the rooms that names
// either.
func (r *reader) replaces(c *pricebook.Check) (at diag.Pos, name string, found bool) {
	return r.seenTo(c, append([]string{c.Item}, c.Also...))
}

func (r *reader) seenTo(c *pricebook.Check, by []string) (at diag.Pos, name string, found bool) {
	words := strings.Fields(plainKey(c.Name))
	for _, w := range r.chosenWorks() {
		if slices.Contains(by, w.item.Name) || len(words) > 1 && ownOf(c, w.item) {
			return w.at, w.label, true
		}
	}
	for _, m := range r.deal.Root.In("cost") {
		label := plainKey(strings.ReplaceAll(m.Label, ":", " "))
		named := slices.ContainsFunc(by, func(item string) bool { return strings.Contains(label, plainKey(item)) })
		if named || len(words) > 1 && allIn(words, strings.Fields(label)) {
			return m.Pos, m.Label, true
		}
	}
	return diag.Pos{}, "", false
}

// ownOf reports whether an item of an own book is called after a part of the house; of those
// of the starter book the check says what they mend.
func ownOf(c *pricebook.Check, it *pricebook.Item) bool {
	return strings.HasPrefix(it.Name, c.Name+" ") && pricebook.Starter().Item(it.Name) == nil
}

// mends reports whether work sees to a part of the house, or to a piece of it.
func (r *reader) mends(c *pricebook.Check) bool {
	_, _, found := r.seenTo(c, slices.Concat([]string{c.Item}, c.Also, c.Pieces))
	return found || slices.ContainsFunc(r.chosenWorks(), func(w *work) bool { return ownOf(c, w.item) })
}

func allIn(words, of []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(of, w) })
}
