package caution

// workRows are licensed trades, permits and alarms.
func workRows() []row {
	return []row{
		{
			id:      "licensed-trades",
			applies: has(licensedKinds...),
			text: "Work planned here is commonly reserved for licensed trades: {licensed}. " +
				"Ask for license numbers and expiry dates before pricing own labor; check locally and ask the licensed trade.",
			cites: []string{"CAU-3"},
		},
		{
			id:      "own-work-for-sale",
			applies: ownLabor,
			text: "Some states let an owner work without a contractor's license only if the house is not offered for sale (California is one), " +
				"so own labor may need a license. Check locally.",
			cites: []string{"CAU-5"},
		},
		{
			id:      "permit-missing",
			applies: all(permitJob, func(h House) bool { return !h.HasPermitLine }),
			text: "The plan has no permit line, but some of its work may need permits: {permits}. " +
				"Add the fees and the days for inspections; check locally.",
			cites: []string{"CAU-1"},
		},
		{
			id:      "permit-inspections",
			applies: all(permitJob, func(h House) bool { return h.HasPermitLine }),
			text: "Some of the work may need permits: {permits}. " +
				"Allow days for permits and inspections, and check locally that the permit line covers them all.",
			cites: []string{"CAU-1"},
		},
		{
			id:      "trades-unknown",
			applies: tradesUnknown,
			text: "The plan names no trades: structural, electrical, plumbing, gas and HVAC work may need permits, " +
				"and much of it is commonly reserved for licensed trades. Check locally.",
			cites: []string{"CAU-1", "CAU-3"},
		},
		{
			id:      "alarms",
			applies: alarmJob,
			text: "A permit job may require smoke alarms as in a new house (each bedroom, outside sleeping areas, each level), " +
				"and CO alarms with a fuel-fired appliance or attached garage. Check locally.",
			cites: []string{"CAU-2"},
		},
	}
}
