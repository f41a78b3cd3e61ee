package deal_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

var daySlips = []slip{
	ranged("bad-day-empty", "bad days: {soft market: {}}"),
	ranged("bad-day-empty", "bad days: {soft market: {late sale: +50%}}"),
	ranged("want-group", "bad days: {soft market: -5%}"),
	ranged("want-group", "bad days: {soft market: [sale price -5%]}"),
	ranged("bad-day-empty", "bad days: {soft market: {remedy: ask for less}}"),
	ranged("bad-day-sign", "bad days: {soft market: {sale price: 5%}}"),
	ranged("bad-day-sign", "bad days: {soft market: {sale price: --5%}}"),
	ranged("bad-day-sign", "bad days: {soft market: {late sale: +-2 months}}"),
	ranged("bad-day-sign", "bad days: {soft market: {sale price: +$-5k}}"),
	ranged("bad-day-sign", "bad days: {dear lender: {loans.1.cap on cost: +5%}}"),
	ranged("bad-day-not-here", "bad days: {soft market: {price: -5%}}"),
	ranged("bad-day-not-here", "bad days: {soft market: {loans.1.draws.lag: +1 month}}"),
	ranged("bad-day-not-here", "bad days: {dear lender: {exit fee: 2%}}"),
	ranged("bad-day-not-here", "bad days: {tired: {own pace: 3}}"),
	ranged("bad-percent", "bad days: {roof: {overrun: $8k}}"),
	ranged("bad-day-beyond", "bad days: {early: {marketing: -9 months}}"),
	ranged("bad-day-beyond", "bad days: {gone: {sale price: -99.9%}}"),
	ranged("bad-day-beyond", "bad days: {gone: {overrun: -200%}}"),
	ranged("bad-day-twice", "bad days: {soft: {sale price: -5%, arv: -5%}}"),
	ranged("bad-day-twice", "bad days: {soft: {expected discount: +3%, sale price: -5%}}"),
	ranged("unknown-input", "bad days: {soft: {sale prise: -5%}}"),
	ranged("want-value", "bad days: {soft: {sale price: [1]}}"),
	ranged("want-value", "bad days: {soft: {sale price: -5%, remedy: {call: bank}}}"),
	ranged("want-value", "bad days: {soft: {sale price: -5%, remedy: [{call: bank}]}}"),
	ranged("bad-money", "bad days: {soft: {sale price: lower}}"),
	ranged("bad-percent", "bad days: {soft: {sale price: -much%}}"),
	ranged("bad-duration", "bad days: {late: {late sale: +some}}"),
	ranged("want-group", "bad days: [soft]"),
	ranged("cost-two-ways", "bad days: {leak: {roof.materials: $5k}}"),
	ranged("price-two-ways", "bad days: {tight lender: {loans.1.fixed amount: $150k}}"),
	ranged("reserve-unused", "bad days: {tight lender: {loans.1.reserve: $2k}}"),
	ranged("credit-above-price", "bad days: {soft: {seller credit: +$300k}}"),
}

// A sign makes a change of the plan's figure: of a percentage in points, of all else in
// its unit or by a share. The plan of the starter: 15% over the bids.
func TestBadDays(t *testing.T) {
	d, found := deal.Read("a", []byte(ranged("", "bad days: {late permits and a soft market: {lead-in: +2 months, sale price: -5%, overrun: +10%, late sale: 3 weeks, remedy: wait}}").text()))
	require.Empty(t, found.Errors())
	require.Len(t, d.BadDays, 1)
	day := d.BadDays[0]
	require.Equal(t, "late permits and a soft market", day.Name)
	require.Equal(t, "wait", day.Remedy)
	for i, want := range []struct{ line, plan, value string }{{"lead_in", "", ""}, {"sale_price", "", ""}, {"overrun", "0.15", "0.25"}, {"late_sale", "0", ""}} {
		require.Equal(t, want.line, day.Changes[i].Line)
		if want.value != "" {
			require.Equal(t, want.value, day.Changes[i].Value.String())
		}
	}
	require.Equal(t, "334229", day.Changes[1].Value.String(), "359,000 less 2% expected discount, less 5%")
}

