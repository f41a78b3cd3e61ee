package deal_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// What is rented by the month is paid for whole months, where its option is chosen.
func TestRentsFollowTheMonthsOfWork(t *testing.T) {
	text := walked + `
local prices: {labour factor: 90%}
rooms:
  den:
    size: 10' x 12'
    options:
      light: {work: {paint walls: hired}}
      gut: {work: {hang wall board: hired, portable toilet: hired}}
whole house: {work: {storage pod: hired}}
`
	for _, c := range []struct{ scope, months, toilet, want string }{
		{"light", "2.2 months", "hired", "486"}, // 3 months of 162
		{"gut", "2.2 months", "hired", "850.5"}, // and of 121.50
		{"gut", "1 week", "hired", "283.5"},     // one month at least
		{"gut", "2.2 months", "{count: 2}", "486"},
		{"gut", "2.2 months", "$400", "486"},
	} {
		d := readDeal(t, text, deal.Set{Path: "scope", Value: c.scope}, deal.Set{Path: "time.renovation", Value: c.months},
			deal.Set{Path: "rooms.den.options.gut.work.portable toilet", Value: c.toilet})
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		require.Equal(t, c.want, v.Of(d.Model.Find(d.Root, "rents")).String(), c)
		works := v.Of(d.Model.Find(d.Root, "rooms_cost")).Add(v.Of(d.Model.Find(d.Root, "disposal"))).Add(v.Of(d.Model.Find(d.Root, "rents"))).Add(v.Of(d.Model.Find(d.Root, "not_seen")))
		require.Equal(t, works.String(), v.Of(d.Model.Find(d.Root, "works_cost")).String(), c)
	}
}

// By hand: 4 months of 3.2, at $180 of the book, half again as dear in this place, or at
// the file's own $200, to which no factor goes; 10% on top where labour is taxed. Rent is
// cash whoever does the work, and where the months are counted too.
func TestRentsAreCashAtThePriceThatIsSaid(t *testing.T) {
	text := walked + "local prices: {sales tax: 10%, labour factor: 150%}\nwhole house: {work: {storage pod: hired}}\n"
	for pod, want := range map[string][2]string{ // rents, and what the rooms cost
		"hired":                             {"1080", "0"},
		"own hands":                         {"1080", "0"},
		"{hired: $200 per month}":           {"800", "0"},
		"{tax on labour: yes}":              {"1188", "0"},
		"{by: hired, count: 3}":             {"0", "810"},
		"{by: own hands, count: 3}":         {"0", "810"},
		"{by: hired, count: 3 months}":      {"0", "810"},
		"{quote: $500, covers: labour}":     {"0", "500"},
		"{count: 3, hired: $200 per month}": {"0", "600"},
		"{by: own hands, hired: $200 per month, tax on labour: yes}": {"880", "0"},
	} {
		d := readDeal(t, text, deal.Set{Path: "time.renovation", Value: "3.2 months"}, deal.Set{Path: "whole house.work.storage pod", Value: pod})
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		require.Equal(t, want[0], v.Of(d.Model.Find(d.Root, "rents")).String(), pod)
		for m, w := range d.Work {
			if w.Item.Name == "storage pod" {
				require.Equal(t, want[1], v.Of(d.Model.Find(m, "labour")).String(), pod)
				require.Equal(t, want[1], v.Of(d.Model.Find(m, "labour_at_trade")).String(), pod)
				if pod == "{quote: $500, covers: labour}" { // the book says 4 months of $180, half again as dear
					require.Equal(t, "-580", v.Of(d.Model.Find(m, "quote_over")).String())
				}
			}
		}
	}
}

