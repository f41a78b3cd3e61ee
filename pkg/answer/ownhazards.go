package answer

import (
	"slices"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/pricebook"
)

// ownHazards notes the work by own hands that the price book says is on gas or wiring, carries
// the house or is at height: gas and wiring where a licensed trade is usual, structure where a permit is,
// heights outside, for a ceiling is not what one falls from a roof for.
func (a *Answer) ownHazards(h *caution.House) {
	h.OwnTrades = a.Deal.OwnTrades
	for _, room := range a.Deal.Root.In("room") {
		for _, o := range room.In("option") {
			for _, m := range o.In("item") {
				if m.Given.Of("who").Choice != "own" || a.Of(m, "quantity").IsZero() {
					continue
				}
				it := a.Deal.Work[m].Item
				note(&h.OwnGas, it, "gas", it.Licence)
				note(&h.OwnWiring, it, "wiring", it.Licence)
				note(&h.OwnStructure, it, "structure", it.Permit)
				note(&h.OwnHeight, it, "height", room.Kind == "outside" || it.Trade == "roofing")
			}
		}
	}
}

func note(list *[]string, it *pricebook.Item, caution string, is bool) {
	if is && slices.Contains(it.Cautions, caution) && !slices.Contains(*list, it.Name) {
		*list = append(*list, it.Name)
	}
}