// What is added to a charge without a unit keeps its sign in the hint, and a share is a share.
func TestAChangeOfAChargeKeepsItsSign(t *testing.T) {
	for change, want := range map[string]string{"agents: +1": "+1%   , which adds that to the plan's", "agents: -0.01": "-0.01%   , which takes that off the plan's   , or   -1%   ,", "agents: -1": "-1%   , which takes that off the plan's", "stamp: +40": "+$40   , which adds that",
		"agents: +0.5% of price": "write the share alone, +0.5%", "staging: +$30/week": "by the month: +$130.36/month", "staging: -$300/month during escrow": "write the amount alone, -$300/month"} {
		text := minimal + "selling: {agents: 5%, stamp: $400}\nholding: {staging: $200/month during marketing}\nbad days: {dear: {" + change + "}}\n"
		_, found := deal.Read("a", []byte(text))
		require.Contains(t, found.Errors()[0].Hint, want)
	}
}

// A few dollars without their sign could be a share or thousands.
func TestAFewBareDollarsAreDoubted(t *testing.T) {
	for day, want := range map[string][2]string{
		"sale price: -7": {"-7%   or   -$7k   ? write   -$7   if", "-$7"},
		"extra work: 8":  {"did you mean   $8k   ? write   $8   if", "$8"},
		"extra work: $8": {"", "$8"}, "extra work: 8k": {"", "$8k"}, "sale price: -5%": {"", "-5%"}, "yard: +20/month": {"", "+$20/month"},
	} {
		d, found := deal.Read("a", []byte(ranged("", "bad days: {soft: {"+day+"}}").text()))
		require.Empty(t, found.Errors(), day)
		require.Equal(t, want[1], d.BadDays[0].Changes[0].Said(), day)
		doubts := slices.DeleteFunc(found, func(x diag.Diag) bool { return x.Code != "amount-small" })
		if want[0] == "" {
			require.Empty(t, doubts, day)
			continue
		}
		require.Len(t, doubts, 1, day)
		require.Contains(t, doubts[0].Hint, want[0])
	}
}

// A range of the contingency beside one of the overrun is to go, not to be written as that.
func TestAnIdleRangeBesideTheOverrun(t *testing.T) {
	for beside, want := range map[string]string{"": "write   overrun: {low: 0%, high: 40%}   instead", ", overrun: {low: 0%, high: 30%}": "leave it out"} {
		_, found := deal.Read("a", []byte(ranged("", "ranges: {contingency: {low: 5%, high: 60%}"+beside+"}").text()))
		i := slices.IndexFunc(found, func(x diag.Diag) bool { return x.Code == "range-idle" })
		require.Contains(t, found[i].Hint, want)
	}
}

func TestSetTakesBadDaysWhole(t *testing.T) {
	const day = "bad days: {soft: {late sale: +2 months}}"
	_, found := deal.Read("a", []byte(ranged("", day).text()), deal.Set{Path: "bad days.soft.late sale", Value: "+3 months"})
	require.Contains(t, found.Errors()[0].Message, "what is on a bad day is changed in the file")
	require.Contains(t, found.Errors()[0].Hint, "--set 'bad days={…}'")
	d, found := deal.Read("a", []byte(ranged("", day).text()), deal.Set{Path: "bad days", Value: "{soft: {late sale: +3 months}}"})
	require.Empty(t, found.Errors())
	require.Equal(t, "+3 months", d.BadDays[0].Changes[0].Text)
}

func TestARemedyMayBeAList(t *testing.T) {
	d, found := deal.Read("a", []byte(ranged("", "bad days: {soft: {sale price: -5%, remedy: [call the bank, sell the car]}}").text()))
	require.Empty(t, found.Errors())
	require.Equal(t, "call the bank; sell the car", d.BadDays[0].Remedy)
}

// A charge comes to another amount in its own words, also with its phase.
func TestABadDayKeepsThePhase(t *testing.T) {
	for said, want := range map[string]string{"$120/month during marketing": "120", "$120/month": "120", "+$20/month during marketing": "108", "-25%": "66"} {
		d, found := deal.Read("a", []byte(ranged("", "bad days: {weeds: {yard: "+said+"}}").text()))
		require.Empty(t, found.Errors(), said)
		require.Equal(t, want, d.BadDays[0].Changes[0].Value.String(), said)
	}
	_, found := deal.Read("a", []byte(ranged("", "bad days: {weeds: {yard: $120/month during hold}}").text()))
	require.Contains(t, found.Errors()[0].Hint, "the phase stays as in the file: write the amount alone, $120/month")
}

// Two inputs of which one leads to the other are no change of the one twice.
func TestABadDayNamesWhatItChangesTwice(t *testing.T) {
	for day, want := range map[string]string{
		"{sale price: -5%, expected discount: +2%}":      `"soft" changes what the house sells for twice, by sale price and by value.expected discount`,
		"{arv: -5%, sale price: -5%}":                    `"soft" changes what the house sells for twice, by value.after-repair value and by sale price`,
		"{marketing: 1 month, time.marketing: 2 months}": `"soft" changes time.marketing twice`,
	} {
		_, found := deal.Read("a", []byte(ranged("", "bad days: {soft: "+day+"}").text()))
		require.Equal(t, want, found.Errors()[0].Message)
	}
}

