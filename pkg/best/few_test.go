package best_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/best"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// With few choices the time of the work may be one figure or none, so that there is hardly
// a slice of time to look in. The deals are invented.
func TestFewChoices(t *testing.T) {
	for _, rooms := range []string{
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {adds: $5000, work: {paint walls: hired}}}}}",
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {adds: $5000, work: {paint walls: own hands}}}}}",
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {adds: $5000}}}}\nwhole house: {work: {final cleaning: hired}}",
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {adds: $5000}, gut: {adds: $9000, work: {paint walls: hired}}}}}",
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {adds: $5000}}}}",
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {work: {paint walls: hired}}}}}",
		"rooms: {den: {size: 10' x 6', options: {cosmetic: {adds: $5000, work: {paint walls: hired}}}}, hall: {size: 10' x 6', options: {cosmetic: {adds: $5000, work: {paint walls: hired}}}}}",
	} {
		everyChoice(t, "purchase: {price: $148k}\nvalue: {before work: $300k}\ntime: {marketing: 4 weeks}\n"+rooms+"\n")
	}
}

// Where the file says how long is waited, work waits no longer, whatever it would by itself. The deals
// are invented.
func TestWaitingSaidByTheFile(t *testing.T) {
	for _, days := range []string{"0", "1", "12"} {
		for _, rooms := range []string{
			"whole house: {options: {tank: {work: {water heater gas: own hands}}, panel: {adds: $5625, work: {panel 200 amp: hired}}}}",
			"rooms: {den: {size: 10' x 12', options: {light: {adds: $3000, work: {light fixture: {quote: $500, waits: 2 days}}}}}, bath: {size: 8' x 5', options: {light: {adds: $700, work: {light fixture: {quote: $600, waits: 9 days}}}}}}",
		} {
			everyChoice(t, "purchase: {price: $99k}\nvalue: {after-repair value: $192k}\ntime: {escrow: 52 days}\nlabour: {waiting: "+days+" days}\n"+rooms+"\n")
		}
	}
}

// What comes along with work may wait, though the work itself takes no time. The deal is invented.
func TestOnlyWhatComesAlongWaits(t *testing.T) {
	everyChoice(t, `purchase: {price: $99k}
house: {year built: 1985}
value: {after-repair value: $192k}
time: {escrow: 52 days}
whole house:
  options:
    panel: {adds: $5625, work: {panel 200 amp: hired}}
    hazard: {adds: $9600, work: {hazard removal: {by: hired, waits: 0 days}}, without: [clearance test]}
`)
}

// Work that yields to the same done otherwise may take seconds. The deal and its price book are invented.
func TestWorkOfSeconds(t *testing.T) {
	const book = `items:
  zz one: {trade: general, measure: one, hours: 0 each, hired: $40 each, materials: none, brings: [zz two in house], source: invented}
  zz two: {trade: general, measure: one, hours: 0.01 each, hired: $90 each, materials: none, brings: none, source: invented}
`
	for _, crew := range []string{"crew: 9, hours a week: 168", "crew: 7, hours a week: 40", "crew: 5, hours a week: 40"} {
		everyChoiceOf(t, `own book: zz.yaml
purchase: {price: $120k}
value: {after-repair value: $192k}
time: {escrow: 16 days}
labour: {trades: {general: {`+crew+`}}}
whole house:
  options:
    a: {adds: $2000, work: {zz one: own hands}}
    b: {adds: $3000, work: {zz one: hired}}
`, book)
	}
}

// everyChoice holds what is found best and second against all choices.
func everyChoice(t *testing.T, text string) { everyChoiceOf(t, text, "") }

func everyChoiceOf(t *testing.T, text, book string) {
	d, found := deal.ReadWith(deal.Options{AllOptions: true, Open: func(string) ([]byte, error) { return []byte(book), nil }}, "few.yaml", []byte(text))
	require.Empty(t, found.Errors())
	h, err := best.New(d)
	require.NoError(t, err, text)
	f, err := h.Find(best.Limits{})
	require.NoError(t, err, text)
	require.True(t, f.Proved && f.SecondProved, text)
	n := 1
	for _, r := range h.Rooms {
		n *= len(r.Options)
	}
	var all []*best.Choice
	for i := range n {
		choice, rest := make([]int, len(h.Rooms)), i
		for k, r := range h.Rooms {
			choice[k], rest = rest%len(r.Options), rest/len(r.Options)
		}
		c, err := h.At(choice)
		require.NoError(t, err)
		all = append(all, c)
	}
	slices.SortStableFunc(all, func(a, b *best.Choice) int { return b.Profit.Cmp(a.Profit) })
	require.NotNil(t, f.Best, text)
	require.NotNil(t, f.RunnerUp, text)
	require.Equal(t, all[0].Profit.String(), f.Best.Profit.String(), text)
	require.Equal(t, all[1].Profit.String(), f.RunnerUp.Profit.String(), text)
}

