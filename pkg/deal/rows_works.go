package deal

// renovationRows are the works and how their money is spent.
var renovationRows = []Field{
	{Path: "renovation", Kind: Group, Example: "{contingency: 12%, lines: [{trade: roof, amount: $9,800}]}", Meaning: "what the work costs"},
	{Path: "renovation.contingency", Kind: Percent, Line: "contingency_share", Doubt: "at most 35%", DoubtCode: "contingency-high", Default: "10% is assumed", Example: "12%"},
	{Path: "renovation.spending", Kind: Spending, Line: "curve", Default: "straight is assumed", Example: "straight", Choices: []string{"straight", "front", "back", "s"},
		Meaning: "how the spending runs over the renovation: a word, or a list of the amount of each month"},
	{Path: "renovation.own labour rate", Kind: HourRate, Line: "own_labour_rate", Doubt: "at least $10/hour, at most $250/hour", DoubtCode: "rate-unusual", Example: "$45/hour"},
	{Path: "renovation.lines", Kind: List, Set: "cost", Example: "[{trade: roof, work: new shingles, amount: $9,800}]", Meaning: "the renovation, a line for each piece of work"},
	{Path: "renovation.lines[].trade", Kind: Text, Example: "tile", Meaning: "the trade that does it"},
	{Path: "renovation.lines[].work", Kind: Text, Example: "bath floor", Meaning: "what is done"},
	{Path: "renovation.lines[].materials", Kind: Money, Line: "materials", Example: "$640"},
	{Path: "renovation.lines[].labour", Kind: Money, Line: "labour", Example: "$900", want: "what is paid to trades, in dollars, e.g. $900; your own hours stand under   own hours: 40"},
	{Path: "renovation.lines[].amount", Kind: Money, Line: "lump", Example: "$9,800"},
	{Path: "renovation.lines[].own hours", Kind: Hours, Line: "own_hours", Example: "40", Other: []string{"my hours"}},
	{Path: "renovation.lines[].hired rate", Kind: HourRate, Line: "hired_rate", Doubt: "at least $10/hour, at most $250/hour", DoubtCode: "rate-unusual", Default: "the own labour rate", Example: "$55/hour"},
	{Path: "renovation.lines[].apart", Kind: YesNo, Default: "no", Example: "yes", Meaning: "whether it is other work than the rooms hold of its trade, or the permit or container of such; yes ends that doubt"},
	{Path: "renovation.general", Kind: Fees, Line: "general_fee", Example: "{permits: $1,200}", Meaning: "permits, cleaning, dumpster and other general lines"},
}

// chargeRows are the details of any charge and of its tables of rates.
var chargeRows = []Field{
	{Path: "<fee>.amount", Kind: Charge, Example: "0.55% of price", Meaning: "how much: dollars, a percentage, dollars per $500, or dollars a month, quarter or year", Other: []string{"rate"}},
	{Path: "<fee>.of", Kind: BaseLine, Line: "base", Default: "the price at the purchase, the sale price at the sale; of general lines the works cost, but of permits the works at trade price", Example: "sale price"},
	{Path: "<fee>.during", Only: "holding_fee general_fee", Kind: Choice, Line: "during", Default: "the whole hold; renovation for general lines", Example: "marketing", Choices: []string{"hold", "lead-in", "renovation", "marketing", "escrow"}},
	{Path: "<fee>.at least", Kind: Money, Line: "least", Example: "$1,500"},
	{Path: "<fee>.at most", Kind: Money, Line: "most", Range: "more than $0, at most $1,000 million", Default: "no limit", Example: "$2,500"},
	{Path: "<fee>.credit", Kind: YesNo, Line: "credit", Default: "no", Example: "yes"},
	{Path: "<fee>.brackets", Kind: Brackets, Example: "{up to $250,000: 0.5%, above: 0.75%}", Meaning: "rates, each on the part of the base inside its bracket"},
	{Path: "<fee>.slabs", Kind: Slabs, Example: "{up to $250,000: 0.4%, above: 0.75%}", Meaning: "rates, the whole base at the rate of the bracket it falls in"},
	{Path: "<fee>.tables", Kind: Tables, Example: "[{from: 2026-01-01, amount: 1.1%}]", Meaning: "tables of rates, chosen by the total or by the day"},
	{Path: "<fee>.paid ahead", Only: "holding_fee", Kind: Duration, Line: "paid_ahead", Range: "at least 1 month, at most 5 years", Doubt: "at most 24 months", DoubtCode: "paid-ahead-long", Example: "6 months"},
	{Path: "<fee>.premium paid ahead", Only: "holding_fee", Kind: Duration, Line: "paid_ahead", Range: "at least 1 month, at most 5 years", Doubt: "at most 24 months", DoubtCode: "paid-ahead-long", Example: "12 months",
		Meaning: "for how many months at a time an insurance premium is paid ahead; at the sale the unused part comes back"},
	{Path: "<fee>.insurer keeps at least", Only: "holding_fee", Kind: Percent, Line: "kept_least", Default: "25% is assumed", Example: "25%"},
	{Path: "<fee>.finance charge", Only: "loan_fee", Kind: YesNo, Line: "finance_charge", Default: "yes", Example: "no"},

	{Path: "<fee>.tables[].when", Kind: TotalRange, Line: "base_over base_up_to base_edge_in", Default: "any total", Example: "up to $350,000", Meaning: "the totals that the table is for"},
	{Path: "<fee>.tables[].from", Kind: DayInForce, Line: "from_day", Default: "always", Example: "2026-01-01", Meaning: "the first day on which its rates are in force"},
	{Path: "<fee>.tables[].until", Kind: DayInForce, Line: "until_day", Default: "for ever", Example: "2027-01-01", Meaning: "the day from which they no longer are"},
	{Path: "<fee>.tables[].amount", Kind: Charge, Example: "1.1%", Meaning: "one rate for the whole base", Other: []string{"rate"}},
	{Path: "<fee>.tables[].brackets", Kind: Brackets, Example: "{up to $250,000: 0.5%, above: 0.75%}", Meaning: "rates, each on the part of the base inside its bracket"},
	{Path: "<fee>.tables[].slabs", Kind: Slabs, Example: "{up to $250,000: 0.4%, above: 0.75%}", Meaning: "rates, the whole base at the rate of the bracket it falls in"},
}