// What is added to a share may be more than all of it: 15% over the bids and 150% more.
func TestABadDayAddsMoreThanAll(t *testing.T) {
	d, found := deal.Read("a", []byte(ranged("", "bad days: {ruin: {overrun: +150%}}").text()))
	require.Empty(t, found.Errors())
	require.Equal(t, "1.65", d.BadDays[0].Changes[0].Value.String())
	_, found = deal.Read("a", []byte(ranged("", "bad days: {ruin: {overrun: -200%}}").text()))
	require.Contains(t, found.Errors()[0].Message, `"-200%" brings overrun from 15% to -185%`, "with its sign")
}

func TestVary(t *testing.T) {
	d, _ := deal.Read("a", []byte(ranged("", "").text()))
	for text, want := range map[string][]string{
		"overrun=0%..45%/3":                                             {"0", "0.15", "0.3", "0.45"},
		"price = $200,000,$210,000, $220k":                              {"200000", "210000", "220000"},
		"late sale=0..2 months/2":                                       {"0", "1", "2"},
		"loans.1.rate=10%,11.5%":                                        {"0.1", "0.115"},
		"holding.property tax=$300/year, $400/year":                     {"300", "400"},
		"yard=$60/month during marketing, $90/month":                    {"60", "90"},
		"yard=$60/month during Marketing..$90/month during marketing/2": {"60", "75", "90"},
		"property tax=$300/year during hold, $400/year":                 {"300", "400"},
		"listing agent=2% of sale price, 3% of the sale price":          {"0.02", "0.03"},
	} {
		_, values, found := d.Vary("--across", text)
		require.Empty(t, found, text)
		var got []string
		for _, v := range values {
			got = append(got, v.String())
		}
		require.Equal(t, want, got, text)
	}
	for text, code := range map[string]string{
		"yard=$60/month during escrow, $90/month": "range-form", "overrun": "bad-axis", "overrun=": "bad-axis", "=5%": "bad-axis", "overrun=5%": "bad-axis", "overrun=0%..45%": "bad-axis",
		"overrun=0%..45%/0": "bad-axis", "overrun=0%..45%/4000": "bad-axis", "overrun=5%..5%/3": "bad-axis", "overun=0%..45%/3": "unknown-input",
		"overrun=a..5%/3": "bad-percent", "house.year built=1960, 1970": "axis-not-here", "overrun=0%..4500%/3": "too-large",
		"roof.labour=$2k, $3k": "cost-two-ways", "loans.1.fixed amount=$150k, $160k": "price-two-ways", "loans.1.reserve=$1k, $2k": "reserve-unused",
		"seller credit=0..$300k/3": "credit-above-price", "price=$2k, $200k": "deposit-above-price", "keep back=$1k, $900k": "keep-back-above",
	} {
		_, _, found := d.Vary("--across", text)
		require.Len(t, found, 1, text)
		require.Equal(t, code, found[0].Code, text)
		require.Equal(t, "--across", found[0].Pos.File)
		require.NotEmpty(t, found[0].Hint)
	}
}

// By an amount of the comparables their sales are weighed, which happens as the file is read:
// it is tried by a plan of its own, and has no range nor bad day.
func TestAnAmountOfTheComparablesStays(t *testing.T) {
	d, _ := deal.Read("a", []byte(ranged("", "comps: {amounts: {bath: $9,500}, sold: {12 Elm St: {sold: 2025-11-14, price: $341k}}}").text()))
	_, _, axis := d.Vary("--across", "comps.amounts.bath=$5k, $9,500")
	require.Equal(t, "comps.amounts.bath cannot be varied: the weights of the sales go by it", axis[0].Message)
	require.Equal(t, "try it with   --set 'comps.amounts.bath=$9,000'   , once per value", axis[0].Hint)
	for code, text := range map[string]string{"range-not-here": "ranges: {bath: {low: $5k, high: $9k}}", "bad-day-not-here": "bad days: {cheap baths: {market a month: 0.2%}}"} {
		_, found := deal.Read("a", []byte(ranged("", text).text()))
		require.Equal(t, code, found.Errors()[0].Code)
		require.Contains(t, found.Errors()[0].Message, "the weights of the sales go by it")
	}
}

