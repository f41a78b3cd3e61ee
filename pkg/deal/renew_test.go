package deal_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// asideOf is what a deal with these keys sets aside for a part of the house, with a year of 1954.
func asideOf(t *testing.T, part, keys string, house ...string) string {
	t.Helper()
	d, found := deal.Read("a.yaml", []byte(walked+"house: {"+strings.Join(append(house, "year built: 1954"), ", ")+"}\nrooms:\n  den: {size: 20' x 40', work: {paint walls: hired}}\n"+keys))
	require.False(t, found.HasErrors(), "%s: %v", keys, found)
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	for _, c := range d.Root.In("check") {
		if c.Label == part {
			return v.Of(d.Model.Find(c, "set_aside")).String()
		}
	}
	return "none"
}

// Nothing is set aside for what work makes new, whoever does it and at whatever price; a part
// of it, or a mend, leaves all of what is set aside.
func TestNothingIsSetAsideForWhatIsMadeNew(t *testing.T) {
	for _, c := range []struct{ part, work, want string }{
		{"wiring", "final cleaning: hired", "2800"},
		{"wiring", "rewire: hired", "0"},
		{"wiring", "rewire: {quote: $9000}", "0"},
		{"wiring", "rewire: {by: hired, count: 800 sq ft}", "0"},
		{"wiring", "rewire: {by: hired, part: 60%}", "2800"},
		{"wiring", "rewire: {by: hired, count: 500 sq ft}", "2800"},
		{"wiring", "old wiring made safe: hired", "2800"},
		{"heating", "heat pump: hired", "0"},
		{"electrical panel", "service upgrade: hired", "0"}, // which brings it
		{"electrical panel", "service upgrade: {quote: $5200}", "0"},
		{"chimney", "chimney liner: hired", "1500"},
		{"foundation", "foundation piers: hired", "3200"},
	} {
		require.Equal(t, c.want, asideOf(t, c.part, "whole house: {work: {"+c.work+"}}\n"), c.work)
	}
	require.Equal(t, "0", asideOf(t, "water heater", "  cellar: {size: 10' x 9', work: {water heater gas: hired}}\n"))
	require.Equal(t, "0", asideOf(t, "wiring", "whole house: {work: {rewire: hired}}\nseen: {wiring: {state: not seen, likely: $5k}}\n"))
	halves := "  cellar: {size: 10' x 9', work: {rewire: {by: hired, part: 40%}}}\nwhole house: {work: {rewire: {by: hired, part: 60%}}}\n"
	require.Equal(t, "0", asideOf(t, "wiring", halves))
}

// Work by the floor for the few rooms that a file lists is not for all of the house.
func TestAFloorOfAFewRoomsIsNotAll(t *testing.T) {
	for work, want := range map[string]string{
		"rewire: hired":                            "2800", // of 800 sq ft
		"rewire: {by: hired, count: 1900 sq ft}":   "0",
		"rewire: {by: hired, count: 700 sq ft}":    "2800",
		"rewire: {quote: $9000}":                   "0", // which is for the house
		"rewire: {quote: $9000, count: 700 sq ft}": "2800",
	} {
		require.Equal(t, want, asideOf(t, "wiring", "whole house: {work: {"+work+"}}\n", "living area: 1900 sq ft"), work)
	}
	require.Equal(t, "0", asideOf(t, "wiring", "whole house: {work: {rewire: hired}}\n", "living area: 950 sq ft"))
}

// Work of an own book by the floor of the house, brought once for the house, is read and priced; what
// makes a part new does so by whatever it is brought.
func TestWorkByTheFloorBroughtForTheHouse(t *testing.T) {
	const items = `
  our board: {trade: electrical, measure: one, hours: 1 each, hired: $900 each, materials: none, brings: [our wires in house, panel 200 amp in house], source: invented}
  our wires: {trade: electrical, measure: house finished floor, hours: none, hired: $8 per sq ft, materials: none, brings: none, source: invented}
`
	d := ownBook(t, deal.Options{}, items, "rooms: {den: {size: 20' x 40', work: {our board: hired}}}\n")
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	require.Equal(t, "800", v.Of(d.Model.Find(d.Root.In("whole_house")[0].In("option")[0].In("item")[0], "quantity")).String())
	for _, c := range d.Root.In("check") {
		require.Equal(t, c.Label == "electrical panel", !v.Of(d.Model.Find(c, "made_new")).IsZero(), c.Label)
	}
}

// Of two options the one alone that makes a part new has nothing set aside for it.
func TestWhatIsSetAsideGoesByTheOption(t *testing.T) {
	const options = "whole house: {options: {light: {adds: $0, work: {final cleaning: hired}}, full: {adds: $9k, work: {rewire: hired}}}}\n"
	require.Equal(t, "2800", asideOf(t, "wiring", options+"scope: light\n"))
	require.Equal(t, "0", asideOf(t, "wiring", options+"scope: full\n"))
}

