package caution

// workRows are licensed trades, permits and alarms.
func workRows() []row {
	return []row{
		{
			id:      "licensed-trades",
			title:   "some of the work is commonly reserved for licensed trades",
			applies: func(h House) bool { return len(licensed(h)) > 0 },
			text:    "Work planned here is commonly reserved for licensed trades: {licensed}; check locally and ask the licensed trade.",
			ask:     "Ask the trade for its license number and expiry date before pricing own labor.",
			cites:   []string{"CAU-3"},
		},
		{
			id:      "own-work-for-sale",
			title:   "own work on a house for sale may need a license in some states",
			applies: ownLabor,
			text: "Some states let an owner work without a contractor's license only if the house is not offered for sale (California is one), " +
				"so own labor may need a license. Check locally.",
			cites: []string{"CAU-5"},
		},
		{
			id:      "permit-missing",
			title:   "work that may need permits, and no permit line",
			applies: all(permitJob, func(h House) bool { return !h.HasPermitLine }),
			text: "The plan has no permit line, but some of its work may need permits: {permits}. " +
				"Add the fees and the days for inspections; check locally.",
			cites: []string{"CAU-1"},
		},
		{
			id:      "permit-inspections",
			title:   "allow days for permits and inspections",
			applies: all(permitJob, func(h House) bool { return h.HasPermitLine }),
			text: "Some of the work may need permits: {permits}. " +
				"Allow days for permits and inspections, and check locally that the permit line covers them all.",
			cites: []string{"CAU-1"},
		},
		{
			id:      "trades-unknown",
			title:   "ask which of the work needs permits and licensed trades",
			applies: tradesUnknown,
			text: "The plan names no trades: structural, electrical, plumbing, gas and HVAC work may need permits, " +
				"and much of it is commonly reserved for licensed trades. Check locally.",
			cites: []string{"CAU-1", "CAU-3"},
		},
		{
			id:      "alarms",
			title:   "a permit job may require smoke and CO alarms as in a new house",
			applies: alarmJob,
			text: "A permit job may require smoke alarms as in a new house (each bedroom, outside sleeping areas, each level), " +
				"and CO alarms with a fuel-fired appliance or attached garage. Check locally.",
			cites: []string{"CAU-2"},
		},
	}
}
