package report

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// couldBeOwn lists the work that comes hired only with what brings it, in trades in which
// the owner works herself, the dearest first.
func couldBeOwn(a *answer.Answer) []string {
	own := map[string]bool{}
	var hired []*model.Member
	for _, room := range a.Model.Root.In("room") {
		for _, m := range itemsOf(a, room, "") {
			w := a.Deal.Work[m]
			switch {
			case who(a, m) == "own":
				own[w.Item.Trade] = true
			case who(a, m) == "hired" && w.By != "" && !w.Item.Licence && !pricebook.IsPermit(w.Item.Name) && a.Of(m, "labour").IsPositive():
				hired = append(hired, m)
			}
		}
	}
	hired = slices.DeleteFunc(hired, func(m *model.Member) bool { return !own[a.Deal.Work[m].Item.Trade] })
	slices.SortStableFunc(hired, func(x, y *model.Member) int { return a.Of(y, "labour").Cmp(a.Of(x, "labour")) })
	var out []string
	for _, m := range hired {
		out = append(out, fmt.Sprintf("%s in %s (%s of labour)", a.Deal.Work[m].Item.Name, m.Parent.Parent.Label, money(a.Of(m, "labour"))))
	}
	return out
}

// mostOwn is of how much hired work it is said that own hands could do it.
const mostOwn = 3

// brought lists what work brought along, by who brought it.
func brought(p *page, a *answer.Answer) {
	by := map[string][]string{}
	var order []string
	for _, room := range a.Model.Root.In("room") {
		for _, m := range itemsOf(a, room, "") {
			b := a.Deal.Work[m].By
			if b == "" {
				continue
			}
			if by[b] == nil {
				order = append(order, b)
			}
			if name := a.Deal.Work[m].Item.Name; !slices.Contains(by[b], name) {
				by[b] = append(by[b], name)
			}
		}
	}
	if len(order) == 0 {
		return
	}
	p.heading("Brought along, so that nothing is forgotten")
	for _, b := range order {
		p.text("  ", b+" brings "+strings.Join(by[b], ", "))
	}
	p.text("", "What is brought along is done as the work that brings it, by own hands or hired, unless it takes a licensed trade; what several bring, by own hands as soon as one of them is. With a quote, what is not in it comes hired.")
	if could := couldBeOwn(a); len(could) > 0 {
		most := "Hired that way, though you do other work of the trade yourself: "
		if n := len(could); n > mostOwn {
			most = fmt.Sprintf("Hired that way, though you do other work of the trade yourself, the %d largest of %d: ", mostOwn, n)
		}
		p.text("", most+strings.Join(could[:min(mostOwn, len(could))], ", ")+". To do it yourself, name it in the option with   own hands")
	}
	p.text("", "To do without one, name it in the option:   without: ["+by[order[0]][0]+"]")
}

// unlayered says in which rooms a new floor takes nothing up, for the file does not say what
// lies there.
func unlayered(p *page, a *answer.Answer) {
	if rooms := a.Deal.Unlayered; len(rooms) > 0 {
		p.text("", "New floors for which nothing is taken up, as the file does not say what lies there: "+strings.Join(rooms, ", ")+". Say it in the room, from the top down, as   layers: [carpet, vinyl]")
	}
}

// unlisted says of which rooms the house has more than the file lists.
func unlisted(p *page, a *answer.Answer) {
	if rooms := a.Deal.Unlisted; len(rooms) > 0 {
		p.text("", "By   house   it has "+strings.Join(rooms, " and ")+" more than the file lists, for which no work is priced.")
	}
}

// unseen lists what is set aside for what was not seen.
func unseen(p *page, a *answer.Answer) {
	var open []*model.Member
	for _, c := range a.Model.Root.In("check") {
		if a.Of(c, "set_aside").IsPositive() {
			open = append(open, c)
		}
	}
	if len(open) > 0 {
		stillOpen(p, a, open)
	}
	made := a.NewParts()
	if made == "" {
		return
	}
	if len(open) == 0 {
		p.heading("Not seen")
	}
	p.text("", made)
}

