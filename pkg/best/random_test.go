package best_test

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// roomWork is work that suits any inside room of a random house.
var roomWork = []string{
	"paint walls", "paint ceiling", "paint trim", "paint doors", "baseboard", "resilient plank floor", "tile floor", "carpet",
	"strip wall plaster", "hang wall board", "hang ceiling board", "strip carpet", "refinish wood floor", "light fixture", "recessed light",
	"prehung inside door", "strip wallpaper", "electrical rough room", "window casing", "door casing", "storage pod", "temporary power and heat",
	"crown", "casing", "tall baseboard", "closet rod and shelf", "rewire", "panel 200 amp",
}

// inPart is work of which a part may be done: cut from sticks, or on what was not seen.
var inPart = []string{"baseboard", "tall baseboard", "crown", "casing", "rewire"}

var bathWork = []string{"water heater gas", "toilet", "vanity", "exhaust fan", "tile floor", "paint bath walls", "hang bath wall board", "strip wall tile", "tub", "tub rough-in"}

var houseWork = []string{"electrical permit", "lead-safe supplies", "delivery", "asbestos test", "panel 200 amp", "water heater gas", "rewire", "final cleaning", "portable toilet"}

// A drawn house is the text of a deal file with its rooms and their options, and that of its
// own price book.
type drawn struct {
	text  string
	book  string // or ""
	rooms []string
	names [][]string // by room; the first is as it is

	left   bool            // whether the scope leaves a store with work alone as it is
	asides map[string]bool // what choices set aside for what was not seen
}

func pick[T any](t *rapid.T, label string, all ...T) T { return rapid.SampledFrom(all).Draw(t, label) }

// house draws a small deal: every way in which a choice may be more than a sum occurs.
func house(t *rapid.T) drawn {
	d := drawn{asides: map[string]bool{}}
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("deal: drawn")
	line("house: {year built: %d}", pick(t, "year", 1954, 1985, 2001))
	line("purchase: {price: $%dk, closing: {title: $1,800}}", rapid.IntRange(80, 240).Draw(t, "price"))
	switch pick(t, "value", "before", "stated", "lender") {
	case "before":
		line("value: {before work: $%dk, expected discount: 2%%}", rapid.IntRange(90, 300).Draw(t, "before"))
	case "stated":
		line("value: {after-repair value: $%dk}", rapid.IntRange(150, 340).Draw(t, "arv"))
	case "lender":
		line("value: {after-repair value: $%dk, lender's value: $%dk}", rapid.IntRange(150, 340).Draw(t, "arv"), rapid.IntRange(120, 300).Draw(t, "lender"))
	}
	line("time: {lead-in: %d weeks, marketing: %d weeks, escrow: 1 month%s}", rapid.IntRange(0, 5).Draw(t, "lead"), rapid.IntRange(0, 9).Draw(t, "sells"),
		pick(t, "stated", "", "", ", renovation: 3 months"))
	line("labour: {own hours a week: %d, together: %s%s}", rapid.IntRange(8, 50).Draw(t, "pace"), pick(t, "together", "overlapping", "side by side", "one after the other"), pick(t, "waiting", "", "", ", waiting: 0 days", ", waiting: 6 days"))
	if rapid.Bool().Draw(t, "own book") {
		line("own book: mine.yaml")
		d.book = calling(t)
	}
	line("renovation: {contingency: %d%%, spending: %s%s}", pick(t, "contingency", 0, 10, 15), pick(t, "curve", "straight", "front", "back", "s"),
		pick(t, "lines", "", "", ", lines: [{trade: paint, work: inside, materials: $900, own hours: 85}]"))
	line("local prices: {sales tax: %s, materials factor: %s}", pick(t, "tax", "0%", "6.5%"), pick(t, "factor", "100%", "60%", "150%"))
	d.loans(t, line)
	line("holding: {property tax: $4,380/year, insurance: {amount: $2150/year, premium paid ahead: 6 months, insurer keeps at least: 25%%}, utilities: $265/month}")
	line("selling: {commission: 5%%, transfer tax: $0.55 per $500}")
	if rapid.Bool().Draw(t, "partner") && rapid.Bool().Draw(t, "really") {
		line("partner: {share: 40%%, split: 50%%}")
	}
	d.allRooms(t, line)
	if d.left {
		line("scope: {all rooms: way 1, store: as it is}")
	}
	d.text = b.String()
	return d
}

