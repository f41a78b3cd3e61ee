package best

import "ledgerboard/pkg/model"

// What is read of members besides the totals, for the parts of each option. What cut
// lists read is seen besides.
var read = map[string][]string{
	"option":  {"besides", "besides_at_trade", "own_hours", "crew_weeks", "waits", "debris", "weight", "added"},
	"use":     {"bought", "by_parts", "ordered"},
	"check":   {"if_bad", "set_aside"},
	"renewal": {"comes_new"},
	"product": {"holds", "unit_price", "price_factor"},
	"trade":   {"crew", "hours_a_week"},
	"deal":    {"container_holds", "container_limit", "container_price", "own_hours_a_week", "line_own_hours", "sequence", "all_debris", "all_weight", "months_a_day", "days_a_week", "waiting_days"},
}

// calledLines are read of work that options call for.
var calledLines = []string{"labour", "found", "labour_at_trade", "own_hours", "crew_hours", "trade_hours", "debris", "weight"}

// seen are the cells that are read of the work.
func (h *House) seen() []*model.Cell {
	out := h.Deal.CutCells()
	var walk func(x *model.Member)
	add := func(x *model.Member, lines []string) {
		for _, l := range lines {
			if c := h.Deal.Model.Find(x, l); c != nil && c.Member == x {
				out = append(out, c)
			}
		}
	}
	walk = func(x *model.Member) {
		add(x, read[x.Set])
		if len(x.In("caller")) > 0 && x.Set == "item" {
			add(x, calledLines)
		}
		for _, c := range x.Children {
			walk(c)
		}
	}
	walk(h.Deal.Root)
	return out
}
