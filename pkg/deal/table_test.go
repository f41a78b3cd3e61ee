package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

func TestEveryRowIsComplete(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range deal.Table() {
		require.False(t, seen[f.Path], f.Path)
		seen[f.Path] = true
		require.NotEmpty(t, f.Meaning, f.Path)
		if f.Kind != deal.Group {
			require.NotEmpty(t, f.Example, f.Path)
		}
		require.Equal(t, f.Doubt == "", f.DoubtCode == "", f.Path)
		if f.DoubtCode != "" {
			require.True(t, slices.ContainsFunc(deal.Codes(), func(c deal.Code) bool { return c.Name == f.DoubtCode }), f.Path)
		}
	}
}

// Every input of the model can be given, but for those that have no key of their own.
func TestEveryInputOfTheModelHasAKey(t *testing.T) {
	doc, err := model.Standard()
	require.NoError(t, err)
	fed := map[string]bool{}
	for _, f := range deal.Table() {
		for _, line := range strings.Fields(f.Line) {
			fed[line] = true
		}
	}
	own := []string{ // given through charges, deposits, stages, brackets and the published tax figures
		"fixed", "share", "unit_size", "unit_price", "a_month", "a_quarter", "a_year", "at_sale", "slab", "edge_in", "lower", "upper", "rate",
		"amount", "at_the_table", "tax_method", "wage_base", "earnings_factor", "least_earnings", "social_security_rate", "medicare_rate", "additional_rate", "additional_threshold",
	}
	own = append(own, // given through sizes, walks, openings, the price book and the cut list
		"length", "width", "shared", "height", "low_height", "two_slopes", "closet", "walk_east", "walk_north", "kind", "number",
		"opening_width", "opening_height", "faces", "fitting_length", "fitting_depth", "bath", "bedroom", "plane_length", "plane_width", "roof",
		"chosen", "measure", "called_for", "yields", "of_it", "at_least", "in_quote", "hours_each", "set_up", "takes", "covers", "covers_with", "for_the_job", "along", "use_coats", "waste",
		"drop_height", "drop_run", "roll_wide", "roll_long", "repeat", "half_drop", "trim", "holds", "pack_price", "taxed", "by_the_stick", "sticks", "cut_away",
		"stick_price", "stick_length", "hired_price", "measured", "along_share", "own_labour_price", "own_pack_price", "own_stick_price", "debris_each", "weight_each")
	own = append(own, // given through the year built, sold houses, package comps and the own lines
		"subject_built", "months_before", "location_adjustment", "time_adjustment", "size_adjustment", "lot_adjustment", "bedroom_adjustment", "bath_adjustment",
		"age_adjustment", "condition_adjustment", "garage_adjustment", "style_adjustment", "weight", "may_be_best", "extra_worth", "subject_has_it", "has_it",
		"comps_low_share", "comps_high_share", "options_in_comps")
	stress := []string{"late_sale", "overrun", "extra_work", "market_change", "sale_price"} // moved by questions, not by the file
	for _, l := range doc.Lines {
		if l.Input && !slices.Contains(own, l.Name) && !slices.Contains(stress, l.Name) {
			require.True(t, fed[l.Name], l.ID())
		}
	}
}

const soldExample = "comps: {sold: {12 Elm St: {sold: 2025-11-14, price: $341k}}}\n"

