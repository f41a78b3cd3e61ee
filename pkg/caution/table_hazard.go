package caution

// hazardRows are lead and asbestos.
func hazardRows() []row {
	return []row{
		{
			id:      "lead-renovation",
			title:   "lead paint may be present; a certified firm may be needed",
			applies: leadYear,
			text: "{house}: lead paint may be present. Renovating to resell for profit counts as renovation for compensation " +
				"under the federal lead rule, so a certified firm may be needed; check locally.",
			cites: []string{"LEAD-1", "LEAD-3", "LEAD-4"},
		},
		{
			id:      "lead-own-labor",
			title:   "own work where lead paint may be: certification may be needed",
			applies: all(leadYear, ownLabor),
			text: "Own labor is planned where lead paint may be present: you may need certification as a firm and a certified renovator " +
				"(8-hour course), or an outside certified firm for all of it. Ask a certified lead firm.",
			cites: []string{"LEAD-3", "LEAD-4"},
		},
		{
			id:      "lead-minor-repair",
			title:   "windows or demolition are no minor repair under the lead rule",
			applies: all(leadYear, func(h House) bool { return len(minor(h)) > 0 }),
			text: "The plan has {minor} work: window replacement and demolition of painted surfaces are not minor repair under the lead rule, " +
				"whatever their size (other work: 6 sq ft a room, 20 outside). Check locally.",
			cites: []string{"LEAD-2"},
		},
		{
			id:      "asbestos-presumed",
			title:   "have old floors, mastic, ceilings, insulation tested for asbestos",
			applies: asbestosPresumed,
			text: "{house}: asbestos is presumed in old flooring, mastic, textured ceilings and pipe or duct insulation. " +
				"Have them tested before they are disturbed, roofing and siding too; ask an accredited inspector.",
			cites: []string{"ASB-1", "ASB-2", "ASB-4", "ASB-7", "ASB-8"},
		},
		{
			id:      "asbestos-flooring",
			title:   "old resilient floors: do not sand or rip up before a test",
			applies: all(asbestosPresumed, has(flooring, demolition)),
			text: "Sanding old resilient floors or ripping up sheet flooring is a prohibited practice where asbestos is presumed. " +
				"Price it as tested, covered or abated first; ask a licensed abatement contractor.",
			cites: []string{"ASB-2", "ASB-8"},
		},
		{
			id:      "asbestos-not-presumed",
			title:   "asbestos is not presumed, and not ruled out; test before tearing out",
			applies: all(not(asbestosPresumed), reachesAsbestos),
			text: "{house}: asbestos is not presumed from the year, but later materials may hold it too. " +
				"Test undocumented flooring, mastic, textures and pipe or duct insulation before disturbing them; check locally.",
			cites: []string{"ASB-3"},
		},
		{
			id:      "asbestos-notice",
			title:   "the federal asbestos notice may apply",
			applies: func(h House) bool { return h.Units > noticeUnits },
			text: "With five or more units the federal asbestos notice may apply, from 260 ft on pipes, 160 sq ft on other parts or 35 cu ft of it. " +
				"Check locally with the state or air district.",
			cites: []string{"ASB-5", "ASB-6"},
		},
		{
			id:    "asbestos-notice-small",
			title: "asbestos: state and air district rules may be stricter",
			applies: all(asbestosPresumed, reachesAsbestos, func(h House) bool {
				return h.Units <= noticeUnits
			}),
			text: "With up to four units alone on a site, the federal asbestos notice normally does not apply; worker rules still do, " +
				"and the state or air district may be stricter. Check locally.",
			cites: []string{"ASB-6"},
		},
	}
}