func (d *drawn) loans(t *rapid.T, line func(string, ...any)) {
	n := rapid.IntRange(0, 2).Draw(t, "loans")
	if n > 0 {
		line("loans:")
	}
	for i := range n {
		line("  - name: loan %d", i+1)
		line("    price share: %d%%", pick(t, "share", 70, 85, 90)/(i*5+1))
		if rapid.Bool().Draw(t, "pays work") {
			line("    renovation share: %d%%", pick(t, "work", 50, 100)/(n*n))
			line("    draws: {lag: %d months, retainage: %d%%, fee: $165%s}", pick(t, "lag", 0, 1), pick(t, "kept", 0, 10), pick(t, "least", "", ", at least: $5,000"))
		}
		switch pick(t, "cap", "none", "value", "cost") {
		case "value":
			line("    cap on after-repair value: %d%%", pick(t, "of value", 50, 65, 75))
		case "cost":
			line("    cap on cost: %d%%", pick(t, "of cost", 70, 85))
		}
		line("    rate: 10.75%%")
		line("    points: %d points", pick(t, "points", 0, 2))
		line("    interest on: %s", pick(t, "on", "balance", "commitment"))
		line("    term: 12 months")
	}
}

func (d *drawn) allRooms(t *rapid.T, line func(string, ...any)) {
	n := rapid.IntRange(2, 4).Draw(t, "rooms")
	line("rooms:")
	for i := range n {
		bath := i == 1
		name := fmt.Sprintf("room %d", i+1)
		if bath {
			name = "hall bath"
		}
		line("  %s:", name)
		line("    size: %d%s x %d%s", rapid.IntRange(6, 18).Draw(t, "long"), pick(t, "and", "'", ".33 ft"), rapid.IntRange(6, 14).Draw(t, "wide"), pick(t, "and", "'", ".41 ft"))
		line("    doors: %d", rapid.IntRange(1, 2).Draw(t, "doors"))
		line("    windows: 2 of 3' x 4'")
		line("    outlets: 5")
		line("    lights: 2")
		line("    closets: 5' x 2' 2\"")
		if bath {
			line("    fixed: {tub: 5' x 2' 6\", vanity: 2' 6\" x 1' 9\", toilet: 1}")
		}
		work := roomWork
		if bath {
			work = bathWork
		}
		if d.book != "" && rapid.Bool().Draw(t, "calls") {
			work = slices.Concat(callingWork, calledWork[:pick(t, "named", 0, 0, 2)]) // which then stands for what the room calls for
		}
		d.options(t, line, "    ", name, work, rapid.IntRange(1, pick(t, "most options", 2, 3)).Draw(t, "options"))
	}
	if d.book != "" && rapid.IntRange(0, 3).Draw(t, "sure") == 0 {
		line("  store: {size: 6' x 8', work: {%s: %s}}", pick(t, "sure work", callingWork...), pick(t, "by", "own hands", "hired"))
		d.left = rapid.IntRange(0, 2).Draw(t, "left") == 0
	}
	if d.book != "" || rapid.Bool().Draw(t, "whole house") {
		line("whole house:")
		if d.book != "" {
			d.options(t, line, "  ", "whole house", calledWork, rapid.IntRange(1, 2).Draw(t, "options"))
		} else {
			d.options(t, line, "  ", "whole house", houseWork, 1)
		}
	}
}