// stillOpen lists the parts that were not seen, with what is set aside for each.
func stillOpen(p *page, a *answer.Answer, open []*model.Member) {
	p.heading("Not seen, so something is set aside (likely; least to most)")
	how := "{state: good}" // of a part that the file alone knows
	for _, c := range open {
		p.row(28, "  "+c.Label, fmt.Sprintf("%12s%12s to %s", dollars(a.Of(c, "set_aside")), dollars(a.Of(c, "if_bad_least")), dollars(a.Of(c, "if_bad_most"))))
		for _, k := range pricebook.Checks() {
			if k.Name == c.Label {
				p.text("      ", "look: "+k.Look)
				if c == open[0] {
					how = "good"
				}
			}
		}
	}
	p.text("", strings.TrimSpace("Once seen, say so:   seen: {"+open[0].Label+": "+how+"}   "+sourceOf(open)))
}

// sourceOf says which amounts for parts not seen are none of the file's.
func sourceOf(open []*model.Member) string {
	var book []string
	for _, c := range open {
		if c.Given.Of("if_bad").Key == "" {
			book = append(book, c.Label)
		}
	}
	switch len(book) {
	case 0:
		return ""
	case len(open):
		return "The amounts are common practice, no source."
	}
	return "Those for " + strings.Join(book, ", ") + " are common practice, no source; the others are yours."
}

func duration(p *page, a *answer.Answer) {
	p.heading("How long it takes")
	said := fmt.Sprintf("Own work takes %s at %s hours a week, with errands%s; trades take %s one after the other; waiting %s %s.",
		inWeeks(a.Line("own_weeks")), exactly(a.Line("own_hours_a_week")), ownPace(a), inWeeks(a.Line("crew_weeks")), exactly(a.Line("waiting_days")), plural("day", a.Line("waiting_days")))
	said += fmt.Sprintf(" By that the work takes %s.", months(a.Line("scope_months")))
	if stated := a.Line("renovation"); !stated.Equal(a.Line("scope_months")) {
		said += fmt.Sprintf(" You state %s, which counts.", months(stated))
	} else if more := heldMore(a); len(more) > 0 {
		said += fmt.Sprintf(" Of a quote that holds more (%s), its own work alone takes time here; if the rest takes longer, state the whole as   renovation   under   time.", strings.Join(more, ", "))
	}
	if lines := a.Line("lines_cost"); lines.IsPositive() {
		said += " Of the renovation lines outside of rooms only own hours count; trades there take no time of their own."
	}
	p.text("", said)
}

// heldMore names the work whose quotes hold other work too.
func heldMore(a *answer.Answer) (out []string) {
	for _, room := range a.Model.Root.In("room") {
		for _, m := range itemsOf(a, room, "") {
			if a.Deal.Work[m].HoldsMore {
				out = append(out, m.Label)
			}
		}
	}
	return out
}

// ownPace says how much longer than a trained hand the owner takes, where there is own work of rooms.
func ownPace(a *answer.Answer) string {
	pace := a.Line("own_pace")
	if a.Line("room_own_hours").IsZero() || pace.Equal(decimal.NewFromInt(1)) {
		return ""
	}
	return ", at " + exactly(pace) + " of your hours for one of a trained hand"
}

// bookNotes says where prices come from and which are old.
func bookNotes(p *page, a *answer.Answer) {
	p.heading("Where the figures come from")
	suggested := pricebook.Contingency(a.Deal.YearBuilt, a.Deal.UtilitiesOff)
	if share := a.Line("contingency_share"); share.LessThan(suggested) {
		age := "that"
		if a.Deal.YearBuilt == 0 {
			age = "unknown"
		}
		p.text("", fmt.Sprintf("Your contingency is %s; for a house of %s age %s is suggested (common practice, no source).", percent(share), age, percent(suggested)))
	}
	if guessed := a.Deal.Sized["guessed"]; len(guessed) > 0 {
		p.text("", "Sizes guessed, to be measured: "+strings.Join(guessed, ", ")+".")
	}
	if paced := a.Deal.Sized["paced"]; len(paced) > 0 {
		p.text("", "Sizes paced: "+strings.Join(paced, ", ")+".")
	}
	p.text("", "Prices of the starter book are invented starters of "+pricebook.StarterDate().String()+": put quotes and shelf prices in their place. Hours and yields: ledgerboard prices ITEM shows each with its source.")
}