// A count may have its unit behind it where that is the work's own.
func TestACountTakesItsOwnUnit(t *testing.T) {
	for _, c := range []struct{ work, count, want string }{
		{"portable toilet", "3 months", "3"}, {"portable toilet", "1 month", "1"}, {"portable toilet", "2 1/2 Months", "2.5"},
		{"paint doors", "2 doors", "2"}, {"paint doors", "1 door", "1"}, {"paint doors", "2 each", "2"},
		{"vanity", "1 vanity", "1"}, {"drywall patch", "4 each", "4"}, {"tile floor", "40 sq ft", "40"},
	} {
		d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', doors: 2, work: {"+c.work+": {by: hired, count: "+c.count+"}}}}\n")
		for m, w := range d.Work {
			if w.Item.Name == c.work {
				require.Equal(t, c.want, m.Given.Of("measure").Number.String(), c.count)
			}
		}
	}
	for _, c := range []struct{ work, count, found string }{
		{"portable toilet", "12 weeks", `portable toilet: "12 weeks" is not in months, by which it is counted`},
		{"portable toilet", "3 doors", `"3 doors" is not in months`}, {"portable toilet", "3 months ago", `"3 months ago" is not in months`},
		{"paint doors", "2 windows", `"2 windows" is not in doors`}, {"paint doors", "2 sq ft", `"2 sq ft" is not in doors`},
		{"drywall patch", "4 months", `"4 months" is not in pieces`}, {"portable toilet", "0 months", "a count of 0 months is no work"},
		{"portable toilet", "three months", `"three" is not a number`}, {"paint doors", "-1 door", "a count of -1 door is no work"},
	} {
		_, found := deal.Read("house.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', doors: 2, work: {"+c.work+": {by: hired, count: "+c.count+"}}}}\n"))
		require.True(t, found.HasErrors())
		require.Contains(t, found.Error(), c.found)
	}
}

// Work brought along is done to the same part as the work that brings it.
func TestCompanionsOfAPartAreOfThatPart(t *testing.T) {
	d := readDeal(t, walked+`
rooms:
  den: {size: 10' x 12', work: {strip carpet: {part: 50%}}}
  hall: {size: 10' x 12', work: {strip carpet: {count: 60 sq ft}}}
`)
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	var repaired []string
	for _, room := range d.Root.In("inside") {
		for _, m := range room.In("option")[0].In("item") {
			if m.Label == "subfloor repair" {
				repaired = append(repaired, v.Of(d.Model.Find(m, "quantity")).String())
			}
		}
	}
	require.Equal(t, []string{"4.8", "4.8"}, repaired)
}

func TestMaterialByAMeasureOfAnotherPlace(t *testing.T) {
	_, found := deal.Read("house.yaml", []byte(walked+"whole house: {work: {roof vents: {count: 2}}}\n"))
	require.Equal(t, "measure-not-here", found[0].Code)
	require.Contains(t, found[0].Message, "roof vents takes ridge vent by eaves, which only the outside has")
}

// What a count leaves undone is not bought either, whatever the material goes along.
func TestACountCountsMaterialsAlongOtherMeasures(t *testing.T) {
	bought := func(work string) map[string]string {
		d := readDeal(t, walked+"rooms: {den: {size: 12' x 20', doors: 1, work: {"+work+"}}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		out := map[string]string{}
		for _, p := range d.Root.In("product") {
			out[p.Label] = v.Of(d.Model.Find(p, "total_bought")).String()
		}
		return out
	}
	require.Equal(t, bought("carpet: {by: hired, part: 25%}")["carpet 12 ft wide"], bought("carpet: {by: hired, count: 60 sq ft}")["carpet 12 ft wide"])
	require.Equal(t, "5.1", bought("carpet: {by: hired, count: 60 sq ft}")["carpet 12 ft wide"])      // 5 ft of 12 ft wide, and 2%
	require.Equal(t, "4", bought("hang wallpaper: {by: hired, count: 128 sq ft}")["vinyl wallpaper"]) // of 512, so as for a part of 25%
}

// What comes along with work of which there is nothing does not come: no sink, no shutoffs.
func TestWorkOfNothingBringsNothing(t *testing.T) {
	cost := func(sink string) string {
		d := readDeal(t, walked+"rooms: {kitchen: {size: 12' x 10', fixed: {base cabinets: 12' x 2'"+sink+"}, work: {laminate counter: hired}}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		sum := decimal.Zero
		for m, w := range d.Work {
			if w.Item.Name == "shutoffs and supply lines" {
				sum = sum.Add(v.Of(d.Model.Find(m, "cash_cost")))
			}
		}
		return sum.String()
	}
	require.Equal(t, "0", cost(""))
	require.NotEqual(t, "0", cost(", sink: 1"))
}
