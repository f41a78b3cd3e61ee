package chance_test

import (
	"os"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/odds"
)

// invented, like all figures here.
const house = `house: {year built: 1962}
purchase: {price: $200k, closing: {title: $1k}}
value: {after-repair value: $300k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: roof, amount: $30k}]}
`

func read(t testing.TB, text string) *deal.Deal {
	d, found := deal.Read("a.yaml", []byte(text))
	require.Empty(t, found.Errors())
	return d
}

func ranges(t testing.TB, text string) map[string]chance.Range {
	all, err := chance.Ranges(read(t, text))
	require.NoError(t, err)
	out := map[string]chance.Range{}
	for _, r := range all {
		out[r.Path] = r
	}
	return out
}

func figures(r chance.Range) string {
	return r.Says(r.Low) + ", " + r.Says(r.Likely) + ", " + r.Says(r.High)
}

func TestWhatADealDoesNotSayIsAssumed(t *testing.T) {
	all := ranges(t, house)
	require.Len(t, all, 4)
	for _, r := range all {
		require.True(t, r.Assumed, r.Path)
		require.Contains(t, r.Why, "common practice, no source")
	}
	require.Equal(t, "$276,000, $300,000, $315,000", figures(all["value.after-repair value"]))
	require.Equal(t, "0%, 15%, 40%", figures(all["overrun"]), "15% is customary for its age, more than the plan's 10%")
	require.Equal(t, "none, none, 3 months", figures(all["time.standstill"]))
	require.Equal(t, "0.5 months, 1 month, 3 months", figures(all["time.marketing"]))
	require.Equal(t, odds.AtEnds, all["time.standstill"].Means)

	idle := ranges(t, strings.Replace(house, "time: {", "time: {standstill: 1 month, ", 1))["time.standstill"]
	require.Equal(t, "none, 1 month, 4 months", figures(idle))
	require.Contains(t, idle.Why, "none to 3 months more than planned")
}

// A low value that is the value itself tells no range, and the page says so.
func TestALowValueThatIsNone(t *testing.T) {
	sale := ranges(t, strings.Replace(house, "$300k}", "$300k, low: $300k}", 1))["value.after-repair value"]
	require.Equal(t, "$276,000, $300,000, $315,000", figures(sale))
	require.Contains(t, sale.Why, "the low value is no lower than this one")
}

// What the file says comes out as planned has no range, and neither has what stands for the same.
func TestWhatIsSteadyIsNotAssumed(t *testing.T) {
	all := ranges(t, house+"ranges: {standstill: {spread: none}, late sale: {spread: none}}\n")
	require.Len(t, all, 2)
	require.NotContains(t, all, "time.standstill")
	require.NotContains(t, all, "time.marketing")
}

func TestTheLowValueIsItsOwn(t *testing.T) {
	r := ranges(t, house+"targets: {profit: $5k}\n")["value.after-repair value"]
	require.Equal(t, "$276,000", r.Says(r.Low))
	low := `value: {after-repair value: $300k, low: $280k}`
	r = ranges(t, replace(house, "value: {after-repair value: $300k}", low))["value.after-repair value"]
	require.Equal(t, "$280,000, $300,000, $310,000", figures(r), "half as far above")
}

func TestTheFileStandsInForWhatIsAssumed(t *testing.T) {
	all := ranges(t, house+"ranges: {late sale: {low: 0, high: 2 months}, sale price: {low: $270k, high: $330k, spread: normal}, overrun: {cases: {5%: 1, 10%: 2, 20%: 1}}}\n")
	require.Len(t, all, 4, "standstill alone is assumed")
	require.False(t, all["late sale"].Assumed || all["sale price"].Assumed)
	require.NotContains(t, all, "time.marketing", "late sale says it")
	require.NotContains(t, all, "value.after-repair value", "sale price says it")
	require.Equal(t, "5%, 10%, 20%", figures(all["overrun"]))
	require.Equal(t, 6, all["overrun"].Pos.Line, "where the file says it")
}

func TestWithoutWorksNothingStandsStill(t *testing.T) {
	all := ranges(t, "purchase: {price: $200k}\nvalue: {after-repair value: $300k}\ntime: {marketing: 1 month, escrow: 1 month}\n")
	require.NotContains(t, all, "overrun")
	require.NotContains(t, all, "time.standstill")
}

func TestGuessedSizesWidenTheCost(t *testing.T) {
	rooms := "rooms: {den: {size: 12' x 10', sized: guessed, work: {paint walls: hired}}}\n"
	r := ranges(t, house+rooms)["overrun"]
	require.Equal(t, "-10%, 15%, 50%", figures(r))
	require.Contains(t, r.Why, "guessed")
	require.Equal(t, "-5%, 15%, 45%", figures(ranges(t, house+replace(rooms, "guessed", "paced"))["overrun"]))
}

// Where the file names sold houses and no low value, the value varies as far as they
// scatter.
func TestTheValueVariesAsTheComparablesScatter(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/larkspur-way.yaml")
	require.NoError(t, err)
	d := read(t, string(text))
	sold, ok := d.ValueRange()
	require.True(t, ok)
	r := ranges(t, string(text))["value.after-repair value"]
	require.Equal(t, sold.High.Sub(sold.Low).String(), r.High.Sub(r.Low).String())
	require.Equal(t, r.Plan.String(), r.Likely.String())
	require.Contains(t, r.Why, "comparables")
}

