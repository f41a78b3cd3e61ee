package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

func TestSetsReplaceAndAdd(t *testing.T) {
	for _, c := range []struct{ path, value, line, want string }{
		{"purchase.price", "$205k", "price", "205000"},
		{"price", "$205,000", "price", "205000"},
		{"Purchase.Price", "205000", "price", "205000"},
		{"rate", "10%", "first loan > rate", "0.1"},
		{"loans.1.rate", "10%", "first loan > rate", "0.1"},
		{"first loan.rate", "10%", "first loan > rate", "0.1"},
		{"loans.First Loan.rate", "10%", "first loan > rate", "0.1"},
		{"first loan.draws.retainage", "5%", "first loan > retainage_share", "0.05"},
		{"roof.amount", "$9,000", "roof: new shingles > lump", "9000"},
		{"lines.roof: new shingles.amount", "$9,000", "roof: new shingles > lump", "9000"},
		{"loans[1].rate", "10%", "first loan > rate", "0.1"},
		{"loans[1].draws.retainage", "5%", "first loan > retainage_share", "0.05"},
		{"loans.2.fixed amount", "$5k", "loan 2 > fixed_amount", "-"},
		{"closing.title and escrow", "$1,900", "title and escrow > fixed", "1900"},
		{"selling.staging", "1% of price", "staging > base", "price"},
		{"insurance.amount", "$2,000/year", "vacant-house insurance > a_year", "-"},
		{"vacant-house insurance.amount", "$2,000/year", "vacant-house insurance > a_year", "2000"},
		{"vacant-house insurance", "$2,000/year", "vacant-house insurance > a_year", "2000"},
		{"vacant-house insurance", "$2,000/year", "vacant-house insurance > paid_ahead", "12"},
		{"partner", "{share: 40%, split: 50%}", "partner_split", "0.5"},
		{"partner.share", "40%", "partner_share", "0.4"},
		{"renovation.lines.1.amount", "$9,000", "roof: new shingles > lump", "9000"},
		{"own_labor_rate", "$50/hour", "own_labour_rate", "50"},
		{"arv", "$400k", "after_repair_value", "400000"},
		{"walk away", "20%", "walk_away_share", "0.2"},
	} {
		d, found := deal.Read("a.yaml", []byte(deal.Starter("set")), deal.Set{Path: c.path, Value: c.value})
		if c.want == "-" {
			require.Nil(t, d, c.path)
			require.Equal(t, "--set", found[0].Pos.File)
			continue
		}
		require.NotNil(t, d, "%s: %v", c.path, found)
		require.Equal(t, c.want, given(t, d, c.line), c.path)
	}
}

func TestOneLoanGoesByEitherNameOfTheList(t *testing.T) {
	text := minimal + "loan: {name: bank, rate: 9%}\n"
	for _, path := range []string{"loan.1.rate", "loans.1.rate", "loans[1].rate", "loan.rate", "loans.rate", "bank.rate"} {
		require.Equal(t, "0.08", given(t, read(t, text, deal.Set{Path: path, Value: "8%"}), "bank > rate"), path)
	}
}

func TestANameThatSeveralEntriesHaveIsAmbiguous(t *testing.T) {
	text := minimal + "loans:\n  - {name: bank, rate: 9%}\n  - {name: bank, rate: 10%}\n  - {name: St. Ann's, rate: 11%}\n"
	_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "bank.rate", Value: "8%"})
	require.Equal(t, "ambiguous-set-path", found[0].Code)
	require.Contains(t, found[0].Message, "loans.1.rate, loans.2.rate")
	d := read(t, text, deal.Set{Path: "st. ann's.rate", Value: "8%"})
	require.Equal(t, "0.08", given(t, d, "St. Ann's > rate"))
	for path, hint := range map[string]string{"bnk.rate": `did you mean "bank.rate"?`, "bank.rat": `did you mean "loans.1.rate"?`, "loans.9.rate": "the last of loans in the file is loans.3; write one more into the file"} {
		_, found = deal.Read("a.yaml", []byte(text), deal.Set{Path: path, Value: "8%"})
		require.Equal(t, "unknown-set-path", found[0].Code, path)
		require.Equal(t, hint, found[0].Hint)
	}
}

