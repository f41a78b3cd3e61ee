package caution

// resaleRows are the rules on the buyer's loan that shrink the pool of buyers.
func resaleRows() []row {
	return []row{
		{
			id:      "fha-before-closing",
			title:   "the buyer's contract would come before you own the house",
			applies: contractBeforeClosing,
			text: "The buyer's contract is dated before the purchase. Only the owner of record may sell to a buyer " +
				"with an FHA-insured loan, and other lenders may object too; ask a lender.",
			cites: []string{"FHA-3"},
		},
		{
			id:      "fha-too-soon",
			title:   "too soon for a buyer with an FHA-insured loan",
			applies: fhaTooSoon,
			text: "Buyer's contract planned on day {days} after the purchase: a buyer with an FHA-insured loan may be shut out until {first}, " +
				"which shrinks the pool of buyers.",
			ask:   "Ask a lender.",
			cites: []string{"FHA-1"},
		},
		{
			id:      "fha-edge",
			title:   "within a day of an FHA waiting limit; count the days",
			applies: fhaNearFirst,
			text: "Buyer's contract planned on day {days} after the purchase, within a day of the 90/91 edge of the FHA resale rule: " +
				"whether such a buyer may be shut out is not decided here.",
			ask:   "Ask a lender how it counts.",
			cites: []string{"FHA-1"},
		},
		{
			id:      "fha-dates-unknown",
			title:   "FHA waiting days (90, 180) may shrink the pool of buyers",
			applies: fhaDatesUnknown,
			text: "A buyer with an FHA-insured loan may be shut out if the contract is signed before {first}, counted from the purchase; " +
				"from there to day 180 a second appraisal may apply at twice the price paid.",
			ask:   "Ask a lender.",
			cites: []string{"FHA-1", "FHA-2"},
		},
		{
			id:      "fha-second-appraisal",
			title:   "an FHA buyer may need a second appraisal",
			applies: fhaSecond(yes),
			text: "Buyer's contract on day {days} at twice the price paid or more: an FHA lender may need a second appraisal the buyer may not be " +
				"charged for, and use it if over 5% lower.",
			ask:   "Ask a lender.",
			cites: []string{"FHA-2"},
		},
		{
			id:      "fha-second-appraisal-edge",
			title:   "near the edge of the FHA second-appraisal rule; count the days",
			applies: fhaSecond(edge),
			text: "Buyer's contract on day {days}, within a day of an edge of the FHA rule on resales at twice the price (days 91 to 180): " +
				"whether a second appraisal may apply is not decided here.",
			ask:   "Ask a lender.",
			cites: []string{"FHA-1", "FHA-2"},
		},
		{
			id:      "fha-second-appraisal-price",
			title:   "near twice the price: an FHA second appraisal may apply",
			applies: fhaSecond(unclear),
			text: "Buyer's contract on day {days}, prices not both known: at twice the price paid or more an FHA lender may need a second appraisal " +
				"(days 91 to 180).",
			ask:   "Ask a lender.",
			cites: []string{"FHA-2"},
		},
		{
			id:      "hpml-second-appraisal",
			title:   "a buyer with a higher-priced loan may need two appraisals",
			applies: hpml(yes),
			text: "Buyer's contract on day {days} at more than {over} above the price paid: if the buyer's loan counts as higher-priced, " +
				"a rule asking for two appraisals may apply.",
			ask:   "Ask a lender.",
			cites: []string{"HPML-1", "HPML-2"},
		},
		{
			id:      "hpml-edge",
			title:   "near the edge of the two-appraisal rule; count the days",
			applies: hpml(edge),
			text: "Buyer's contract on day {days}, within a day of an edge of the rule of two appraisals for higher-priced loans " +
				"(over 10% to day 90, over 20% to day 180): it may apply and is not decided here.",
			ask:   "Ask a lender.",
			cites: []string{"HPML-1", "HPML-2", "FHA-1"},
		},
		{
			id:      "hpml-unknown",
			title:   "two appraisals may apply to a buyer with a higher-priced loan",
			applies: hpml(unclear),
			text: "Two appraisals may apply if the buyer's loan counts as higher-priced: over 10% above the price paid to day 90 after the purchase, " +
				"over 20% from day 91 to 180.",
			ask:   "Ask a lender.",
			cites: []string{"HPML-1", "HPML-2"},
		},
		{
			id:      "assignment",
			title:   "bought by assignment: ask who the owner of record is",
			applies: func(h House) bool { return h.Assignment },
			text: "Bought by assignment: only the owner of record may sell to a buyer with an FHA-insured loan, and its lender reviews 12 months of title. " +
				"Ask the lender and the title company before you list.",
			cites: []string{"FHA-3"},
		},
	}
}