// A range of the contingency says that it is idle, unless the overrun stays as planned.
func TestAContingencyBesideTheOverrunIsIdle(t *testing.T) {
	const deal = `
purchase: {price: $120k}
value: {after-repair value: $190k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: paint, amount: $20k}]}
selling: {agent: 5%}
`
	require.NotEmpty(t, ranges(t, deal+"ranges: {contingency: {low: 5%, high: 25%}}\n")["renovation.contingency"].Idle)
	require.Empty(t, ranges(t, deal+"ranges: {contingency: {low: 5%, high: 25%}, overrun: {spread: none}}\n")["renovation.contingency"].Idle)
}

// A range of the value before work is that of what the house will be worth, so none is assumed
// beside it; beside a stated one it moves nothing.
func TestTheValueBeforeWorkIsTheValue(t *testing.T) {
	const deal = `
purchase: {price: $120k}
value: {before work: $150k}
time: {marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%}
rooms: {den: {size: 10' x 12', options: {fresh: {adds: $20k, work: {paint walls: hired}}}}}
scope: fresh
selling: {agent: 5%}
`
	all := ranges(t, deal+"ranges: {before work: {low: $140k, high: $155k}}\n")
	require.NotContains(t, all, "value.after-repair value")
	require.Empty(t, all["value.before work"].Idle)
	all = ranges(t, deal+"ranges: {before work: {low: $140k, high: $155k}, after-repair value: {low: $150k, high: $180k}}\n")
	require.NotEmpty(t, all["value.before work"].Idle)
	require.NotContains(t, ranges(t, deal+"ranges: {before work: {spread: none}}\n"), "value.after-repair value")
	stated := strings.Replace(deal, "before work: $150k", "before work: $150k, after-repair value: $170k", 1)
	all = ranges(t, stated+"ranges: {before work: {low: $140k, high: $155k}}\n")
	require.Contains(t, all, "value.after-repair value", "which is stated, and so does not follow")
	require.NotEmpty(t, all["value.before work"].Idle)
}

// A value that the file states lifts neither end of what sold houses say, unless it is above
// both, and takes both down by the same share: the range and the low value of a bid go by one rule.
func TestAStatedValueLiftsNoEnd(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/larkspur-way.yaml")
	require.NoError(t, err)
	sold, ok := read(t, string(text)).ValueRange()
	require.True(t, ok)
	for name, by := range map[string]int64{"as they say": 0, "above theirs": 20_000, "above all they say": 200_000, "below theirs": -20_000, "below all they say": -150_000} {
		by := decimal.NewFromInt(by)
		stated := "value: {after-repair value: " + sold.Likely.Add(by).String() + "}\n" + string(text)
		r := ranges(t, stated)["value.after-repair value"]
		share := decimal.Min(sold.Likely.Add(by).Div(sold.Likely), decimal.NewFromInt(1))
		require.Equal(t, sold.Likely.Add(by).String(), r.Likely.String(), name)
		require.InDelta(t, sold.Low.Mul(share).InexactFloat64(), r.Low.InexactFloat64(), 1, name)
		require.InDelta(t, decimal.Max(sold.High.Mul(share), r.Likely).InexactFloat64(), r.High.InexactFloat64(), 3, name)
		want := chance.Scatters
		switch {
		case r.Likely.GreaterThan(sold.High):
			want = chance.ScattersUnder
		case by.IsPositive():
			want = chance.ScattersBelow
		case by.IsNegative():
			want = chance.ScattersAside
		}
		require.Equal(t, want, r.Why, name)
		require.Equal(t, r.Likely.GreaterThan(sold.High), r.High.Equal(r.Likely), name)
		require.Equal(t, r.Low.String(), line(t, read(t, stated), "low_value").String(), name)
		s, err := r.Draws()
		require.NoError(t, err, name)
		require.InDelta(t, r.Low.InexactFloat64(), s.At(-1.2815515655), 200, name)
		require.InDelta(t, r.High.InexactFloat64(), s.At(1.2815515655), 200, name)
	}
}

// line is what a line of the deal comes to.
func line(t *testing.T, d *deal.Deal, name string) decimal.Decimal {
	c := d.Model.Find(d.Root, name)
	v, err := exact.Evaluate(d.Model, c)
	require.NoError(t, err)
	return v.Of(c)
}

// Nothing is drawn that the file would refuse.
func TestDrawsStayWithinWhatTheFileTakes(t *testing.T) {
	for _, r := range ranges(t, replace(house, "marketing: 1 month", "marketing: 0")+"ranges: {loans.1.rate: {low: 0.5%, high: 20%, spread: normal}}\nloans: [{price share: 50%, rate: 9%, interest on: balance}]\n") {
		s, err := r.Draws()
		require.NoError(t, err)
		least, most := s.Ends()
		require.GreaterOrEqual(t, s.At(-6), least)
		if r.Kind == deal.Duration || r.Line == "rate" {
			require.GreaterOrEqual(t, least, 0.0, r.Path)
			require.GreaterOrEqual(t, s.At(-7), 0.0, r.Path)
		}
		require.LessOrEqual(t, s.At(7), most)
	}
}

func TestTies(t *testing.T) {
	ties := func(text string) []chance.Tie {
		d := read(t, house+text)
		all, err := chance.Ranges(d)
		require.NoError(t, err)
		return chance.Ties(d, all)
	}
	usual := ties("")
	require.Len(t, usual, 1)
	require.True(t, usual[0].Assumed)
	require.Equal(t, "0.5", usual[0].Rho.String())
	require.Empty(t, ties("ties: []\n"), "the file says there is none")
	stated := ties("ties: [{between: [overrun, marketing], correlation: -0.2}]\n")
	require.Equal(t, "-0.2", stated[0].Rho.String())
	require.False(t, stated[0].Assumed)
}
