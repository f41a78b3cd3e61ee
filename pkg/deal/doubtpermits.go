package deal

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// doubtPermitsTwice doubts permits beside those that the work brings along, but for what names another.
func (r *reader) doubtPermitsTwice(lines []*model.Member, works []*work) {
	brought := r.permits(works)
	if len(brought) == 0 {
		return
	}
	same := func(m *model.Member) bool {
		return pricebook.IsPermit(plainKey(m.Label)) && !permitForContainer(m.Label) && !r.anotherPermit(m.Label, brought) && !r.ofOtherTrades(m.Label, brought, works)
	}
	names, until := namedPermits(lines, same, brought), "to count its sum instead"
	if names == nil {
		names, until = brought, "if its sum is for all"
	}
	all := strings.Join(names, ", ")
	r.twice(lines, same, "permits-twice", "is beside what the work brings along: "+all,
		fmt.Sprintf("leave it out, or say   whole house: {without: [%s]}   %s", all, until), "roof permit")
}

// besidePermit are words that say nothing of what a permit is for.
var besidePermit = []string{"permit", "permits", "fee", "fees", "cost", "costs", "and", "the", "city", "county", "town"}

// namedPermits are the permits brought along that lines of a kind name, as   plumbing permit   does; nil where one
// of them says something else too, or nothing.
func namedPermits(lines []*model.Member, is func(*model.Member) bool, brought []string) (out []string) {
	for _, m := range lines {
		if !is(m) {
			continue
		}
		var found []string
		words := slices.DeleteFunc(wordsOf(m.Label), func(word string) bool { return slices.Contains(besidePermit, word) })
		for _, permit := range brought {
			about := slices.DeleteFunc(strings.Fields(permit), func(word string) bool { return slices.Contains(besidePermit, word) })
			if len(about) > 0 && !slices.ContainsFunc(about, func(word string) bool { return !slices.Contains(words, word) }) {
				words = slices.DeleteFunc(words, func(word string) bool { return slices.Contains(about, word) })
				found = append(found, permit)
			}
		}
		if len(found) == 0 || len(words) > 0 {
			return nil
		}
		out = append(out, found...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// wordsOf are the words of a label, evened out.
func wordsOf(label string) []string {
	return strings.FieldsFunc(plainKey(label), func(c rune) bool { return strings.ContainsRune(" :,&+/()-", c) })
}

// permits are the names of the permits that chosen work brings along and that cost something.
func (r *reader) permits(works []*work) []string {
	var out []string
	for _, w := range works {
		if w.by == "" || !pricebook.IsPermit(w.item.Name) {
			continue
		}
		if paid, ok := r.worked(w.member, "cash_cost"); ok && paid.IsPositive() {
			out = append(out, w.item.Name)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// anotherPermit reports whether a label names a permit of the price book that is not among
// those brought along.
func (r *reader) anotherPermit(label string, brought []string) bool {
	it := r.itemNamed(strings.TrimSuffix(strings.TrimSuffix(plainKey(label), "s"), " fee"))
	return it != nil && !slices.Contains(brought, it.Name)
}

// ofOtherTrades reports whether a label names a trade, and none of which chosen work brings one of the
// permits brought along: a roof permit beside that for a sink.
func (r *reader) ofOtherTrades(label string, brought []string, works []*work) bool {
	named := false
	for _, word := range wordsOf(label) {
		if pricebook.IsPermit(word) {
			continue
		}
		if slices.ContainsFunc(brought, func(permit string) bool { return slices.Contains(strings.Fields(permit), word) }) {
			return false
		}
		for _, trade := range r.prices().Trades() {
			if trade == "general" || !pricebook.OfTrade(word, trade) {
				continue
			}
			named = true
			if slices.ContainsFunc(works, func(w *work) bool { return w.item.Trade == trade && bringsAny(w.item, brought) }) {
				return false
			}
		}
	}
	return named
}

// bringsAny reports whether an item brings one of some others along.
func bringsAny(it *pricebook.Item, names []string) bool {
	return slices.ContainsFunc(it.Brings, func(c pricebook.Companion) bool { return slices.Contains(names, c.Item) })
}
