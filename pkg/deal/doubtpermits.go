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
	all := strings.Join(brought, ", ")
	r.twice(lines, func(m *model.Member) bool {
		return pricebook.IsPermit(plainKey(m.Label)) && !r.anotherPermit(m.Label, brought) && !r.ofOtherTrades(m.Label, brought, works)
	},
		"permits-twice", "is beside what the work brings along: "+all,
		fmt.Sprintf("leave it out, or say   whole house: {without: [%s]}   if its sum is for all", all), "roof permit")
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
	for _, word := range strings.FieldsFunc(plainKey(label), func(c rune) bool { return strings.ContainsRune(" :,&+/()-", c) }) {
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