// What the whole house plans itself is done as it says, whatever rooms would call for: as
// it is, nobody brings what own work with lead would.
func TestWholeHousePlansWhatRoomsCallFor(t *testing.T) {
	text := `purchase: {price: $148k}
value: {after-repair value: $314k}
time: {marketing: 4 weeks}
rooms:
  den: {size: 10' x 6', options: {cosmetic: {adds: $400, work: {paint walls: own hands}}}}
whole house: {work: {lead-safe supplies: hired, rewire: own hands}}
`
	h, err := best.New(opened(t, text))
	require.NoError(t, err)
	for i, scope := range []string{"as it is", "cosmetic"} {
		x, found := deal.Read("den.yaml", []byte(text), deal.Set{Path: "scope", Value: "{den: " + scope + "}"})
		require.Empty(t, found.Errors())
		v, err := exact.Evaluate(x.Model)
		require.NoError(t, err)
		c, err := h.At([]int{i})
		require.NoError(t, err)
		require.Equal(t, v.Of(x.Model.Find(x.Root, "owner_profit")).String(), c.Profit.String(), scope)
	}
}

// Work that two options call for is borne by the one that calls for it alone: here with far
// more packs than either bears a share of. The deal is invented.
func TestOneBearsAllThatOthersWouldShare(t *testing.T) {
	x, found := deal.ReadWith(deal.Options{AllOptions: true, Open: func(string) ([]byte, error) {
		return []byte(`items:
  other: {trade: two, measure: one, hours: 1 each, hired: $200 each, materials: none, brings: none, source: invented}
  first: {trade: one, measure: one, hours: 1 each, hired: $50 each, materials: none, brings: [second in house], source: invented}
  second: {trade: one, measure: one, hours: 1 each, hired: $6 each, materials: none, brings: [third in house], source: invented}
  third: {trade: two, measure: one, hours: 85 each, hired: $3087 each, materials: {contractor bags: {takes: 400, source: invented}}, brings: none, source: invented}
`), nil
	}}, "hall.yaml", []byte(`purchase: {price: $150k}
own book: mine.yaml
value: {before work: $250k}
time: {marketing: 1 month, renovation: 2 months}
renovation: {contingency: 0%}
scope: {hall: a, whole house: a}
rooms:
  hall: {size: 14' x 25', options: {a: {adds: $11760, work: {other: {quote: $1967}}}, b: {adds: $5315, work: {first: own hands}}}}
whole house: {options: {a: {adds: $900, work: {first: own hands}}}}
`))
	require.Empty(t, found.Errors())
	h, err := best.New(x)
	require.NoError(t, err)
	f, err := h.Find(best.Limits{})
	require.NoError(t, err)
	require.Equal(t, []int{1, 1}, f.Best.Options)
	require.True(t, f.ByBounds && f.Proved)
}

// What an option of the whole house brings by its count stands, whatever rooms would call for of it.
func TestWholeHouseBringsByItsCount(t *testing.T) {
	const text = `own book: mine.yaml
purchase: {price: $152k}
value: {before work: $154k}
time: {marketing: 5 weeks, escrow: 1 month, renovation: 3 months}
rooms:
  den: {size: 23' x 15', options: {mid: {adds: $0, work: {our plumber: hired}}}}
whole house:
  options:
    light: {adds: $100, work: {final cleaning: own hands}}
    mid: {adds: $22600, work: {water heater gas: {by: hired, count: 2}, our plumber: hired}}
`
	const book = `items:
  our plumber: {trade: plumbing, measure: one, hours: none, hired: $250 each, materials: none, brings: [water heater gas in house], source: invented}
`
	everyChoiceOf(t, text, book)
	asReadAnew(t, text, book, []string{"light", "mid"})
}

// A quote of the whole house holds what makes a part new also where the den would call for that.
func TestWholeHouseQuoteHoldsWhatTheDenWouldCallFor(t *testing.T) {
	const text = `own book: mine.yaml
purchase: {price: $134k}
value: {before work: $189k}
time: {marketing: 5 weeks}
rooms:
  den: {size: 14' x 23', options: {mid: {adds: $3500, work: {our plumber: hired}}}}
whole house: {options: {light: {adds: $24700, work: {our plumber: {quote: $1357}}}}}
`
	const book = `items:
  our plumber: {trade: plumbing, measure: one, hours: none, hired: $250 each, materials: none, brings: [sewer line replaced in house], source: invented}
`
	everyChoiceOf(t, text, book)
	asReadAnew(t, text, book, []string{"light"})
}

// asReadAnew holds the budget of each choice of a den and the whole house against the file read with it.
func asReadAnew(t *testing.T, text, book string, houses []string) {
	t.Helper()
	open := deal.Options{Open: func(string) ([]byte, error) { return []byte(book), nil }}
	all := open
	all.AllOptions = true
	d, found := deal.ReadWith(all, "den.yaml", []byte(text))
	require.Empty(t, found.Errors())
	h, err := best.New(d)
	require.NoError(t, err)
	for i, den := range []string{deal.AsItIs, "mid"} {
		for k, house := range append([]string{deal.AsItIs}, houses...) {
			x, found := deal.ReadWith(open, "den.yaml", []byte(text), deal.Set{Path: "scope", Value: "{den: " + den + ", whole house: " + house + "}"})
			require.Empty(t, found.Errors())
			v, err := exact.Evaluate(x.Model)
			require.NoError(t, err)
			c, err := h.At([]int{i, k})
			require.NoError(t, err)
			require.Equal(t, v.Of(x.Model.Find(x.Root, "budget")).String(), c.Budget.String(), "%s, %s", den, house)
		}
	}
}
