package deal

// badDayRows are the bad days of a deal.
var badDayRows = []Field{
	{Path: "bad days", Kind: BadDays, Example: "{soft market: {sale price: -5%, late sale: +2 months}}", Default: "only those that every deal may have",
		Meaning: "what may go wrong together, by names of your own: inputs by the names that --set takes, or overrun, extra work, late sale and sale price, each with the figure it then has or, with a sign, what is added to the plan; and, if you like, what helps, as remedy"},
}
