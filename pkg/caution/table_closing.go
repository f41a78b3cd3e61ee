package caution

// closingRows are the sale papers, tax and the list of things to ask about.
func closingRows() []row {
	return []row{
		{
			id:      "lead-disclosure",
			title:   "lead must be disclosed at resale",
			applies: leadYear,
			text: "At resale you may have to disclose known lead paint, hand over records and the pamphlet and give the buyer 10 days to inspect, " +
				"even if you got nothing at a foreclosure. Check locally.",
			cites: []string{"LEAD-1", "LEAD-5"},
		},
		{
			id:      "tax",
			title:   "profit is usually ordinary income; self-employment tax may apply",
			applies: gainPossible,
			text: "Profit on a house bought to resell is usually ordinary income, and self-employment tax may apply; " +
				"capital-gain rates and the exclusion for a main home usually do not. Ask a tax adviser.",
			cites: []string{"TAX-1", "TAX-2", "TAX-4"},
		},
		{
			id:      "due-diligence",
			title:   "permits, liens, sewer, septic, flood zone, wiring: ask before closing",
			applies: always,
			text: "Ask about open permits, code cases, vacancy registration, sewer, well, septic, flood zone, HOA, occupants, liens, " +
				"knob-and-tube or aluminum wiring, polybutylene pipe and unpermitted additions; check locally.",
			cites: []string{"CAU-7"},
		},
	}
}
