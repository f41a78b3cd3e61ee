package deal

// loanRows are the loans and the partner.
func loanRows() []Field {
	return []Field{
		{Path: "loans", Kind: List, Set: "loan", Default: "bought with cash", Example: "[{price share: 85%, rate: 11.25%}]", Meaning: "the loans, in the order in which the lenders stand", Other: []string{"loan"}},
		{Path: "loans[].name", Kind: Text, Default: "loan", Example: "first loan", Meaning: "what the loan is called"},
		{Path: "loans[].price share", Kind: Percent, Line: "price_share", Example: "85%"},
		{Path: "loans[].fixed amount", Kind: Money, Line: "fixed_amount", Example: "$180k"},
		{Path: "loans[].counts premium", Kind: YesNo, Line: "finances_premium", Default: "no", Example: "yes"},
		{Path: "loans[].of remainder", Kind: YesNo, Line: "of_remainder", Default: "no", Example: "yes"},
		{Path: "loans[].renovation share", Kind: Percent, Line: "renovation_share", Example: "90%"},
		{Path: "loans[].budget with contingency", Kind: YesNo, Line: "with_contingency", Default: "yes is assumed", Example: "yes"},
		{Path: "loans[].own work at trade price", Kind: YesNo, Line: "at_trade_price", Default: "no is assumed", Example: "no"},
		{Path: "loans[].cap on after-repair value", Kind: Percent, Line: "value_cap", Range: "more than 0%, at most 100%", Default: "no cap", Example: "70%"},
		{Path: "loans[].cap on cost", Kind: Percent, Line: "cost_cap", Range: "more than 0%, at most 100%", Default: "no cap", Example: "85%"},
		{Path: "loans[].rate", Kind: Percent, Line: "rate", Range: "at least 0%, at most 100%", Doubt: "at least 2%, at most 25%", DoubtCode: "rate-unusual", Example: "11.25%", Other: []string{"interest rate", "interest"}},
		{Path: "loans[].points", Kind: Percent, Line: "points_share", Range: "at least 0%, at most 20%", Doubt: "at most 5%", DoubtCode: "points-high", Example: "2 points"},
		{Path: "loans[].fees", Kind: Fees, Line: "loan_fee", Example: "{underwriting: $1,495}", Meaning: "the lender's other charges at the closing"},
		{Path: "loans[].interest on", Kind: Choice, Line: "interest_on", Default: "balance is assumed", Example: "balance", Choices: []string{"balance", "commitment"}},
		{Path: "loans[].interest paid", Kind: Choice, Line: "interest_paid", Default: "monthly", Example: "monthly", Choices: []string{"monthly", "reserve", "at payoff", "added monthly"}},
		{Path: "loans[].reserve", Kind: Money, Line: "reserve_wanted", Example: "$4,000"},
		{Path: "loans[].day count", Kind: Choice, Line: "actual_360", Default: "30/360", Example: "actual/360", Choices: []string{"30/360", "actual/360"}},
		{Path: "loans[].least interest", Kind: Duration, Line: "least_interest_months", Example: "3 months"},
		{Path: "loans[].term", Kind: Duration, Line: "term", Range: "more than 0, at most 40 years", Default: "no end", Example: "12 months"},
		{Path: "loans[].extension", Kind: Group, Default: "none agreed", Example: "{each: 3 months, fee: 0.5%}", Meaning: "how the term is lengthened"},
		{Path: "loans[].extension.each", Kind: Duration, Line: "extension_months", Range: "at least 1 week, at most 5 years", Example: "3 months"},
		{Path: "loans[].extension.fee", Kind: ShareOrMoney, Line: "extension_share extension_fixed", Range: "at least 0%, at most 25%", Example: "0.5%", Meaning: "the fee of one extension: a share of the loan, or dollars"},
		{Path: "loans[].exit fee", Kind: ShareOrMoney, Line: "exit_share exit_fixed exit_on", Range: "at least 0%, at most 25%", Example: "1% of commitment", Meaning: "the fee for paying the loan off: a share of the balance or of the commitment, or dollars"},
		{Path: "loans[].amortising", Kind: WholeMonths, Line: "amortising_months", Range: "at least 1 month, at most 50 years", Default: "interest only", Example: "30 years"},
		{Path: "loans[].draws", Kind: Group, Meaning: "how renovation money comes out of the loan"},
		{Path: "loans[].draws.lag", Kind: WholeMonths, Line: "lag", Range: "at least 0, at most 12 months", Default: "1 month is assumed", Example: "1 month"},
		{Path: "loans[].draws.retainage", Kind: Percent, Line: "retainage_share", Doubt: "at most 10%", DoubtCode: "retainage-high", Default: "none is assumed", Example: "10%"},
		{Path: "loans[].draws.fee", Kind: Money, Line: "draw_fee", Example: "$175"},
		{Path: "loans[].draws.at least", Kind: Money, Line: "least_draw", Example: "$5,000"},
		{Path: "loans[].draws.owner first", Kind: YesNo, Line: "owner_first", Default: "no", Example: "yes"},

		{Path: "partner", Kind: Group, Default: "no partner", Meaning: "someone who puts money in for a part of the profit"},
		{Path: "partner.share", Kind: Percent, Line: "partner_share", Range: "more than 0%, less than 100%", Example: "40%"},
		{Path: "partner.split", Kind: Percent, Line: "partner_split", Default: "the partner's share is assumed", Example: "50%"},
		{Path: "partner.preferred return", Kind: Percent, Line: "preferred_rate", Doubt: "at most 20%", DoubtCode: "preferred-high", Example: "8%"},
	}
}

