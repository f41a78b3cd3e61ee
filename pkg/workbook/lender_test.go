package workbook

import (
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// withPartner is an invented deal with a partner, two lenders and a value that the lender
// counts of its own.
const withPartner = `
deal: Partner
purchase: {price: $168,500, assignment fee: $3,000, auction premium: {share: 4%, at least: $2500}, closing: {title: $1,420}, paid before closing: {inspection: $490}}
value: {after-repair value: $312k, lender's value: $305k, low: $289k}
time: {lead-in: 2 weeks, renovation: 3 months, marketing: 6 weeks, escrow: 1 month}
renovation:
  contingency: 10%
  own labour rate: $40/hour
  lines: [{trade: roof, work: patch, materials: $310, labour: $1,450}, {trade: paint, work: rooms, materials: $900, own hours: 73}]
rooms:
  loft: {size: 15' x 12' 6", ceiling: 4' 6" to 8' both sides, work: {paint walls: own hands, baseboard: own hands, carpet: {quote: $1,100, from: Elm Floors (invented), dated: 2026-03-01}}}
outside: {roof: [{size: 34' x 26', pitch: 9/12, overhang: 1'}], work: {gutters: hired}}
loans:
  - {name: bank, price share: 80%, renovation share: 100%, rate: 11.5%, points: 2 points, term: 9 months, extension: {each: 3 months, fee: 0.75%}, draws: {lag: 1 month, retainage: 10%, fee: $150, at least: $900}}
  - {name: aunt, of remainder: yes, price share: 50%, rate: 8%, interest paid: at payoff}
selling: {commission: 5%}
partner: {share: 40%, split: 35%, preferred return: 8%}
walk away: 12%
cash: {available: $90k}
`

// labelled are the figures of a page by the words before them, to the first of each.
func labelled(g *grid) map[string]any {
	out := map[string]any{}
	for _, row := range g.rows {
		for i := range row[:max(0, len(row)-1)] {
			if s, is := row[i].value.(string); is && out[s] == nil && row[i+1].value != nil {
				out[s] = row[i+1].value
			}
		}
	}
	return out
}

// What the partner and the borrower pay to buy adds up to the total, and what they get from
// the sale to what it leaves and what else moves in its month; the draws start from what is
// left of her own cash.
func TestLendersPageWithAPartnerAddsUp(t *testing.T) {
	a := answered(t, withPartner)
	b, err := made(a, Options{For: Lender})
	require.NoError(t, err)
	of := labelled(sheetOf(b, "The deal"))
	x := func(words string) float64 {
		require.Contains(t, of, words)
		return of[words].(float64)
	}
	require.Positive(t, x("of the total, the partner pays"))
	require.InDelta(t, x("total to buy"), x("of the total, the partner pays")+x("  the borrower"), 1e-6)
	require.InDelta(t, x("  left after the closing"), x("the borrower's cash")-x("  the borrower"), 1e-6)
	require.InDelta(t, x("left when selling and loans are paid")+x("  bills and refunds of that month"), x("  to the partner, profit and capital")+x("  to the borrower"), 1e-6)
	require.Equal(t, x("  left after the closing"), near(a.Line("proven_cash")))
	proven := false
	for _, row := range sheetOf(b, "Draws").rows {
		for i, c := range row {
			if s, _ := c.value.(string); strings.HasPrefix(s, "owner's cash as proven") {
				proven = true
				require.Equal(t, x("  left after the closing"), row[i+drawToFinish-drawWork].value)
			}
		}
	}
	require.True(t, proven)
}

// The ratio to the value after repair re-adds from what the page shows: the loans over the
// value that the lender counts, $305,000.
func TestLendersRatioIsOfTheValueShown(t *testing.T) {
	b, err := made(answered(t, withPartner), Options{For: Lender})
	require.NoError(t, err)
	of := labelled(sheetOf(b, "The deal"))
	require.Equal(t, 305000.0, of["  of it the lender counts"])
	require.InDelta(t, of["the loans in full"].(float64)/305000, of["of the value that the lender counts (ARV)"], 1e-12)
}

// Where nobody has appraised the house the page and the assumptions say so; where somebody
// has, neither does, and the ratio is of the value as it is. The labels are formulas where
// the value can still be typed in.
func TestAnAppraisalThatIsMissingIsSaid(t *testing.T) {
	const page, note = "value as it is (not appraised: the price)", "as-is value: not appraised, so the price stands in"
	b, err := made(answered(t, withPartner), Options{For: Lender})
	require.NoError(t, err)
	require.Contains(t, texts(sheetOf(b, "The deal")), page)
	require.Contains(t, texts(sheetOf(b, "The deal")), "at closing, of the price (no as-is value)")
	require.Contains(t, texts(sheetOf(b, "Notes")), note)
	for _, row := range sheetOf(b, "The deal").rows {
		if len(row) > 0 && row[0].value == page {
			require.Contains(t, row[0].formula, `"value as it is"`)
		}
	}
	b, err = made(answered(t, strings.Replace(withPartner, "value: {", "value: {as-is value: $170k, ", 1)), Options{For: Lender})
	require.NoError(t, err)
	require.NotContains(t, texts(sheetOf(b, "The deal")), page)
	require.Contains(t, texts(sheetOf(b, "The deal")), "at closing, of the value as it is")
	require.NotContains(t, texts(sheetOf(b, "Notes")), note)
	require.Contains(t, texts(sheetOf(b, "Attachments")), "value as it is")
}

// What is agreed of a loan stands on the page, and a term that nobody stated is no 0.
func TestTermsOfALoan(t *testing.T) {
	b, err := made(answered(t, withPartner), Options{For: Lender})
	require.NoError(t, err)
	g := sheetOf(b, "The deal")
	of := labelled(g)
	for words, want := range map[string]any{
		"points, of the loan": 0.02, "term, months": 9.0, "  each extension, months": 3.0, "  it is paid": "monthly", "  it runs on the": "balance",
		"draws, months after the month of the work": 1.0, "  kept of each until the work is done": 0.1, "  the smallest that is paid": 900.0, "  fee for each": 150.0,
	} {
		require.Equal(t, want, of[words], words)
	}
	require.Contains(t, texts(g), "none stated")
	require.Contains(t, texts(g), "at payoff")
	papers := strings.Join(texts(sheetOf(b, "Attachments")), "\n")
	for _, words := range []string{"purchase contract, signed", "sales of comparable houses", "agreement with the partner"} {
		require.Contains(t, papers, words)
	}
}

// What the owner noted for herself stands in her own workbook alone.
func TestTheOwnersNotesAreHers(t *testing.T) {
	a := answered(t, withPartner+"notes: Ask about the wet wall.\n")
	for who, want := range map[Reader]bool{Owner: true, Lender: false} {
		b, err := made(a, Options{For: who})
		require.NoError(t, err)
		require.Equal(t, want, slices.Contains(texts(sheetOf(b, "Notes")), "Ask about the wet wall."), who)
	}
}

// A limit that there is none of is not shown as a number of dollars.
func TestNoLimitIsSaid(t *testing.T) {
	b, err := made(answered(t, withPartner), Options{})
	require.NoError(t, err)
	seen := 0
	for _, g := range b.all() {
		if g == b.workingGrid || g == b.months {
			continue
		}
		for i, row := range g.rows {
			for j, c := range row {
				if x, is := c.value.(float64); is && x > 9e11 {
					seen++
					require.Equal(t, limited, c.look.format, "%s!%s", g.name, address(i+1, j+1, false, false))
				}
			}
		}
	}
	require.Positive(t, seen)
}

// Of what is the owner's, own work and money add up, below the totals of the breakdown.
func TestOwnersPartIsWorkAndMoney(t *testing.T) {
	a := answered(t, withPartner)
	b, err := made(a, Options{For: Lender})
	require.NoError(t, err)
	d := b.breakdownPage()
	require.True(t, d.exactly(d.last+1, colOwner).Equal(a.Line("own_work_of_it")))
	require.True(t, a.Line("own_work_of_it").IsPositive())
	require.True(t, d.exactly(d.last, colOwner).Equal(d.exactly(d.last+1, colOwner).Add(d.exactly(d.last+2, colOwner))))
}

// An input without a shade moves no figure of the workbook: raised by 1, all others stay.
// Among them are those that only the program looks at. What others are looked at beside has a shade, and changes
// none either.
func TestInputsWithoutAShadeChangeNothing(t *testing.T) {
	a := answered(t, withPartner)
	b, err := made(a, Options{})
	require.NoError(t, err)
	all := func(of *exact.Values, but *model.Cell) (out []decimal.Decimal) {
		for _, c := range a.Model.Cells {
			if c != but && b.places[c.Index].grid != nil && !c.Line.Monthly {
				out = append(out, of.Of(c))
			}
		}
		return out
	}
	plan, plain, beside := exact.NewPlan(a.Model), map[string]bool{}, b.besideAnother()
	before, err := plan.Evaluate()
	require.NoError(t, err)
	for _, c := range a.Model.Cells {
		at := b.places[c.Index]
		if at.grid == nil || !b.editable(c) {
			continue
		}
		if at.grid.rows[at.row-1][at.col-1].look.role == result {
			plain[c.Line.Name] = true
		} else if b.read[c.Index] {
			continue
		} else {
			require.True(t, beside[c.Index], c.Name())
		}
		if c.Line.Unit == "choice" || drawn(c) {
			continue
		}
		after, err := plan.Evaluate(exact.Change{Cell: c, Value: before.Of(c).Add(decimal.NewFromInt(1))})
		require.NoError(t, err, c.Name())
		require.Equal(t, all(before, c), all(after, c), c.Name())
	}
	for _, name := range []string{"value_before_work", "walk_away_share"} {
		require.True(t, plain[name], name)
	}
	for _, name := range []string{"price", "low_value", "after_repair_value", "rule_share", "cash_available"} {
		require.False(t, plain[name], name)
	}
}

// What does not follow a change is listed in words on the lender's page, and italics only where
// there are any.
func TestLenderReadsWhatStandsStill(t *testing.T) {
	bought := sentinels[:strings.Index(sentinels, "loans:")] + sentinels[strings.Index(sentinels, "selling:"):]
	for _, x := range []struct{ text, says string }{
		{sentinels, "follow the inputs of this workbook, but for those in italics, how much work brings along and what rests on figures that are not in this workbook."},
		{bought, "follow the inputs of this workbook, but for how much work brings along and what rests on figures that are not in this workbook."},
	} {
		b, err := made(answered(t, x.text), Options{For: Lender})
		require.NoError(t, err)
		require.Contains(t, strings.Join(texts(sheetOf(b, "The deal")), "\n"), x.says)
	}
}

// Below the headline both readers are told whether cut lists fit, by a formula, and what
// does not follow is named; the sum of found figures is in italics as they are.
func TestWhatDoesNotFollowIsSaid(t *testing.T) {
	for _, whom := range []Reader{Owner, Lender} {
		b, err := made(answered(t, withPartner), Options{For: whom})
		require.NoError(t, err)
		g, told := sheetOf(b, "The deal"), false
		for i, row := range g.rows {
			if len(row) > 0 && row[0].value == "The cut lists fit the work." {
				told = true
				require.Less(t, i, 7)
				require.Contains(t, row[0].formula, "cut anew")
			}
			if len(row) > 1 && row[0].value == "= maximum offer at the likely value" {
				require.Equal(t, foundTotal, row[1].look.role)
			}
		}
		require.True(t, told)
		all := strings.Join(texts(g), "\n")
		require.NotContains(t, all, "All figures follow")
		require.Contains(t, all, "the numbers of sticks in cut lists")
		require.Equal(t, whom == Lender, strings.Contains(all, "figures that are not in this workbook"))
		require.Contains(t, strings.Join(texts(sheetOf(b, "Pieces of work")), "\n"), "What comes along with it")
	}
}

// A trade is told how a ceiling slopes and how a roof lies, in feet and inches, and what is
// not meant to be bid on.
func TestFormTellsSlopesAndWhatNeedsNoBid(t *testing.T) {
	b, err := made(answered(t, withPartner), Options{BlankPrices: true})
	require.NoError(t, err)
	all := strings.Join(texts(b.pages[0]), "\n")
	require.Contains(t, all, `15' x 12' 6", ceiling 4' 6" to 8', sloping to both long sides; floor 187.5 sq ft; ceiling `)
	require.Contains(t, all, `roof 34' x 26' in plan, pitch 9/12, overhang 1'`)
	require.NotContains(t, all, "8' high")
	require.Contains(t, all, "two coats of eggshell on walls [planned by own hands]")
	require.Contains(t, all, "[there is a quote]")
	around := strings.NewReplacer(`size: 15' x 12' 6", ceiling: 4' 6" to 8' both sides`, `walls: [east 14', north 11' 3", west 14', south 11' 3"]`, `, carpet: {quote: $1,100, from: Elm Floors (invented), dated: 2026-03-01}`, "")
	b, err = made(answered(t, around.Replace(withPartner)), Options{BlankPrices: true})
	require.NoError(t, err)
	require.Contains(t, strings.Join(texts(b.pages[0]), "\n"), `walls in order 14', 11' 3", 14', 11' 3", 8' high`)
}