// What cannot be a side of a grid says what does instead, and no hint names what is refused.
func TestWhatCannotVaryIsTriedWithSet(t *testing.T) {
	d, _ := deal.Read("a", []byte(ranged("", "").text()))
	for name, want := range map[string]string{
		"purchase.date":        "--set 'purchase.date=2026-03-02'   , once per value",
		"purchase date":        "if purchase.date is meant, try it with   --set 'purchase.date=2026-03-02'",
		"seen.heating":         "--set 'seen.heating=…'   , once per value",
		"scope":                "--set 'scope=",
		"selling.transfer tax": "--set 'selling.transfer tax=…'   , once per value",
		"earnest deposit":      "write   purchase.earnest deposit.amount",
		"purchase":             "in it can: write which",
		"draws.lag":            "draws 1 month slower; plan with another by",
		"amortising":           "it is counted in whole months and stays as it is; plan with another",
		"seler credit":         `did you mean "seller credit"?`,
	} {
		_, _, found := d.Vary("--across", name+"=1, 2")
		require.Len(t, found, 1, name)
		require.Contains(t, found[0].Hint, want)
		require.NotContains(t, found[0].Hint, "overrun a range")
	}
	_, _, found := d.Vary("--across", "earnest deposit.amount=$1k, $5k")
	require.Empty(t, found)
	d, _ = deal.Read("a", []byte(ranged("", "seen: {heating: {likely: $4k}}").text()))
	_, _, found = d.Vary("--across", "seen.heating.likely=$1k, $5k")
	require.Contains(t, found[0].Hint, "details of rooms' work, of checks, of sold houses and of charges cannot: try it with   --set")
}

// No hint of what cannot vary leads to what is refused.
func TestAHintThatIsFollowedIsTaken(t *testing.T) {
	d, found := deal.Read("a", []byte("purchase: {price: $100k, earnest deposit: $3k}\nvalue: {after-repair value: $190k}\ntime: {renovation: 2 months}\nloans: [{price share: 60%, rate: 10%}]\n"))
	require.Empty(t, found.Errors())
	in, values, found := d.Vary("--across", "earnest deposit=$1k, $3k")
	require.Empty(t, found, "it is written as an amount alone")
	require.Len(t, values, 2)
	require.Equal(t, "purchase.earnest deposit", in.Path)
	for name, want := range map[string]string{"extension.fee": "the deal has no extension", "filing": "the deal has no tax by rates", "draws.lag": "stays as it is; plan"} {
		_, _, found = d.Vary("--across", name+"=1, 2")
		require.Len(t, found, 1, name)
		require.Contains(t, found[0].Hint, want)
	}
}

// A grid may go under the low value, which is itself how low the value may come out.
func TestVaryUnderTheLowValue(t *testing.T) {
	d, found := deal.Read("a", []byte(ranged("", "").text()), deal.Set{Path: "value.low", Value: "$338k"})
	require.Empty(t, found.Errors())
	_, values, found := d.Vary("--down", "after-repair value=$300k, $350k")
	require.Empty(t, found)
	require.Len(t, values, 2)
}

// A figure that stands in the place of others names those.
func TestVaryNamesTheOtherWay(t *testing.T) {
	d, _ := deal.Read("a", []byte(ranged("", "").text()))
	_, _, found := d.Vary("--down", "roof.labour=$2k, $3k")
	require.Equal(t, `"labour" stands beside an amount for the whole line`, found[0].Message)
	require.Regexp(t, `renovation\.lines\.\d+\.amount$`, found[0].Hint)
}

// A comma that may stand within a figure is none between two.
func TestVaryWantsASpaceBetweenFigures(t *testing.T) {
	d, _ := deal.Read("a", []byte(ranged("", "").text()))
	_, _, found := d.Vary("--down", "price=212500,200k")
	require.Len(t, found, 1)
	require.Contains(t, found[0].Hint, "put a space behind the comma")
}

// What is refused says what does instead.
func TestRefusedChangesNameAWayOut(t *testing.T) {
	for day, want := range map[string]string{
		"{draws.lag: +1 month}":  "counted in whole months",
		"{own pace: 3}":          "overrun   in cost",
		"{overrun: $8,000}":      "extra work: $8,000",
		"{loans.1.rate: +2}":     "write   +2%   , which adds 2% to the plan's",
		"{overrun: +0.2}":        "the plan's   , or   +20%   , if that is meant",
		"{loans.1.points: -1/2}": "write   -1/2%   , which takes 0.5% off",
		"{standstill: none}":     "write 0 for no time",
		"{exit fee: 2%}":         "plan with another",
		"{loans.1.exit fee: 2%}": "--set 'loans.1.exit fee=1% of commitment'",
	} {
		_, found := deal.Read("a", []byte(ranged("", "bad days: {roof: "+day+"}").text()))
		require.Contains(t, found.Errors()[0].Hint, want, day)
		require.NotContains(t, found.Errors()[0].Message, "roof of", day)
	}
}