// resultRows are holding, selling and what the owner wants to know.
func resultRows() []Field {
	return []Field{
		{Path: "holding", Kind: Fees, Line: "holding_fee", Example: "{property tax: $4,120/year}", Meaning: "taxes, insurance, utilities and the like while the house is owned"},
		{Path: "selling", Kind: Fees, Line: "selling_fee", Example: "{listing agent: 2.5%}", Meaning: "commissions, closing, transfer tax and other charges of the sale"},
		{Path: "tax withheld at sale", Kind: Money, Line: "tax_withheld", Example: "$0"},

		{Path: "targets", Kind: Group, Default: "profit of at least $0", Meaning: "what the deal must bring"},
		{Path: "targets.profit", Kind: Money, Line: "target_profit", Example: "$30,000"},
		{Path: "targets.margin", Kind: Percent, Line: "target_margin", Range: "at least 0%, less than 100%", Example: "10%"},
		{Path: "targets.roi", Kind: Percent, Line: "target_roi", Range: "at least 0%, at most 1,000%", Example: "25%", Other: []string{"return on cash"}},
		{Path: "cash", Kind: Group, Meaning: "the owner's own money"},
		{Path: "cash.available", Kind: Money, Line: "cash_available", Default: "unknown; the verdict says so", Example: "$95,000"},
		{Path: "cash.keep back", Kind: Money, Line: "cash_reserve", Example: "$10,000"},
		{Path: "tax", Kind: Group, Default: "30% of a profit is set aside", Meaning: "what to set aside for income tax"},
		{Path: "tax.set aside", Kind: Percent, Line: "tax_share", Range: "at least 0%, less than 100%", Default: "30% is assumed", Example: "30%"},
		{Path: "tax.income rate", Kind: Percent, Line: "income_rate", Range: "at least 0%, less than 100%", Example: "22%"},
		{Path: "tax.filing", Kind: Choice, Default: "single", Example: "single", Choices: []string{"single", "joint", "separate"}, Meaning: "how the owner files, for the additional Medicare tax"},
		{Path: "tax.other wages", Kind: Money, Line: "other_wages", Example: "$40k"},
		{Path: "rule of thumb", Kind: Percent, Line: "rule_share", Range: "more than 0%, at most 100%", Doubt: "at least 50%, at most 90%", DoubtCode: "rule-unusual", Default: "70%", Example: "70%"},
		{Path: "walk away", Kind: Percent, Line: "walk_away_share", Default: "15%", Example: "15%"},
	}
}
