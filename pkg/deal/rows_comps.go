package deal

// subjectRows are what the house will be when it is sold, by which sold houses are
// compared with it.
var subjectRows = []Field{
	{Path: "house.living area", Kind: Record, Line: "subject_area", Example: "1,480 sq ft", Default: "not compared", Meaning: "finished living area above ground when the work is done"},
	{Path: "house.lot", Kind: Record, Line: "subject_lot", Example: "0.16 acres", Default: "not compared", Meaning: "how large the lot is"},
	{Path: "house.bedrooms", Kind: Record, Line: "subject_bedrooms", Example: "3", Default: "not compared", Meaning: "bedrooms when the work is done"},
	{Path: "house.baths", Kind: Record, Line: "subject_baths", Example: "1.5", Default: "not compared", Meaning: "baths when the work is done; 1.5 is a full one and a half one, quarters count as they stand"},
	{Path: "house.garage", Kind: Record, Line: "subject_garage", Example: "1 car", Default: "not compared", Meaning: "none, attached or another kind, or how many cars it is for"},
	{Path: "house.condition", Kind: Record, Line: "subject_condition", Example: "good", Default: "not compared", Meaning: "poor, fair, average, good or excellent, or 1 (poor) to 5 (excellent), when the work is done"},
	{Path: "house.type", Kind: Record, Example: "single family", Default: "not compared", Meaning: "the type of house, in the words of the list of sales"},
	{Path: "house.latitude", Kind: Record, Example: "41.6639", Default: "not compared", Meaning: "where it stands, in degrees; with its longitude, for lists of sales that say where houses stand"},
	{Path: "house.longitude", Kind: Record, Example: "-83.5552", Default: "not compared", Meaning: "degrees, west below zero"},
	{Path: "house.x", Kind: Record, Example: "484668", Default: "not compared", Meaning: "where it stands, in metres east on the plane of the list of sales"},
	{Path: "house.y", Kind: Record, Example: "195270", Default: "not compared", Meaning: "and in metres north"},
	{Path: "house.has", Kind: Words, Example: "[pool]", Meaning: "which of the own lines under comps it has"},
}

