package deal

// houseRows are the deal's name, the house, its purchase and its values.
var houseRows = []Field{
	{Path: "deal", Kind: Text, Default: "the file's name", Example: "Juniper Lane", Meaning: "a name for the deal", Other: []string{"name"}},
	{Path: "notes", Kind: Text, Example: "seen on a rainy day", Meaning: "anything worth keeping", Other: []string{"note"}},
	{Path: "house", Kind: Group, Meaning: "what the cautions ask about, and what sold houses are compared with"},
	{Path: "house.address", Kind: Text, Example: "14 Juniper Lane", Meaning: "where it stands"},
	{Path: "house.year built", Kind: WholeNumber, Range: "at least 1600, at most 2100", Default: "unknown, so the careful reading is taken", Example: "1962", Meaning: "the year it was built"},
	{Path: "house.units", Kind: WholeNumber, Range: "at least 1, at most 500", Default: "unknown", Example: "1", Meaning: "how many dwellings it has"},
	{Path: "house.levels", Kind: WholeNumber, Line: "house_levels", Range: "at least 1, at most 10", Example: "2", want: "how many levels have rooms, e.g. 2; for sold houses to be compared by one and a half, add   storeys: 1.5"},
	{Path: "house.utilities", Kind: YesNo, Default: "on", Example: "on", Meaning: "whether water, power and gas were on at the visit"},

	{Path: "purchase", Kind: Group, Meaning: "what buying takes", Required: true},
	{Path: "purchase.price", Kind: Money, Line: "price", Range: "at least $1,000, at most $1,000 million", Example: "$212,500", Required: true, Other: []string{"purchase price"}},
	{Path: "purchase.date", Kind: Date, Default: "unknown; cautions with dates stay general", Example: "2026-03-02", Meaning: "the day of the purchase closing", Other: []string{"closing date"}},
	{Path: "purchase.seller credit", Kind: Money, Line: "seller_credit", Example: "$2,500"},
	{Path: "purchase.assignment fee", Kind: Money, Line: "assignment_fee", Example: "$5,000"},
	{Path: "purchase.auction premium", Kind: Group, Short: "share", Example: "5%", Meaning: "what the auction house takes on top of the price"},
	{Path: "purchase.auction premium.share", Kind: Percent, Line: "premium_share", Range: "at least 0%, at most 50%", Example: "5%", want: "a percentage, e.g. 5%; for dollars alone there is   {at least: $5k}"},
	{Path: "purchase.auction premium.at least", Kind: Money, Line: "premium_least", Example: "$2,500"},
	{Path: "purchase.earnest deposit", Kind: Group, Short: "amount", Example: "$5,000", Meaning: "the part of the price paid when the offer is accepted"},
	{Path: "purchase.earnest deposit.amount", Kind: Money, Line: "earnest_deposit", Example: "$5,000"},
	{Path: "purchase.earnest deposit.refundable until", Kind: Date, Default: "not known", Example: "2026-02-12", Meaning: "the last day on which it comes back"},
	{Path: "purchase.paid before closing", Kind: Fees, Line: "before_fee", Example: "{inspection: $525}", Meaning: "inspections, appraisal and other charges paid before the closing"},
	{Path: "purchase.closing", Kind: Fees, Line: "purchase_fee", Example: "{title and escrow: $1,850}", Meaning: "the charges of the purchase closing, without the loan's"},
	{Path: "purchase.deposits", Kind: Deposits, Line: "deposit", Example: "{utility deposit: $300}", Meaning: "money paid at the purchase that comes back at the sale"},
	{Path: "purchase.prorations", Kind: Prorations, Line: "deposit", Example: "{county taxes: $365.04 credit}", Meaning: "bills shared with the seller by days; a credit is received"},

	{Path: "value", Kind: Group, Meaning: "what the house is and will be worth", Default: "the after-repair value by comps"},
	{Path: "value.after-repair value", Kind: Money, Line: "after_repair_value", Range: "at least $1,000, at most $1,000 million", Example: "$359k", Default: "before work and what the options add, or by comps", Other: []string{"arv"}},
	{Path: "value.before work", Kind: Money, Line: "value_before_work", Range: "at least $1,000, at most $1,000 million", Default: "by comps, less what the options add; else the after-repair value counts", Example: "$214k"},
	{Path: "value.low", Kind: Money, Line: "low_value", Range: "at least $1,000, at most $1,000 million", Default: "with comparables their low end, with what options add, and lower by the share that a stated after-repair value is under theirs; else the after-repair value", Example: "$335k", Other: []string{"low value"}},
	{Path: "value.lender's value", Kind: Money, Line: "lender_value", Range: "at least $1,000, at most $1,000 million", Default: "the after-repair value", Example: "$350k", Other: []string{"lender value", "lenders value"}},
	{Path: "value.as-is value", Kind: Money, Line: "as_is_value", Range: "at least $1,000, at most $1,000 million", Default: "the price with assignment fee and auction premium", Example: "$205k"},
	{Path: "value.expected discount", Kind: Percent, Line: "expected_discount", Range: "at least 0%, less than 100%", Doubt: "at least 0.1%, at most 8%", DoubtCode: "discount-high", Default: "none is assumed", Example: "2%"},
}

// timeRows are the phases of the deal.
var timeRows = []Field{
	{Path: "time", Kind: Group, Example: "{renovation: 4 months, marketing: 5 weeks, escrow: 1 month}", Meaning: "how long each phase takes", Required: true},
	{Path: "time.lead-in", Kind: Duration, Line: "lead_in", Doubt: "at most 6 months", DoubtCode: "time-long", Default: "none is assumed", Example: "2 weeks"},
	{Path: "time.renovation", Kind: Duration, Line: "renovation", Doubt: "at most 24 months", DoubtCode: "time-long", Example: "3.75 months"},
	{Path: "time.marketing", Kind: Duration, Line: "marketing", Doubt: "at least 1 week, at most 9 months", DoubtCode: "time-long", Example: "5 weeks"},
	{Path: "time.escrow", Kind: Duration, Line: "escrow", Doubt: "at least 1 week, at most 4 months", DoubtCode: "time-long", Example: "1 month"},
	{Path: "time.standstill", Kind: Duration, Line: "standstill", Example: "0"},
}
