package caution

// moneyRows are insurance, contingency and the interest reserve.
func moneyRows() []row {
	return []row{
		{
			id:      "insurance-missing",
			title:   "no insurance line; a vacant house under work needs its own cover",
			applies: func(h House) bool { return !h.HasInsuranceLine && !h.HasVacantInsurance },
			text: "The plan has no insurance line. A house under work usually needs vacant-house or builder's-risk cover from the day of closing; " +
				"ask an insurer.",
			cites: []string{"ROT-7"},
		},
		{
			id:      "insurance-vacant",
			title:   "homeowner cover may lapse while the house is vacant",
			applies: all(vacantLong, func(h House) bool { return !h.HasVacantInsurance }),
			text: "Ordinary homeowner cover may drop vandalism once a house is vacant over 60 days in a row, with some insurers 30, " +
				"unless work is substantial and continuous. Ask an insurer about vacant or builder's-risk cover.",
			cites: []string{"CAU-6"},
		},
		{
			id:      "contingency-missing",
			title:   "no contingency",
			applies: noContingency,
			text: "No contingency is planned; {suggested} is customary for {age}. " +
				"Renovation loans ask for at least 10% from 30 years of age, 15% with utilities not operable; ask a contractor.",
			cites: []string{"ROT-8", "K203-1"},
		},
		{
			id:      "contingency-low",
			title:   "the contingency is under what is customary for the age",
			applies: lowContingency,
			text: "Contingency {share} is under the customary {suggested} for {age}. " +
				"Renovation loans ask for at least 10% from 30 years of age, 15% with utilities not operable; ask a contractor.",
			cites: []string{"ROT-8", "K203-1"},
		},
		{
			id:      "interest-reserve",
			title:   "an interest reserve can run out when the work is late",
			applies: func(h House) bool { return h.HasInterestReserve },
			text: "An interest reserve lets a loan pay its own interest and can hide trouble when work is late. " +
				"Find the month it runs out under a delay, and ask the lender what follows.",
			cites: []string{"LEND-5"},
		},
	}
}