// compRows are the sold houses that the value is drawn from.
var compRows = []Field{
	{Path: "comps", Kind: Group, Meaning: "sold houses, from which the after-repair value is drawn where none is stated; an estimate and no appraisal"},
	{Path: "comps.sold", Kind: Named, Of: "<comp>", Example: "{12 Elm St: {sold: 2026-01-14, price: $341k, living area: 1,420 sq ft}}", Meaning: "sold houses, by address"},
	{Path: "comps.table", Kind: Pasted, Example: "|", Meaning: "the same as a table pasted from a record: the first line names the columns"},
	{Path: "comps.file", Kind: Text, Example: "sold.csv", Meaning: "a file with such a table, from the folder of the deal file; a county's whole list will do, and the sales most like the house are taken"},
	{Path: "comps.columns", Kind: Headers, Example: "{price: AMT, sold: SALEDT}", Default: "found by their names", Meaning: "which column of the table or file holds what"},
	{Path: "comps.day", Kind: Date, Default: "the day of the purchase, else the day behind the last sale", Example: "2026-03-02", Meaning: "the day of the value; later sales are not used"},
	{Path: "comps.take", Kind: WholeNumber, Range: "at least 1, at most 60", Default: "all that are written out or pasted; 16 of a file", Example: "8", Meaning: "how many sales are used"},
	{Path: "comps.strike", Kind: Words, Example: "[12 Elm St]", Meaning: "sales that are not used, by address, or by the line of the table: line 7, or line 7 of county.csv where several have one"},
	{Path: "comps.add", Kind: Words, Example: "[9 Birch Ct]", Meaning: "sales from before the day that are used whatever else speaks against them, by address or line"},
	{Path: "comps.own lines", Kind: Extras, Example: "{pool: $15,000, busy street: -$9,000}", Meaning: "what other things are worth; a house that has one names it under has"},
	{Path: "comps.condition by option", Kind: Conditions, Example: "{cosmetic: average, full gut: good, as it is: fair}", Default: "the condition of the house, whatever is done", Meaning: "the condition of the house when it is sold, by the option that is taken for its rooms; where rooms take several, the worst of them. A room that stays counts as it is, and one of an option that is not named by the condition of the house"},
	{Path: "comps.amounts", Kind: Group, Meaning: "what each thing is worth; what is not given comes from the sales"},
	{Path: "comps.amounts.market a month", Kind: Percent, Line: "market_rate", Range: "at least -10%, at most 10%", Default: "from the sales", Example: "0.4%"},
	{Path: "comps.amounts.square foot", Kind: Money, Line: "size_rate", Range: "at least $0, at most $2,000", Default: "from the sales", Example: "$95"},
	{Path: "comps.amounts.square foot of lot", Kind: Money, Line: "lot_rate", Range: "at least $0, at most $1,000", Default: "from the sales", Example: "$1.50"},
	{Path: "comps.amounts.bedroom", Kind: Money, Line: "bedroom_rate", Range: "at least $0, at most $1m", Default: "from the sales", Example: "$4,000"},
	{Path: "comps.amounts.bath", Kind: Money, Line: "bath_rate", Range: "at least $0, at most $1m", Default: "from the sales", Example: "$9,000"},
	{Path: "comps.amounts.year newer", Kind: Money, Line: "newer_rate", Range: "at least $0, at most $100,000", Default: "from the sales", Example: "$350"},
	{Path: "comps.amounts.step of condition", Kind: Money, Line: "condition_rate", Range: "at least $0, at most $5m", Default: "from the sales", Example: "$14,000"},
	{Path: "comps.amounts.car of garage", Kind: Money, Line: "garage_rate", Range: "at least $0, at most $1m", Default: "from the sales", Example: "$7,500"},

	{Path: "<comp>.sold", Kind: Record, Example: "2026-01-14", Required: true, Meaning: "the day of its sale", Other: []string{"sale date", "date", "sold on"}},
	{Path: "<comp>.price", Kind: Record, Line: "sold_price", Example: "$341k", Required: true, Meaning: "what it sold for", Other: []string{"sale price", "sold price", "sold for"}},
	{Path: "<comp>.concessions", Kind: Record, Line: "concessions", Example: "$4,000", Default: "none", Meaning: "what its seller paid for the buyer"},
	{Path: "<comp>.living area", Kind: Record, Line: "comp_area", Example: "1,420 sq ft", Default: "not adjusted; counts as half a step unlike", Meaning: "its finished living area above ground"},
	{Path: "<comp>.lot", Kind: Record, Line: "comp_lot", Example: "0.16 acres", Default: "not adjusted; counts as half a step unlike", Meaning: "how large its lot is"},
	{Path: "<comp>.bedrooms", Kind: Record, Line: "comp_bedrooms", Example: "3", Default: "not adjusted; counts as half a step unlike", Meaning: "its bedrooms"},
	{Path: "<comp>.baths", Kind: Record, Line: "comp_baths", Example: "1.5", Default: "not adjusted; counts as half a step unlike", Meaning: "its baths; 1.5 is a full one and a half one, quarters count as they stand"},
	{Path: "<comp>.garage", Kind: Record, Line: "comp_garage", Example: "1 car", Default: "not adjusted; counts as half a step unlike", Meaning: "none, attached or another kind, or how many cars it is for"},
	{Path: "<comp>.year built", Kind: Record, Line: "comp_built", Example: "1958", Default: "not adjusted; counts as half a step unlike", Meaning: "the year in which it was built"},
	{Path: "<comp>.condition", Kind: Record, Line: "comp_condition", Example: "good", Default: "not adjusted; counts as half a step unlike", Meaning: "its condition when it was sold: poor, fair, average, good or excellent, or 1 (poor) to 5 (excellent)"},
	{Path: "<comp>.type", Kind: Record, Example: "single family", Default: "not adjusted; counts as half a step unlike", Meaning: "its type"},
	{Path: "<comp>.storeys", Kind: Record, Example: "2", Default: "not adjusted; counts as half a step unlike", Meaning: "how many storeys it has", Other: []string{"stories"}},
	{Path: "<comp>.distance", Kind: Record, Example: "0.4 mi", Default: "as far off as the near ones are, where others say theirs", Meaning: "how far from the house it stands"},
	{Path: "<comp>.terms", Kind: Record, Example: "sheriff's deed", Default: "an open sale", Meaning: "how it was sold, where that was no open sale between strangers"},
	{Path: "<comp>.source", Kind: Record, Example: "county record", Meaning: "where this is from"},
	{Path: "<comp>.has", Kind: Words, Example: "[pool]", Meaning: "which of the own lines it had"},
}