// A key that one loan has and another could have is asked for, as --set asks.
func TestVaryAsksWhichLoan(t *testing.T) {
	d, found := deal.Read("a", []byte(ranged("", "").text()), deal.Set{Path: "loans", Value: "[{name: a, price share: 60%, rate: 10%, least interest: 2 months}, {name: b, price share: 10%, rate: 12%}]"})
	require.Empty(t, found.Errors())
	_, _, found = d.Vary("--across", "least interest=1 month, 2 months")
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "could be more than one: loans.1.least interest, loans.2.least interest")
	for _, one := range []string{"a.least interest", "loans.1.least interest"} {
		_, _, found = d.Vary("--across", one+"=1 month, 2 months")
		require.Empty(t, found, one)
	}
}

// What is written in words, without its sign or its unit, is told as what is read.
func TestHintsOfRangesAndBadDaysAreTaken(t *testing.T) {
	for text, want := range map[string]string{
		"ranges: {standstill: none}":                      "standstill: {spread: none}",
		"ranges: {marketing: {cases: {1 month: 3}}}":      "cases: {3 weeks: 3, 3 months: 1}",
		"bad days: {dear: {property tax: +$40}}":          "+$40/year",
		"bad days: {soft: {sale price: 5% less}}":         "write   sale price: -5%",
		"bad days: {late: {marketing: 2 months longer}}":  "write   marketing: +2 months",
		"bad days: {over: {overrun: 10 points more}}":     "write   overrun: +10 points",
		"bad days: {soft: {arv: $5k lower than planned}}": "write   arv: -$5k",
		"bad days: {dear roof: {roof: +$2k}}":             "roof.amount",
	} {
		_, found := deal.Read("a", []byte(ranged("", text).text()))
		require.Len(t, found.Errors(), 1, text)
		require.Contains(t, found.Errors()[0].Hint, want)
	}
}

// A plan outside of its range is taken at the nearer end where the file says nothing of what
// is likely, so that another plan may be tried without the range.
func TestAPlanOutsideItsRangeIsLikelyAtItsEnd(t *testing.T) {
	d, found := deal.Read("a", []byte(ranged("", "ranges: {marketing: {low: 1 month, high: 2 months}}").text()), deal.Set{Path: "marketing", Value: "8 months"})
	require.Empty(t, found.Errors())
	require.Contains(t, codesIn(found), "plan-outside")
	require.Equal(t, "2", d.Ranges[0].Likely.String())
}

// A charge that cannot be read is spoken of once, and not its range or its bad day too.
func TestARangeOfWhatCannotBeReadIsNotRefused(t *testing.T) {
	for _, more := range []string{"ranges: {property tax: {low: $3000/year, high: $4000/year}}", "bad days: {dear: {property tax: +$100/year}}"} {
		_, found := deal.Read("a", []byte(ranged("", more).text()), deal.Set{Path: "property tax", Value: "$3,500.123/year"})
		require.Len(t, found.Errors(), 1, "%v", found)
		require.Contains(t, found.Errors()[0].Message, "more than 2 decimals")
	}
}

// A list of which it is not clear what its commas part, and a span of three dots, are refused
// with the way out; what is clear is taken.
func TestVaryRefusesWhatCanBeReadTwice(t *testing.T) {
	d, _ := deal.Read("a", []byte(ranged("", "").text()))
	for text, hint := range map[string]string{
		"extra work=600,800,120,90":      "between two figures put a space behind the comma",
		"price=100,200,300":              "a span such as 0%..45%/9; between two figures put a space behind the comma",
		"overrun=0%...45%/3":             "write two",
		"late sale=1 month...3 months/2": "write two",
	} {
		_, _, found := d.Vary("--down", text)
		require.Len(t, found, 1, text)
		require.Contains(t, found[0].Hint, hint, text)
	}
	for text, n := range map[string]int{"price=$200,000,$212,500": 2, "price=200k,210k": 2, "price=200,000, 212,500, 220k": 3, "extra work=600, 800, 1200": 3, "overrun=0.5%..1%/2": 3} {
		_, values, found := d.Vary("--down", text)
		require.Empty(t, found.Errors(), "%s: %v", text, found)
		require.Len(t, values, n, text)
	}
}
