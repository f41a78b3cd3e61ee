package answer

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

// Goal names what a target asks for. What is missed of it is said by Misses.
func (a *Answer) Goal(target string) string {
	switch {
	case a.BreaksEven(target):
		return "breaking even"
	case target == "profit_to_spare":
		return "your profit target of " + stated(a.Line("target_profit"))
	case target == "margin_to_spare":
		return "your margin target of " + statedShare(a.Line("target_margin"))
	case target == "roi_to_spare":
		return "your return on cash (ROI) target of " + statedShare(a.Line("target_roi"))
	case target == cashTarget:
		return "the " + a.purse() + " of cash you can use"
	}
	return target
}

// BreaksEven reports whether a target asks no more than that no money is lost.
func (a *Answer) BreaksEven(target string) bool {
	return target == "profit_to_spare" && a.Line("target_profit").IsZero()
}

// purse is the cash that may be used.
func (a *Answer) purse() string { return stated(a.Line("cash_available").Sub(a.Line("cash_reserve"))) }

// Meets says behind "you" that every target holds.
func (a *Answer) Meets() string {
	var met, parts []string
	enough := ""
	for _, t := range solve.Targets(a.Deal.Targets) {
		switch {
		case a.BreaksEven(t):
			parts = append(parts, "lose no money")
		case t == cashTarget:
			enough = a.Goal(t) + " is enough"
		default:
			met = append(met, a.Goal(t))
		}
	}
	if len(met) > 0 {
		parts = append(parts, "meet "+Listed(met))
	}
	if enough == "" {
		return strings.Join(parts, " and ")
	}
	return strings.Join(append(parts, enough), ", and ")
}

// Misses says behind "you" or "you would" which targets are missed, each by how much:
// "miss your profit target of $20,000 by $412.10 and need $2,156.46 more cash than the
// $78,000 you can use".
func (a *Answer) Misses(misses ...Miss) string {
	var missed, parts []string
	more := ""
	for _, m := range misses {
		switch {
		case a.BreaksEven(m.Target):
			parts = append(parts, "lose "+money(m.Short))
		case m.Target == cashTarget:
			more = "need " + money(m.Short) + " more cash than the " + a.purse() + " you can use"
		case m.Target == "profit_to_spare":
			missed = append(missed, a.Goal(m.Target)+" by "+money(m.Short))
		default:
			missed = append(missed, a.Goal(m.Target)+" by "+money(m.Short)+" of "+a.OwnProfit())
		}
	}
	if len(missed) > 0 {
		parts = append(parts, "miss "+Listed(missed))
	}
	if more != "" {
		parts = append(parts, more)
	}
	if len(missed) > 1 && len(parts) > 1 { // an "and" stands within
		return strings.Join(parts, ", and ")
	}
	return Listed(parts)
}

// stated is an amount that the file gives, with its cents where it has some.
func stated(x decimal.Decimal) string {
	if x.Round(2).IsInteger() {
		return dollars(x)
	}
	return money(x)
}

// statedShare is a share that the file gives, not rounded.
func statedShare(x decimal.Decimal) string { return quantity.FormatPercent(x, 12) }

// Listed is a list in words: one, two and three.
func Listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