// The keys of a part of the roof, the rates of a charge and conditions are set one by one.
func TestASetReachesIntoRoofsRatesAndConditions(t *testing.T) {
	text := minimal + "selling: {tax: {of: sale price, slabs: {up to $250000: 1%, above: 2%}}, fee: {of: sale price, brackets: {up to $250000: 1%, above: 2%}}}\nrooms: {den: {size: 10' x 12', work: {paint walls: hired}}}\noutside: {roof: [{size: 40' x 28', pitch: 6/12}, {size: 9' x 8'}], work: {shingle roof gable: hired}}\n"
	for path, value := range map[string]string{
		"roof.1.pitch": "8/12", "outside.roof.2.pitch": "4/12", "roof.2.size": "10' x 8'", "roof.1.overhang": "1'",
		"tax.slabs.above": "3%", "selling.fee.brackets.up to $250000": "3%",
	} {
		_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: path, Value: value})
		require.False(t, found.HasErrors(), "%s: %v", path, found)
	}
	_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "wiring", Value: "good"})
	require.Contains(t, found[0].Hint, "--set 'seen.wiring=good'")
	d := read(t, text, deal.Set{Path: "roof.1.pitch", Value: "8/12"})
	require.Contains(t, given(t, d, "outside > part 1 > pitch"), "0.66666")
	_, found = deal.Read("a.yaml", []byte(text), deal.Set{Path: "roof.3.pitch", Value: "8/12"})
	require.Equal(t, "the last of outside.roof in the file is outside.roof.2; write one more into the file", found[0].Hint)
}

func TestASetOfARoomWithAWordMissingIsUnderstood(t *testing.T) {
	text := strings.Replace(twoOptions, "office:", "corner office:", 1)
	_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "scope.office", Value: "gut"})
	require.Equal(t, "unknown-room", found[0].Code)
	require.Equal(t, `did you mean "corner office"?`, found[0].Hint)
}

func TestASetThatSeveralRoomsMayMeanIsAmbiguous(t *testing.T) {
	text := minimal + "rooms:\n  den: {size: 10' x 12', doors: 1, work: {paint walls: hired}}\n  hall: {size: 4' x 12', doors: 2, work: {paint walls: hired}}\n"
	_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "doors", Value: "3"})
	require.Equal(t, "ambiguous-set-path", found[0].Code)
	require.Contains(t, found[0].Message, "rooms.den.doors, rooms.hall.doors")
}

func TestASetOfOneMonthOfAListOfAmounts(t *testing.T) {
	text := minimal + "renovation: {spending: [$1k, $2k, $3k]}\n"
	for _, path := range []string{"renovation.spending.2", "spending.2", "renovation.spending[2]"} {
		d := read(t, text, deal.Set{Path: path, Value: "$5k"})
		var amounts []string
		for _, s := range d.Root.In("stage") {
			amounts = append(amounts, s.Given.Of("amount").Number.String())
		}
		require.Equal(t, []string{"1000", "5000", "3000"}, amounts, path)
	}
	require.Len(t, read(t, text, deal.Set{Path: "renovation.spending.4", Value: "$5k"}).Root.In("stage"), 4)
	_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "renovation.spending.6", Value: "$5k"})
	require.Equal(t, "unknown-set-path", found[0].Code)
	for _, path := range []string{"renovation.spending.-1", "renovation.spending[0]", "renovation.spending[-1]", "-1", "renovation.spending.1-"} {
		_, none := deal.Read("a.yaml", []byte(text), deal.Set{Path: path, Value: "$5k"})
		require.Equal(t, "unknown-set-path", none[0].Code, path)
	}
	require.Equal(t, "in renovation.spending stand: 1, 2, 3", found[0].Hint)
}

func TestTheLastSetWins(t *testing.T) {
	d := read(t, minimal, deal.Set{Path: "price", Value: "$1k"}, deal.Set{Path: "purchase.price", Value: "$150k"})
	require.Equal(t, "150000", given(t, d, "price"))
}

func TestSetsAloneMakeADeal(t *testing.T) {
	d := read(t, "", deal.Set{Path: "purchase.price", Value: "$100k"}, deal.Set{Path: "arv", Value: "$200k"}, deal.Set{Path: "time.escrow", Value: "1 month"},
		deal.Set{Path: "loans.1.rate", Value: "9%"})
	require.Equal(t, "0.09", given(t, d, "loan > rate"))
}

func TestMistakesInSetsPointAtTheSet(t *testing.T) {
	sets := []deal.Set{{Path: "price", Value: "$150k"}, {Path: "rate", Value: "0.1"}, {Path: "targets", Value: "{profit: $30,00}"}}
	text := []byte(deal.Starter("set"))
	_, found := deal.Read("a.yaml", text, sets...)
	var b strings.Builder
	require.NoError(t, diag.Render(&b, found, deal.Sources("a.yaml", text, sets...)))
	require.Contains(t, b.String(), "--set:2:6: error: rate: \"0.1\" has no percent sign\n  2 | rate=0.1\n    |      ^^^\n")
	require.Contains(t, b.String(), "--set:3:")
}

