package report

import (
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/quantity"
)

var stepWords = map[string]string{
	"rule_offer": "rule-of-thumb offer", "rule_allowance": "the other", "value_given_up": "sold under value",
	"selling_cost": "selling", "holding_cost": "holding, less refunds", "loan_cost": "all loan costs",
	"purchase_extras": "costs of buying", "beyond_budget": "beyond the budget",
	"partner_profit": "partner's profit then",
}

// bridge explains the difference between the rule of thumb and the maximum offer
// line by line; the lines add up to it.
func bridge(a *answer.Answer) []entry {
	if len(a.Bridge) == 0 {
		return []entry{{"rule-of-thumb offer", money(a.Line("rule_offer"))}, {"maximum offer", "none"}}
	}
	var list []entry
	for _, s := range a.Bridge {
		if s.Line == "owner_profit" || !s.Amount.IsZero() {
			label := s.Sign() + stepWords[s.Line]
			if s.Line == "owner_profit" {
				label += profitThen(a)
			}
			switch share := a.Line("rule_share"); s.Line {
			case "rule_offer":
				label += ", " + quantity.FormatPercent(share, 2)
			case "rule_allowance":
				label += " " + quantity.FormatPercent(decimal.NewFromInt(1).Sub(share), 2) + " of value"
			}
			list = append(list, fitting(label, money(s.Amount)))
		}
	}
	return append(list, entry{"= maximum offer", money(a.Offer.Price)})
}

// fitting is an entry whose label says less where its figure leaves it too little room.
func fitting(label, figure string) entry {
	if utf8.RuneCountInString(label+" "+figure) > halfWidth {
		label = strings.NewReplacer("rule-of-thumb offer", "rule of thumb", "the other", "other", "at that price", "then").Replace(label)
	}
	return entry{label, figure}
}

// profitThen is what is left to the owner at the maximum offer.
func profitThen(a *answer.Answer) string {
	if a.Partnered() {
		return "your profit then"
	}
	return "profit at that price"
}
