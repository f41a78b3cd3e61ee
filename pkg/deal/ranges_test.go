package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

func TestARangeFindsItsInput(t *testing.T) {
	for name, want := range map[string]struct{ path, line, low string }{
		"overrun: {low: 5%, high: 30%}":                                   {"overrun", "overrun", "0.05"},
		"Late-Sale: {low: 0, high: 2 months}":                             {"late sale", "late_sale", "0"},
		"sale price: {low: $340k, high: $360k}":                           {"sale price", "sale_price", "340000"},
		"arv: {low: $340k, high: $360k}":                                  {"value.after-repair value", "after_repair_value", "340000"},
		"standstill: {low: 0, high: 2 months}":                            {"time.standstill", "standstill", "0"},
		"loans[1].rate: {low: 9%, high: 12%}":                             {"loans.1.rate", "rate", "0.09"},
		"first loan.interest: {low: 9%, high: 12%}":                       {"loans.1.rate", "rate", "0.09"},
		"loans.1.least interest: {low: 0, high: 3 months}":                {"loans.1.least interest", "least_interest_months", "0"},
		"property tax: {low: $4k/year, high: $5k/year}":                   {"holding.property tax", "a_year", "4000"},
		"settlement: {low: $1000, high: $1300}":                           {"selling.settlement", "fixed", "1000"},
		"yard: {low: $70/month, high: $99/month}":                         {"holding.yard", "a_month", "70"}, // written with its phase behind
		"renovation.lines.1.amount: {low: $9k, likely: $10k, high: $12k}": {"renovation.lines.1.amount", "lump", "9000"},
	} {
		d := read(t, deal.Starter("ranges")+"ranges:\n  "+name+"\n")
		require.Len(t, d.Ranges, 1, name)
		r := d.Ranges[0]
		require.Equal(t, []string{want.path, want.line}, []string{r.Path, r.Line}, name)
		require.Equal(t, want.low, r.Low.String(), name)
		require.NotNil(t, d.Model.Find(r.Member, r.Line), name)
		require.Equal(t, []string{deal.OneInTen, deal.PERT}, []string{r.Means, r.Spread})
	}
}

// A loan that stands alone is named without its number, as --set takes it.
func TestAnInputOfTheOnlyLoan(t *testing.T) {
	const text = "purchase: {price: $150k}\nvalue: {after-repair value: $214k}\ntime: {renovation: 2 months, marketing: 1 month, escrow: 1 month}\n" +
		"renovation: {lines: [{trade: a, work: b, amount: $20k}]}\n" +
		"ranges: {loan.rate: {low: 10%, high: 14%}}\nbad days: {dear: {loan.rate: +1%}}\nties: [{between: [loan.rate, overrun], correlation: 0.2}]\n"
	for _, loan := range []string{"loan: {price share: 80%, rate: 12%}\n", "loan: [{price share: 80%, rate: 12%}]\n", "loans: [{price share: 80%, rate: 12%}]\n"} {
		d := read(t, text+loan)
		in, values, found := d.Vary("--across", "loan.rate=10%, 12%")
		require.Empty(t, found)
		require.Len(t, values, 2)
		for _, x := range []deal.Input{in, d.Ranges[0].Input, d.BadDays[0].Changes[0].Input, d.Ties[0].A} {
			require.Equal(t, "rate", x.Line)
			require.Equal(t, d.Root.In("loan")[0], x.Member)
		}
	}
	_, found := deal.Read("a", []byte(text+"loans: [{price share: 50%, rate: 12%}, {price share: 20%, rate: 13%}]\n"))
	require.Len(t, found.Errors(), 3, "of two loans none is meant")
}

// What is likely is what the plan has, also where the model works that out.
func TestThePlanIsLikely(t *testing.T) {
	d := read(t, deal.Starter("likely")+"ranges: {overrun: {low: 5%, high: 30%}, marketing: {low: 2 weeks, high: 3 months, means: very ends, spread: even}}\n")
	require.Equal(t, "0.15", d.Ranges[0].Likely.String(), "its contingency")
	require.Equal(t, deal.VeryEnds, d.Ranges[1].Means)
	require.Equal(t, deal.Even, d.Ranges[1].Spread)
}

func TestCasesAreInOrder(t *testing.T) {
	d := read(t, deal.Starter("cases")+"ranges: {loans.1.rate: {cases: {12.5%: 1, 11.25%: 3}}}\nties: [{between: [loans.1.rate, standstill], correlation: -0.25}]\n")
	require.Equal(t, "0.1125", d.Ranges[0].Cases[0].Value.String())
	require.Equal(t, "3", d.Ranges[0].Cases[0].Weight.String())
	require.True(t, d.TiesSaid)
	require.True(t, d.Ties[0].A.Is(d.Ranges[0].Input))
	require.Equal(t, "-0.25", d.Ties[0].Rho.String())
}

