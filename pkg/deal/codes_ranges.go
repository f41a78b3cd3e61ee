package deal

import "ledgerboard/pkg/diag"

// rangeCodes are what can be wrong with ranges and ties.
func rangeCodes() []Code {
	return append(mistakes([][2]string{
		{"unknown-input", "a range or tie of an input that there is not, or that could be several"},
		{"range-not-here", "a range of what cannot have one"},
		{"range-twice", "two ranges of one input, or a case given twice"},
		{"range-incomplete", "a range without its low or high figure, or with a single case"},
		{"range-two-ways", "a range with both cases, or a spread of none, and low and high"},
		{"range-order", "figures of a range that do not rise"},
		{"range-form", "a range of a charge in another form than the charge"},
		{"plus-sign", "a figure of a range or an axis as one that is added, or with two signs"},
		{"range-no-ends", "a bell curve whose low and high are its ends, or reach 0"},
		{"likely-unused", "a likely figure of a spread that has none"},
		{"bad-case-weight", "a weight of a case that is not a number above 0"},
		{"tie-incomplete", "a tie without its two inputs or its correlation"},
		{"tie-twice", "an input tied to itself, or two ties of the same two"},
		{"tie-no-range", "a tie to an input that does not vary"},
		{"bad-correlation", "a correlation that is not a number above -1 and below 1"},
		{"ties-contradict", "correlations that no figures can have"},
	}), codes(diag.Warning, [][2]string{
		{"range-idle", "a range that changes nothing: of the contingency, whose place the overrun takes, or of a lender's value that caps no loan"},
		{"bad-day-idle", "a change on a bad day that moves nothing"},
		{"late-twice", "the time on the market and a late sale, both with a range or on one bad day"},
		{"tie-idle", "a tie of an input that comes out as planned"},
		{"far-from-plan", "a figure of a range or a bad day that is far from the plan's"},
		{"plan-outside", "a plan outside of its own range"},
	})...)
}
