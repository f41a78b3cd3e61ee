package report

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// spoken are the words of the pages and of the trade for lines that have another
// name, evened out by evened.
var spoken = map[string]string{
	"maximum_offer": "max_offer", "offer": "max_offer", leads: "max_offer_low",
	"rule_of_thumb_offer": "rule_offer", "rule_of_thumb": "rule_offer", "the_other_of_value": "rule_allowance",
	"sold_under_value": "value_given_up", "selling": "selling_cost", "holding": "holding_cost", "holding_less_refunds": "holding_cost",
	"all_loan_costs": "loan_cost", "loans_cost": "loan_cost", "costs_of_buying": "purchase_extras", "beyond_the_budget": "beyond_budget",
	"partners_profit_then": "partner_profit", "profit_at_that_price": "owner_profit", "your_profit_then": "owner_profit",

	"profit_of_the_deal": "profit", "margin_of_the_deal": "margin", "partners_profit": "partner_profit", "your_margin": "owner_margin",
	"yours_less_own_hours": "profit_after_own_hours", "your_profit_per_own_hour": "profit_per_own_hour",
	"your_part": "owner_profit", "your_profit": "owner_profit", "from_your_part": "owner_margin", "partners_part": "partner_profit",
	"return_on_cash": "roi", "return": "roi", "for_a_year": "annualised_roi", "annualised": "annualised_roi", "annualized_roi": "annualised_roi",
	"irr_for_a_year": "irr", "loans_cost_a_year": "loan_apr", "apr": "loan_apr", "to_set_aside_for_tax": "tax_set_aside",
	"hold": "hold_months", "of_it_yours": "owner_to_buy", "of_it_your_partners": "partner_to_buy",

	"your_money": "owner_money", "partners_money": "partner_money", "sellers_credit": "seller_credit", "prorations_received": "deposits_received", "received_while_you_own": "received_until_sale",
	"paid_before_closing": "before_cost", "closing": "closing_cost", "points_and_loan_fees": "loan_charges_paid", "work_and_contingency": "spend",
	"holding_until_the_sale": "holding_until_sale", "interest_in_cash": "charges_until_sale", "interest_and_draw_fees": "charges_until_sale", "payments_on_loans": "charges_until_sale", "interest_and_loan_fees": "charges_until_sale", "deposits": "deposits_paid", "deposits_and_prorations": "deposits_paid",
	"left_over_paid_out_to_you": "owner_left_over", "left_over_to_your_partner": "partner_left_over",

	"one_more_month_unsold_gains": "one_more_month_unsold", "one_more_month_stalled_gains": "one_more_month_stalled",
	"break_even": "break_even_sale_price", "sale_price_below": "break_even_sale_price",
	"overrun_over_bids_above": "break_even_overrun", "months_later_than": "break_even_months", "sale_price_even_of": "break_even_sale_price",
	"overrun_over_bids_not_within": "break_even_overrun", "months_of_delay_not_within": "break_even_months",
	"planned_sale_price": "sale_price", "planned_overrun": "overrun",

	"asking_price": "price", "most_of_your_money_tied_up": "cash_needed", "you_lose": "lost_backing_out",
	"profit_target": "profit_to_spare", "margin_target": "margin_to_spare", "roi_target": "roi_to_spare", "cash_you_have": "cash_to_spare",

	"out": "money_out", "in": "money_in", "so_far": "owner_cumulative", "loans_owed": "loan.balance",
	"renovation_budget": "budget", "the_rooms_outside_and_whole_house": "rooms_cost", "all": "rooms_cost", "all_by_trades": "rooms_at_trade_price", "all_own_h": "room_own_hours", "all_hired_h": "room_crew_hours", "own_h": "room_own_hours", "hired_h": "room_crew_hours", "$/sq_ft": "rooms_a_foot", "by_trades": "rooms_at_trade_price",
	"container": "disposal", "rented_by_the_month": "rents", "set_aside_for_what_was_not_seen": "not_seen", "other_lines_of_the_deal_file": "lines_cost", "other_lines": "lines_cost", "general_lines": "general_cost",
	"container_weight_limit": "container_limit", "container_costs": "container_price", "set_aside_for_tax": "tax_set_aside", "share_of_profit_set_aside_for_tax": "tax_share",
	"own_hands": "own_hours", "hired_hours": "room_crew_hours", "weeks": "work_weeks", "weeks_of_work": "work_weeks", "weeks_with_waiting": "scope_months", "waiting": "waiting_days",
	"floor": "floor_area", "walls": "wall_area", "walls_less_large_openings": "walls_less_large",

	"arv": "after_repair_value", "low": "low_value", "budget_with_contingency": "budget",

	"comps": "comps_mean", "comps.sold": "comps_mean", "comps.table": "comps_mean", "comps.file": "comps_mean",
}

