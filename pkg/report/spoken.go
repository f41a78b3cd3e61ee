package report

// Spoken are the words of the pages and of the trade for lines that have another
// name, evened out as line names are.
var Spoken = map[string]string{
	"maximum_offer": "max_offer", "offer": "max_offer", "rule_of_thumb_offer": "rule_offer", "rule_of_thumb": "rule_offer",
	"what_it_leaves_over": "rule_allowance", "sold_under_value": "value_given_up", "beyond_the_budget": "beyond_budget",
	"return_on_cash": "roi", "return": "roi", "annualised": "annualised_roi", "annualized_roi": "annualised_roi",
	"irr_for_a_year": "irr", "apr": "loan_apr", "loans_cost": "loan_cost", "interest_and_draw_fees": "charges_until_sale",
	"your_part": "owner_profit", "your_profit": "owner_profit", "profit_at_that_price": "owner_profit", "partners_part": "partner_profit",
	"your_money": "owner_money", "partners_money": "partner_money", "work_and_contingency": "spend", "to_set_aside_for_tax": "tax_set_aside",
	"hold": "hold_months", "holding": "holding_cost", "selling": "selling_cost", "closing": "closing_cost",
	"closing_and_charges": "purchase_extras", "paid_before_closing": "before_cost", "planned_sale_price": "sale_price",
	"planned_overrun": "overrun", "break_even": "break_even_sale_price", "deposits": "deposits_paid",
	"arv": "after_repair_value", "low": "low_value", "cash_to_close_to_bring": "cash_to_close", "out": "money_out", "in": "money_in",
	"so_far": "owner_cumulative", "budget_with_contingency": "budget",
}

// AtOffer are the words that a bid's page says of the maximum offer, not of the
// asking price.
var AtOffer = []string{
	"sold_under_value", "selling", "holding", "closing_and_charges", "beyond_the_budget", "profit_at_that_price",
}