// The example of every row is read in its place without a mistake.
func TestExamplesAreRead(t *testing.T) {
	for _, f := range deal.Table() {
		if f.Example == "" || strings.Contains(f.Path, "<fee>") || strings.HasPrefix(f.Path, "tax.") || strings.HasPrefix(f.Path, "<") || slices.Contains([]string{"own book", "comps.file", "comps.table"}, f.Path) {
			continue
		}
		path := strings.ReplaceAll(f.Path, "[]", ".1")
		base := deal.Starter("examples")
		for _, clash := range []struct{ path, old, new string }{
			{"renovation.lines[].materials", "amount: $9800", "own hours: 1"},
			{"renovation.lines[].labour", "amount: $9800", "own hours: 1"},
			{"loans[].fixed amount", "- name: first loan\n    price share: 85%", "- name: first loan"},
			{"loans[].of remainder", "- name: first loan", "- {fixed amount: $1, rate: 9%, interest on: balance, term: 1 year}\n  - name: first loan"},
			{"loans[].reserve", "- name: first loan", "- name: first loan\n    interest paid: reserve"},
			{"comps.strike", "targets:", soldExample + "targets:"},
			{"comps.add", "targets:", strings.Replace(soldExample, "12 Elm St", "9 Birch Ct", 1) + "targets:"},
			{"comps.columns", "targets:", "comps: {table: \"SALEDT  AMT\"}\ntargets:"},
			{"comps.condition by option", "targets:", "rooms: {hall: {size: 4' x 9', options: {cosmetic: {work: {paint walls: own hands}}, full gut: {work: {paint walls: hired}}}}}\ntargets:"},
			{"house.has", "targets:", "comps: {own lines: {pool: $9,000}}\ntargets:"},
			{"scope", "targets:", "rooms: {hall: {size: 4' x 9', options: {full gut: {work: {paint walls: hired}}}}}\ntargets:"},
			{"ties[].between", "targets:", "ties: [{correlation: 0.5}]\ntargets:"},
			{"ties[].correlation", "targets:", "ties: [{between: [overrun, standstill]}]\ntargets:"},
			{"partner.split", "targets:", "partner: {share: 40%}\ntargets:"},
			{"partner.preferred return", "targets:", "partner: {share: 40%}\ntargets:"},
		} {
			if clash.path == f.Path {
				base = strings.Replace(base, clash.old, clash.new, 1)
				if f.Path == "loans[].of remainder" {
					path = "loans.2.of remainder"
				}
			}
		}
		d, found := deal.Read("a.yaml", []byte(base), deal.Set{Path: path, Value: f.Example})
		require.NotNil(t, d, "%s: %v", f.Path, found)
	}
}

func TestFeeExamplesAreRead(t *testing.T) {
	for _, f := range deal.Table() {
		key, isFee := strings.CutPrefix(f.Path, "<fee>.")
		if !isFee || strings.HasPrefix(key, "tables[]") {
			continue
		}
		where, amount := "holding", "amount: $1,900/year, "
		switch {
		case f.Only == "loan_fee":
			where, amount = "loans: [{price share: 1%, fees", "amount: $5, "
		case key == "of":
			where, amount = "selling", "amount: 1%, "
		case key == "insurer keeps at least":
			amount += "premium paid ahead: 1 year, "
		case slices.Contains([]string{"amount", "brackets", "slabs", "tables"}, key):
			where, amount = "selling", ""
		}
		text := strings.Replace(minimal, "{price: $200k", "{date: 2026-01-01, price: $200k", 1) + where + ": {x: {" + amount + key + ": " + f.Example + "}}"
		if strings.HasPrefix(where, "loans") {
			text += "}]"
		}
		d, found := deal.Read("a.yaml", []byte(text+"\n"))
		require.NotNil(t, d, "%s: %v", text, found)
	}
}