func (d *drawn) options(t *rapid.T, line func(string, ...any), pad, room string, work []string, n int) {
	names := []string{"as it is"}
	line("%soptions:", pad)
	for i := range n {
		name := fmt.Sprintf("way %d", i+1)
		names = append(names, name)
		line("%s  %s:", pad, name)
		line("%s    adds: $%d", pad, rapid.IntRange(0, 24).Draw(t, "adds")*500)
		line("%s    work:", pad)
		items := rapid.SliceOfNDistinct(rapid.SampledFrom(work), 1, min(4, len(work)-1), rapid.ID[string]).Draw(t, "work")
		for _, it := range items {
			who := pick(t, "who", "own hands", "own hands", "hired", "$640")
			if slices.Contains(inPart, it) && who != "$640" {
				who = fmt.Sprintf("{by: %s, part: %s}", who, pick(t, "part", "100%", "70%", "30%", "15%"))
			}
			if d.book != "" && room == "whole house" && who != "$640" && rapid.IntRange(0, 2).Draw(t, "two") == 0 {
				who = fmt.Sprintf("{by: %s, count: 2}", who)
			}
			line("%s      %s: %s", pad, it, who)
		}
		if left := pick(t, "without", calledWork...); d.book != "" && room == "whole house" && !slices.Contains(items, left) && rapid.IntRange(0, 2).Draw(t, "leaves") == 0 {
			line("%s    without: [%s]", pad, left)
		}
	}
	d.rooms, d.names = append(d.rooms, room), append(d.names, names)
}

// scope says a choice as a deal file does.
func (d *drawn) scope(choice []int) string {
	parts := make([]string, len(choice))
	for i, o := range choice {
		parts[i] = d.rooms[i] + ": " + d.names[i][o]
	}
	if d.left {
		parts = append(parts, "store: as it is")
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// Work of a book of one's own: what rooms call for by the one is done once for the house, and
// calls for more of it that stands behind.
var (
	callingWork = []string{"call a", "call b", "call c"}
	calledWork  = []string{"once a", "once b", "once c", "once d", "once e", "once f"}
)

// calling draws a price book of work that calls for work on the whole house, which calls for
// more: always or only where it is by own hands, be it of licensed trades. A trade may ask
// far more for it than the many packs cost that some of it takes.
func calling(t *rapid.T) string {
	var b strings.Builder
	b.WriteString("items:\n")
	all := slices.Concat(callingWork, calledWork)
	for i, name := range all {
		var brings []string
		for _, to := range all[max(i+1, len(callingWork)):] {
			if rapid.IntRange(0, 2).Draw(t, "brings") > 0 {
				continue
			}
			house := " in house"
			if i >= len(callingWork) && rapid.IntRange(0, 3).Draw(t, "plain") == 0 {
				house = ""
			}
			brings = append(brings, to+house+pick(t, "if", "", "", " if own hands"))
		}
		if rapid.IntRange(0, 4).Draw(t, "renews") == 0 { // so that nothing is set aside for the old one
			brings = append(brings, pick(t, "new", "panel 200 amp", "water heater gas")+" in house")
		}
		materials := pick(t, "materials", "none", "{contractor bags: {takes: 7, source: drawn}}",
			fmt.Sprintf("{contractor bags: {takes: %d, source: drawn}}", rapid.IntRange(30, 900).Draw(t, "bags")))
		fmt.Fprintf(&b, "  %s: {trade: %s, measure: one, hours: %d each, hired: $%d each, materials: %s, brings: [%s], licence: %s, source: drawn}\n",
			name, []string{"electrical", "plumbing", "trade 2"}[i%3], rapid.IntRange(1, 30).Draw(t, "hours"), rapid.IntRange(2, 90).Draw(t, "hired")*pick(t, "dear", 10, 10, 60), materials, strings.Join(brings, ", "), pick(t, "licence", "no", "no", "yes"))
	}
	if rapid.Bool().Draw(t, "own sticks") { // of which the factor of the place is not for all
		fmt.Fprintf(&b, "products: {primed baseboard 3-1/4 in: {sticks: {8 ft: $%d, 12 ft: starter, 16 ft: starter}}}\n", rapid.IntRange(4, 20).Draw(t, "stick"))
	}
	return strings.ReplaceAll(b.String(), "brings: []", "brings: none")
}