// A set of an input is not taken for one of its range, which has the same name.
func TestSetsDoNotMistakeARangeForItsInput(t *testing.T) {
	text := deal.Starter("sets") + "ranges: {standstill: {low: 0, high: 2 months}}\n"
	d, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "standstill", Value: "1 month"}, deal.Set{Path: "ranges.standstill.high", Value: "3 months"}, deal.Set{Path: "ranges.overrun", Value: "{low: 5%, high: 50%}"})
	require.Empty(t, found.Errors())
	require.Equal(t, "1", d.Root.Given.Of("standstill").Number.String())
	require.Equal(t, "3", d.Ranges[0].High.String())
	require.Equal(t, "0.5", d.Ranges[1].High.String())
}

func TestAValueIsSaidAsTheFileSaysIt(t *testing.T) {
	d := read(t, deal.Starter("says")+"ranges: {property tax: {low: $4k/year, high: $5k/year}, overrun: {low: 5%, high: 30%}, marketing: {low: 0, high: 3 months}, arv: {low: $340k, high: $360k}}\n")
	var said []string
	for _, r := range d.Ranges {
		said = append(said, r.Says(r.Low)+" to "+r.Says(r.High))
	}
	require.Equal(t, []string{"$4,000/year to $5,000/year", "5% to 30%", "none to 3 months", "$340,000 to $360,000"}, said)
}

func TestLimitsAreTheFiles(t *testing.T) {
	d := read(t, deal.Starter("limits")+"ranges: {overrun: {low: 5%, high: 30%}, selling.settlement: {low: $900, high: $1,300}, listing agent: {low: 2%, high: 3%}, marketing: {low: 0, high: 3 months}}\n")
	for i, want := range []struct{ least, most string }{{"-0.5", "3"}, {"0", "1000000000"}, {"0", "1"}, {"0", "120"}} {
		least, most := d.Ranges[i].Limits()
		require.Equal(t, want.least, least.String(), d.Ranges[i].Path)
		require.Equal(t, want.most, most.String(), d.Ranges[i].Path)
	}
}

// Small amounts keep their cents, as those of a stamp of $1.10 on each $500 do; large ones
// keep them in the heads of a grid.
func TestAnInputSaysItsCents(t *testing.T) {
	d := read(t, deal.Starter("cents"))
	in, values, found := d.Vary("--across", "yard=$88.50/month, $1,200.25/month, $90/month")
	require.Empty(t, found)
	require.Equal(t, "$88.50/month", in.Says(values[0]))
	require.Equal(t, "$1,200/month", in.Says(values[1]))
	require.Equal(t, "$1,200.25/month", in.SaysCents(values[1]))
	require.Equal(t, "$90/month", in.SaysCents(values[2]))
}

// Beside an overrun that comes out as planned, which is the contingency, a range of that does
// change the deal.
func TestARangeOfTheContingencyBesideASteadyOverrun(t *testing.T) {
	for ranges, idle := range map[string]bool{
		"{contingency: {low: 5%, high: 25%}}":                              true,
		"{contingency: {low: 5%, high: 25%}, overrun: {spread: none}}":     false,
		"{overrun: {spread: none}, contingency: {cases: {5%: 1, 25%: 1}}}": false,
	} {
		_, found := deal.Read("a", []byte(ranged("", "ranges: "+ranges).text()))
		require.Empty(t, found.Errors())
		require.Equal(t, idle, slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == "range-idle" }), ranges)
	}
}

// The way out of no cases is to give some, and a range off the plan is likely at its end nearest
// the plan.
func TestWaysOutOfARange(t *testing.T) {
	for text, want := range map[string][2]string{
		"overrun: {low: 20%, high: 30%}": {"overrun is 15% in the plan, outside of its range, 20% to 30%, of which 20% is taken as likely", "check both"},
		"overrun: {low: 1%, high: 5%}":   {"of which 5% is taken as likely", "check both"},
		"overrun: {cases: {}}":           {"overrun has no cases", "give at least two"},
		"overrun: {cases: {5%: 1}}":      {"overrun has a single case, which is no range", "give at least two"},
	} {
		_, found := deal.Read("a", []byte(deal.Starter("ways")+"ranges: {"+text+"}\n"))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return strings.Contains(d.Message, want[0]) })
		require.GreaterOrEqual(t, i, 0, text)
		require.Contains(t, found[i].Hint, want[1])
	}
}