// What the set says is a charge of its own, and is read as one.
func TestASetThatAddsANameNearAnotherIsDoubted(t *testing.T) {
	for path, near := range map[string]string{
		"selling.settlemnt": `"settlement" stands already`, "purchase.closing.survey": "", "selling.warranty": "", "selling.settlement": "",
	} {
		d, found := deal.Read("a.yaml", []byte(deal.Starter("set")), deal.Set{Path: path, Value: "$900"})
		require.NotNil(t, d)
		if near == "" {
			require.Empty(t, found, path)
			continue
		}
		require.Len(t, found, 1)
		require.Contains(t, found[0].Message, near)
		require.Contains(t, found[0].Hint, "--set 'selling.settlement=…'")
	}
}

// A path that is short for a key, or written together, is led to it, as it stands in the
// file and in full.
func TestAPathThatIsShortForAKeyIsLedToIt(t *testing.T) {
	for path, want := range map[string]string{
		"after-repair":   `did you mean "after repair value"?`,
		"after":          `did you mean "after repair value"?`,
		"repair value":   `did you mean "value.after-repair value"?`,
		"lowvalue":       `did you mean "value.low"?`,
		"timerenovation": `did you mean "time.renovation"?`,
		"phase of moon":  "write the keys joined by dots, e.g. --set 'purchase.price=$205k' or --set 'loans.1.rate=11%'",
	} {
		d, found := deal.Read("a.yaml", []byte(minimal), deal.Set{Path: path, Value: "1"})
		require.Nil(t, d)
		require.Equal(t, []string{"unknown-set-path"}, codesIn(found), path)
		require.Equal(t, want, found[0].Hint, path)
	}
}

// A short path that names an entry of a list, or a key that only a new entry would have,
// adds nothing; the full path does.
func TestAShortPathAddsNoEntry(t *testing.T) {
	for path, hint := range map[string]string{
		"materials": `did you mean "materials factor"?`,
		"own hours": `did you mean "own hours a week"?`,
	} {
		_, found := deal.Read("a.yaml", []byte(minimal), deal.Set{Path: path, Value: "5k"})
		require.Equal(t, "unknown-set-path", found[0].Code, path)
		require.Equal(t, hint, found[0].Hint)
	}
	d := read(t, minimal, deal.Set{Path: "renovation.lines.1.materials", Value: "5k"})
	require.Len(t, d.Root.In("cost"), 1)
	text := minimal + "loans: [{name: bank, rate: 9%}]\nrenovation: {lines: [{trade: roof, amount: $5k}]}\n"
	for path, hint := range map[string]string{
		"bank": "for the entry write which of its keys, e.g. --set 'bank.rate=…'",
		"roof": "for the entry write which of its keys, e.g. --set 'roof.amount=…'",
	} {
		_, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: path, Value: "9k"})
		require.Equal(t, "ambiguous-set-path", found[0].Code, path)
		require.Equal(t, hint, found[0].Hint)
	}
}

// Own work alone takes its time, at the hours a week that are assumed.
func TestOwnHoursOfLinesTakeTime(t *testing.T) {
	text := strings.Replace(minimal, "renovation: 3 months, ", "", 1) + "renovation: {lines: [{trade: paint, materials: $900, own hours: 120}]}\n"
	d, found := deal.Read("a.yaml", []byte(text))
	require.NotNil(t, d, found.Error())
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	weeks := decimal.NewFromInt(6 * 7 * 12).Div(decimal.NewFromInt(365)) // 120 hours at 20 a week, in months
	require.Equal(t, weeks.StringFixed(9), v.Of(d.Model.Find(d.Root, "renovation")).StringFixed(9))
	for _, x := range found {
		require.NotEqual(t, "works-without-time", x.Code)
	}
	require.True(t, slices.ContainsFunc(v.Assumed(), func(c *model.Cell) bool { return c.Line.Name == "own_hours_a_week" }))
}

// A key in full is that key, though rooms have one of their own of the name and the file has it
// not.
func TestASetInFullIsThatKey(t *testing.T) {
	d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', ceiling: 10'}, hall: {size: 4' x 12'}}\n", deal.Set{Path: "ceiling", Value: "9'"})
	require.Equal(t, "9", worth(t, d, "usual_ceiling"))
}
