package caution

import "strings"

// cite is a publication a caution rests on.
type cite struct {
	id, name, section string
	// note says how it was obtained where that weakens it.
	note string
}

const noSource = "common practice, no source"

// cites are the publications by id.
func cites() []cite {
	return []cite{
		{"LEAD-1", "73 FR 21692 (EPA RRP final rule), TSCA s.401", "preamble; 40 CFR 745.103", ""},
		{"LEAD-2", "40 CFR 745.83", "definition of minor repair and maintenance activities", ""},
		{"LEAD-3", "EPA lead frequent question 23002-32412", "RRP applicability to house flippers", "read on a mirror"},
		{"LEAD-4", "40 CFR 745 subpart E; summaries", "745.84, .86, .89, .90", ""},
		{"LEAD-5", "24 CFR 35 subpart A; 40 CFR 745 subpart F", "35.80, 35.82; 745.100", ""},
		{"ASB-1", "OSHA interpretation letter 1999-05-19 on 29 CFR 1910.1001(j)(1); same presumption in 29 CFR 1926.1101", "(j)(1) / (k)(1)", ""},
		{"ASB-2", "29 CFR 1926.1101; OSHA letters; settlement summary", "(k)(1), (g)(8)(i)", "paragraph numbers from memory"},
		{"ASB-3", "OSHA interpretation letter to Good, Armstrong and Associates", "29 CFR 1926.1101(k)", ""},
		{"ASB-4", "OSHA training slides on 29 CFR 1926.1101", "(k)(5), (b)", ""},
		{"ASB-5", "40 CFR 61.145(a)(4), figures as carried into the Virginia Construction Code", "110.3 (VCC 2009)", "federal section not read in a copy"},
		{"ASB-6", "60 FR 38725 (EPA clarification of intent); 40 CFR 61.141", "definition of facility / installation", ""},
		{"ASB-7", "40 CFR 61 subpart M Appendix A", "1.2", ""},
		{"ASB-8", "trade habit", "", noSource},
		{"CAU-1", "International Residential Code 2021/2024", "R105.1, R105.2", ""},
		{"CAU-2", "International Residential Code 2009 (later editions similar); Santa Ana plan-check sheet (CRC)", "R314.3.1, R315.2", ""},
		{"CAU-3", "Texas licensing summaries", "", ""},
		{"CAU-5", "Bus. & Prof. Code 7044(a), as restated in SB 1111 (2026)", "(a)(1)-(2)", ""},
		{"CAU-6", "Insurance-law article on ISO forms; insurer help pages", "vacancy provisions", ""},
		{"CAU-7", "trade habit", "", noSource},
		{"ROT-7", "trade habit", "", noSource},
		{"ROT-8", "trade habit", "", noSource},
		{"K203-1", "HUD FHA knowledge base KA-04997, citing Handbook 4000.1 II.A.8.a.vi(E), vii(E)", "contingency reserve", ""},
		{"LEND-5", "FDIC Supervisory Insights, Summer 2008", "A primer on the use of interest reserves", ""},
		{"FHA-1", "HUD Handbook 4000.1 (Property Flipping standard), mirroring 24 CFR 203.37a(b)", "time restriction on transfers of title", ""},
		{"FHA-2", "HUD Handbook 4000.1 (Property Flipping standard)", "resales 91-180 days", ""},
		{"FHA-3", "HUD Handbook 4000.1; HUD WINK page; 2003 rule", "owner of record; required documentation", ""},
		{"HPML-1", "12 CFR 1026.35 (Regulation Z)", "(c)(4)(i)(A)-(B)", ""},
		{"HPML-2", "12 CFR 1026.35", "(a)(1), (c)(2)", ""},
		{"TAX-1", "IRS Publication 544; IRC 1221(a)(1)", "Noncapital assets", ""},
		{"TAX-2", "IRC 1401/1402; IRS and SSA figures as reported", "", ""},
		{"TAX-4", "IRS Publication 523 rule as summarised", "", ""},
	}
}

// String prints name, section and note.
func (c cite) String() string {
	s := c.name
	if c.section != "" {
		s += ", " + c.section
	}
	if c.note != "" {
		s += " (" + c.note + ")"
	}
	return s
}

// sourceOf joins the publications of a row, in the order of the table.
func sourceOf(ids []string) string {
	var out []string
	for _, c := range cites() {
		for _, id := range ids {
			if c.id == id {
				out = append(out, c.String())
			}
		}
	}
	return strings.Join(out, "; also ")
}
