package deal

// The words of a range.
const (
	OneInTen = "one in ten" // what low and high mean: one case in ten is lower, one is higher
	VeryEnds = "very ends"  // nothing is lower, nothing is higher

	PERT       = "PERT"
	Triangular = "triangular"
	Normal     = "normal"
	LogNormal  = "lognormal"
	Even       = "even"
	NoSpread   = "none" // it comes out as planned
)

// rangeRows are how far inputs may come out from the plan, and which go together.
var rangeRows = []Field{
	{Path: "ranges", Kind: Named, Of: "<range>", Example: "{overrun: {low: 0%, likely: 15%, high: 45%}}", Default: "those of common practice, which `odds` lists as assumed",
		Meaning: "how far inputs may come out from the plan, each by the names that --set takes, and overrun, late sale and sale price"},
	{Path: "<range>.low", Kind: OfInput, Example: "0%", Default: "needed, but for cases and a spread of none", Meaning: "the low figure, written as the input is"},
	{Path: "<range>.likely", Kind: OfInput, Example: "15%", Default: "what the plan has", Meaning: "the figure it will most likely have"},
	{Path: "<range>.high", Kind: OfInput, Example: "45%", Default: "needed, but for cases and a spread of none", Meaning: "the high figure"},
	{Path: "<range>.means", Kind: Choice, Choices: []string{OneInTen, VeryEnds}, Default: OneInTen, Example: OneInTen,
		Meaning: "what low and high mean: one case in ten is lower and one higher, or none is"},
	{Path: "<range>.spread", Kind: Choice, Choices: []string{PERT, Triangular, Normal, LogNormal, Even, NoSpread}, Default: PERT, Example: Triangular,
		Meaning: "how the cases spread between: PERT is smooth, with most near what is likely; triangular rises and falls straight; normal and lognormal have no likely figure of their own; even has all as likely; none: it comes out as planned, and no range of common practice is assumed"},
	{Path: "<range>.cases", Kind: Cases, Example: "{0%: 3, 20%: 1}", Meaning: "the only values it may have, each with its weight, instead of low and high"},
	{Path: "ties", Kind: Ties, Example: "[{between: [overrun, standstill], correlation: 0.5}]", Default: "overrun and standstill at 0.5, where both vary",
		Meaning: "inputs that come out high together, or one high where the other is low"},
	{Path: "ties[].between", Kind: Words, Example: "[overrun, standstill]", Meaning: "the two inputs"},
	{Path: "ties[].correlation", Kind: Correlation, Example: "0.5", Meaning: "their rank correlation: 0 if they have nothing to do with each other"},
}