// A quote holds none of what the house has called for, so that the two do not make a part new
// together; each alone does as far as it goes.
func TestAQuoteMakesNothingNewOfWhatTheHouseCallsFor(t *testing.T) {
	const items = `
  rewire: {brings: none}
  caller: {trade: electrical, measure: one, hours: none, hired: $250 each, materials: none, brings: [rewire in house], source: x}
  opener: {trade: electrical, measure: house finished floor, hours: none, hired: $1 per sq ft, materials: none, brings: [rewire], source: x}
`
	for scope, want := range map[string]string{
		"{den: mid, whole house: light}":         "0.53667", // 322 of 600 sq ft
		"{den: as it is, whole house: light}":    "0.5",     // 300 of them
		"{den: mid, whole house: as it is}":      "0.53667",
		"{den: as it is, whole house: as it is}": "0",
	} {
		for _, all := range []bool{false, true} {
			d := ownBook(t, deal.Options{AllOptions: all}, items, `
house: {year built: 1954, living area: 1000 sq ft}
rooms: {den: {size: 14' x 23', options: {mid: {adds: $0, work: {caller: hired}}}}}
whole house: {options: {light: {adds: $0, work: {opener: {quote: $1357, count: 300 sq ft}}}}}
scope: `+scope+"\n")
			v, err := exact.Evaluate(d.Model)
			require.NoError(t, err)
			for _, c := range d.Root.In("check") {
				if c.Label != "wiring" {
					continue
				}
				var made decimal.Decimal
				for _, x := range c.In("renewal") {
					made = made.Add(v.Of(d.Model.Find(x, "renewed")))
				}
				require.Equal(t, want, made.Round(5).String(), "%s, all options kept: %v", scope, all)
				require.True(t, v.Of(d.Model.Find(c, "made_new")).IsZero(), scope)
			}
		}
	}
}

// What a quote holds beside other work of the plan is told as a share of all there is: half of the
// house by each makes all of it new, and a third and a half do not.
func TestAQuoteMakesNewWhatOtherWorkLeavesOfIt(t *testing.T) {
	const items = `
  rewire: {brings: none}
  elder: {trade: carpentry, measure: house finished floor, hours: none, hired: $1 per sq ft, materials: none, brings: [rewire], source: x}
  opener: {trade: electrical, measure: house finished floor, hours: none, hired: $1 per sq ft, materials: none, brings: [rewire], source: x}
`
	for work, want := range map[string]string{
		"elder: {by: hired, part: 50%}, opener: {quote: $1357, part: 50%}":        "1",
		"elder: {by: hired, part: 30%}, opener: {quote: $1357, part: 50%}":        "0.8",
		"elder: {by: hired, count: 150 sq ft}, opener: {quote: $1357, part: 50%}": "0.75",
		"elder: {by: hired, part: 50%}, opener: {quote: $1357, count: 240 sq ft}": "0.9",
		"elder: {by: hired, part: 50%}, opener: {by: hired, count: 240 sq ft}":    "0.9",
		"elder: {by: hired, part: 50%}, opener: {quote: $1357, count: 500 sq ft}": "1",
		"elder: {by: hired, part: 30%}, opener: {quote: $1357}":                   "1",
		"elder: {by: hired}, opener: {quote: $1357, count: 240 sq ft}":            "1",
	} {
		d := ownBook(t, deal.Options{}, items, "house: {year built: 1954}\nrooms: {den: {size: 25' x 24', work: {paint walls: hired}}}\nwhole house: {work: {"+work+"}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		var made decimal.Decimal
		for _, c := range d.Root.In("check") {
			for _, x := range c.In("renewal") {
				if c.Label == "wiring" {
					made = made.Add(v.Of(d.Model.Find(x, "renewed")))
				}
			}
		}
		require.Equal(t, want, made.Round(5).String(), work)
	}
}

// A quote is for the house, whatever rooms are listed: with other work it makes new what that leaves.
func TestAQuoteBesideOtherWorkIsForTheHouse(t *testing.T) {
	const items = `
  rewire: {brings: none}
  elder: {trade: carpentry, measure: house finished floor, hours: none, hired: $1 per sq ft, materials: none, brings: [rewire], source: x}
  opener: {trade: electrical, measure: house finished floor, hours: none, hired: $1 per sq ft, materials: none, brings: [rewire], source: x}
`
	for work, want := range map[string]bool{
		"opener: {quote: $1357}":                                                  true,
		"opener: {quote: $1357}, elder: hired":                                    true,
		"opener: {quote: $1357}, elder: {by: hired, part: 30%}":                   true,
		"opener: {quote: $1357, part: 50%}, elder: {by: hired, part: 30%}":        false,
		"opener: {quote: $1357, count: 300 sq ft}, elder: {by: hired, part: 30%}": false,
		"elder: hired": false, // of the rooms that are listed
	} {
		d := ownBook(t, deal.Options{}, items, "house: {year built: 1954, living area: 1000 sq ft}\nrooms: {den: {size: 14' x 23', work: {paint walls: hired}}}\nwhole house: {work: {"+work+"}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		for _, c := range d.Root.In("check") {
			if c.Label == "wiring" {
				require.Equal(t, want, !v.Of(d.Model.Find(c, "made_new")).IsZero(), work)
			}
		}
	}
}
