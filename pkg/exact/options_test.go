package exact_test

import (
	"fmt"
	"maps"
	"slices"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

// wanted are the options that random deals must use: every input of the document,
// every word of a choice, those the generator names, and what deals must run into.
func wanted(doc *model.Document) []string {
	all := slices.Clone(modeltest.Options)
	for _, l := range doc.Lines {
		if !l.Input || ofTakeoff(l) || l.ID() == "value_before_work" { // those of rooms and work are drawn in houses, which have a test of their own
			continue
		}
		all = append(all, "gives "+l.ID())
		if l.Formula() != nil && l.When == nil && !always[l.ID()] {
			all = append(all, "leaves out "+l.ID())
		}
		for _, word := range l.Choices {
			all = append(all, fmt.Sprintf("%s is %q", l.ID(), word))
		}
	}
	return append(all, slices.Sorted(maps.Keys(happens))...)
}

// always are inputs that every member of their set gives.
var always = map[string]bool{"lead_in": true, "renovation": true, "after_repair_value": true, "value_before_work": true, "marketing": true, "escrow": true, "table.slab": true}

// options are those that a deal uses.
func (w worked) options() map[string]bool {
	seen := maps.Clone(w.Uses)
	for _, c := range w.m.Cells {
		if !c.Line.Input {
			continue
		}
		if c.Given == nil {
			seen["leaves out "+c.Line.ID()] = true
			continue
		}
		seen["gives "+c.Line.ID()] = true
		if c.Given.Choice != "" {
			seen[fmt.Sprintf("%s is %q", c.Line.ID(), c.Given.Choice)] = true
		}
	}
	for what, happened := range happens {
		if happened(w) {
			seen[what] = true
		}
	}
	return seen
}

// happens are turns that a deal can take.
var happens = map[string]func(worked) bool{
	"a cap by value cuts a loan": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool {
			return w.at(l, "value_limit").LessThan(w.at(l, "cost_limit")) && w.cut(l)
		})
	},
	"a cap by cost cuts a loan": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool {
			return w.at(l, "cost_limit").LessThan(w.at(l, "value_limit")) && w.cut(l)
		})
	},
	"a loan would give cash back": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.at(l, "closing_wanted").GreaterThan(w.at(l, "table_room")) })
	},
	"a cap cuts a holdback": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.at(l, "holdback").LessThan(w.at(l, "holdback_wanted")) })
	},
	"a cap cuts a reserve": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.at(l, "reserve").LessThan(w.at(l, "reserve_wanted")) })
	},
	"a reserve runs out": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool {
			return w.at(l, "reserve").IsPositive() && w.sum(l, "interest_cash").IsPositive()
		})
	},
	"a draw comes too late": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool {
			return w.sum(l, "draw_net").GreaterThan(w.sum(l, "draw_paid"))
		})
	},
	"retainage comes too late": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool {
			return w.at(l, "retained").IsPositive() && w.sum(l, "released").IsZero()
		})
	},
	"small draws wait": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.sum(l, "earned_to_date").GreaterThan(w.sum(l, "asked_to_date")) })
	},
	"a holdback is not used up": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.at(l, "holdback").GreaterThan(w.sum(l, "draw_gross")) })
	},
	"the least interest is due": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.at(l, "top_up").IsPositive() })
	},
	"several extensions": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool { return w.in(l, "extensions_begun", w.Months()).IntPart() > 1 })
	},
	"a loan is paid off by level payments": func(w worked) bool {
		return w.anyLoan(func(l *model.Member) bool {
			return w.at(l, "amortising_months").IsPositive() && w.at(l, "loan_at_closing").IsPositive() && w.at(l, "payoff").IsZero()
		})
	},
	"the sale is short":          func(w worked) bool { return w.in(w.Deal, "short_at_sale", w.Months()).IsPositive() },
	"a loss":                     func(w worked) bool { return w.of("profit").IsNegative() },
	"no cash needed":             func(w worked) bool { return w.of("cash_needed").IsZero() },
	"a low point after closing":  func(w worked) bool { return w.of("cash_needed_month").IsPositive() },
	"a surplus before the sale":  func(w worked) bool { return w.surplusBeforeSale() },
	"partner loses capital":      func(w worked) bool { return w.in(w.Deal, "partner_capital", w.Months()).IsPositive() },
	"a preferred return is paid": func(w worked) bool { return w.sum(w.Deal, "preferred_paid").IsPositive() },
	"a preferred return is short": func(w worked) bool {
		return w.of("preferred_due").GreaterThan(w.sum(w.Deal, "preferred_paid"))
	},
	"a premium comes back":        func(w worked) bool { return w.over(w.Deal.In("holding_fee"), "refund").IsPositive() },
	"self-employment tax":         func(w worked) bool { return w.of("self_employment_tax").IsPositive() },
	"a sale in a part of a month": func(w worked) bool { return !w.of("hold_months").IsInteger() },
	"overrun beyond the budget":   func(w worked) bool { return w.of("beyond_budget").IsPositive() },
}

func (w worked) anyLoan(holds func(*model.Member) bool) bool {
	return slices.ContainsFunc(w.Deal.In("loan"), holds)
}

// cut reports whether caps take something off a loan.
func (w worked) cut(l *model.Member) bool {
	for _, part := range [][2]string{{"loan_at_closing", "closing_wanted"}, {"holdback", "holdback_wanted"}, {"reserve", "reserve_wanted"}} {
		if w.at(l, part[0]).LessThan(w.at(l, part[1])) && w.at(l, "room").Equal(w.at(l, "commitment")) {
			return true
		}
	}
	return false
}

func (w worked) surplusBeforeSale() bool {
	for m := range w.Months() {
		if w.in(w.Deal, "net_cash", m).IsPositive() {
			return true
		}
	}
	return false
}