// spokenOf are the words of the pages for a line of a loan, a room or whatever else has
// a name, behind it: "first loan, at closing", "kitchen: floor".
var spokenOf = map[string]string{
	"at_closing": "loan_at_closing",
	"cash":       "cash_cost", "by_trades": "trade_price", "own_h": "own_hours", "hired_h": "crew_hours", "hired_hours": "crew_hours",
	"sq_ft": "floor_area", "$/sq_ft": "cost_a_foot", "floor": "floor_area", "ceiling": "ceiling_area", "walls": "wall_area", "walls_less_large_openings": "walls_less_large",
	"cost": "product_cost", "buy": "packs",
}

// spokenMonth are words that stand for one month of a monthly line.
var spokenMonth = map[string]int{"points_and_loan_fees": 0}

// leads are the words before the price that the answer leads with.
const leads = "dont_go_above"

// atOffer are the words that a bid's page says of the maximum offer, not of the
// asking price.
var atOffer = map[string]bool{
	"sold_under_value": true, "selling": true, "holding_less_refunds": true, "all_loan_costs": true,
	"costs_of_buying": true, "beyond_the_budget": true, "partners_profit_then": true, "profit_at_that_price": true, "your_profit_then": true,
}

// Asked is what a label of a page asks for.
type Asked struct {
	Lines   []string // the names that it may mean, the likeliest first
	Month   int      // of a monthly line, -1 where the label says none
	AtOffer bool     // the page's figure is that at the maximum offer
	Leads   bool     // it is the price that the answer leads with, of the two offers the lower
}

// Ask finds the line that a label of a page stands for: "return on cash (ROI)",
// "first loan, at closing", "- holding, less refunds". What is no other word for a
// line is returned as it is.
func Ask(label string) Asked {
	first, rest := label, ""
	if i := max(strings.LastIndex(label, ", "), strings.LastIndex(label, ": ")); i >= 0 {
		first, rest = label[:i], label[i+2:]
	}
	whole := []string{label, first}
	if strings.HasSuffix(strings.TrimSuffix(label, rest), ": ") && !IsFigure(rest) {
		whole = whole[:1] // the line of a room, say, not one of the deal with its figure behind it
	}
	for _, words := range whole {
		key := evened(words)
		if line, ok := spoken[key]; ok {
			month, ok := spokenMonth[key]
			if !ok {
				month = -1
			}
			return Asked{[]string{line}, month, atOffer[key], key == leads}
		}
	}
	lines := []string{label}
	if rest != "" { // a line of a member, a name with a comma, or a line of the deal with a remark
		lines = []string{label, first + "." + strings.TrimPrefix(rest, "no "), "deal." + first}
		if line, ok := spokenOf[evened(rest)]; ok {
			lines = append([]string{first + "." + line}, lines...)
		}
	}
	if bare, none := strings.CutPrefix(label, "no "); none && rest == "" { // assumed to be nothing
		lines = append(lines, bare)
	}
	return Asked{Lines: lines, Month: -1}
}

// IsFigure reports whether what a page has behind the words for a line is its figure.
func IsFigure(words string) bool { return strings.ContainsAny(words, "0123456789") }

// Labels are the words of the pages that Ask knows, with blanks.
func Labels() []string {
	var out []string
	for _, label := range slices.Sorted(maps.Keys(spoken)) {
		out = append(out, words(label))
	}
	return out
}

var (
	unspoken = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\([^)]*\)|\d+(\.\d+)?%|['’,]|^[-+=] `) })
	blanks   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[\s_-]+`) })
)

// evened writes words as line names are written, without signs, percentages,
// apostrophes and what stands in brackets.
func evened(words string) string {
	s := unspoken().ReplaceAllString(strings.ToLower(strings.TrimSpace(words)), "")
	return blanks().ReplaceAllString(strings.TrimSpace(s), "_")
}