// places are deals around the keys of groups that stand under names of the owner's own; %s is a key
// with its example. A key that needs others about it has a deal of its own.
var places = map[string]string{
	"<room>":               "rooms: {hall bath: {size: 12' x 10', work: {paint walls: own hands}, %s}}",
	"<room>.size":          "rooms: {hall bath: {%s}}",
	"<room>.walls":         "rooms: {hall bath: {%s}}",
	"<room>.doorways":      "rooms: {hall bath: {size: 12' x 10', %s}}",
	"<room>.options":       "rooms: {hall bath: {size: 12' x 10', %s}}",
	"<room>.work":          "rooms: {hall bath: {size: 12' x 10', %s}}",
	"<room>.stairs.treads": "rooms: {stair hall: {size: 12' x 10', stairs: {%s}}}",
	"<room>.stairs":        "rooms: {stair hall: {size: 12' x 10', %s}}",
	"<room>.stairs.":       "rooms: {stair hall: {size: 12' x 10', stairs: {treads: 13, %s}}}",
	"<fixed>":              "rooms: {hall bath: {size: 12' x 10', fixed: {tub: {size: 5' x 2'6\", %s}}}}",
	"<fixed>.size":         "rooms: {hall bath: {size: 12' x 10', fixed: {tub: {%s}}}}",
	"<option>":             "rooms: {hall bath: {size: 12' x 10', options: {cosmetic: {work: {paint walls: own hands}, %s}}}}",
	"<option>.work":        "rooms: {hall bath: {size: 12' x 10', options: {cosmetic: {%s}}}}",
	"<work>":               "rooms: {hall bath: {size: 12' x 10', work: {tile floor: {%s}}}}",
	"<work>.count":         "rooms: {hall bath: {size: 12' x 10', work: {light fixture: {%s}}}}",
	"<work>.item":          "rooms: {hall bath: {size: 12' x 10', work: {our floor: {%s}}}}",
	"<plane>":              "outside: {roof: [{size: 40' x 28', %s}]}",
	"<plane>.size":         "outside: {roof: [{%s}]}",
	"outside.work":         "outside: {%s}",
	"outside.options":      "outside: {%s}",
	"outside.without":      "outside: {deck: 12' x 16', work: {deck frame: hired}, %s}",
	"whole house.work":     "whole house: {%s}",
	"whole house.options":  "whole house: {%s}",
	"whole house.without":  "whole house: {work: {panel 200 amp: hired}, %s}",
	"<trade>":              "labour: {trades: {tile: {%s}}}",
	"<check>":              "rooms: {hall bath: {size: 12' x 10', work: {paint walls: own hands}}}\nseen: {sewer line: {state: not seen, %s}}",
	"<check>.state":        "rooms: {hall bath: {size: 12' x 10', work: {paint walls: own hands}}}\nseen: {sewer line: {%s}}",
	"<comp>":               "comps: {own lines: {pool: $9,000}, sold: {12 Elm St: {sold: 2025-11-14, price: $341k, %s}}}",
	"<comp>.sold":          "comps: {sold: {12 Elm St: {price: $341k, %s}}}",
	"<comp>.price":         "comps: {sold: {12 Elm St: {sold: 2025-11-14, %s}}}",
	"<range>":              "ranges: {overrun: {low: 0%%, high: 50%%, %s}}",
	"<range>.low":          "ranges: {overrun: {high: 50%%, %s}}",
	"<range>.high":         "ranges: {overrun: {low: 0%%, %s}}",
	"<range>.cases":        "ranges: {overrun: {%s}}",
}

// Examples under names of the owner's own are read as well, with all that they name of the price book.
func TestExamplesUnderOwnNamesAreRead(t *testing.T) {
	placed := 0
	for _, f := range deal.Table() {
		group, _, _ := strings.Cut(f.Path, ".")
		place, ok := places[f.Path]
		if under := f.Path[:strings.LastIndexByte(f.Path, '.')+1]; !ok && places[under] != "" {
			place, ok = places[under], true
		}
		if !ok && strings.HasPrefix(group, "<") && group != "<fee>" {
			place = places[group]
			require.NotEmpty(t, place, f.Path)
		}
		if place == "" {
			continue
		}
		placed++
		text := strings.Replace(minimal, "{price: $200k", "{date: 2026-01-01, price: $200k", 1) + strings.Replace(strings.ReplaceAll(place, "%%", "%"), "%s", f.Key()+": "+f.Example, 1) + "\n"
		d, found := deal.Read("a.yaml", []byte(text))
		assert.NotNil(t, d, "%s: %v", text, found)
	}
	require.Greater(t, placed, 60)
}
