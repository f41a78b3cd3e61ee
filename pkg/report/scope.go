package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A View says what of the scope is shown: one room, one trade, the items.
type View struct {
	Room, Trade string
	Items       bool
}

// Scope writes the work: by room and by trade, with hours, what it brought along, and
// what is set aside for what was not seen.
func Scope(w io.Writer, a *answer.Answer, view View, s Style) error {
	p := newPage(w, s)
	p.title(a.Deal.Name + ": the work")
	p.text("", summary(a))
	switch {
	case view.Room != "" || view.Trade != "":
		itemsPage(p, a, view)
		noTrade(p, a, view)
	default:
		roomsTable(p, a)
		tradesTable(p, a)
		if view.Items {
			itemsPage(p, a, view)
		}
		brought(p, a)
		unlayered(p, a)
		unlisted(p, a)
		unseen(p, a)
	}
	duration(p, a)
	bookNotes(p, a)
	if view.Room == "" && view.Trade == "" {
		doubtful(p, a)
		careful(p, a, false, "ledgerboard bid FILE --cautions")
	}
	return p.flush()
}

// noTrade says that no work of the trade asked for is done, and what trades have some: the
// deal may name it in an option that is not taken.
func noTrade(p *page, a *answer.Answer, view View) {
	var has []string
	for _, room := range a.Model.Root.In("room") {
		for _, m := range itemsOf(a, room, "") {
			trade := a.Deal.Work[m].Item.Trade
			if same(trade, view.Trade) {
				return
			}
			if !slices.Contains(has, trade) {
				has = append(has, trade)
			}
		}
	}
	if slices.Sort(has); view.Trade != "" {
		p.text("", "This deal does no work of the trade "+strings.TrimSpace(view.Trade)+"; it has work of: "+strings.Join(has, ", ")+".")
	}
}

func summary(a *answer.Answer) string {
	cash, trades, other := a.Line("budget"), a.Line("trade_cost").Add(a.Line("contingency")), ""
	if !a.Line("own_hours").IsZero() || !cash.Equal(trades) {
		other = ", or " + money(trades) + " if trades finish all of it, the contingency being the same"
	}
	return fmt.Sprintf("The work takes %s in cash with contingency (renovation budget)%s. Own hands: %s; trades: %s.",
		money(cash), other, hours(a.Line("own_hours")), hours(a.Line("room_crew_hours")))
}

func hours(x decimal.Decimal) string   { return quantity.FormatHours(x, 0) }
func count(x decimal.Decimal) string   { return quantity.FormatCount(x, 0) }
func exactly(x decimal.Decimal) string { return quantity.FormatCount(x, 2) }

// roomTail is how the figures of a room stand in its row.
const roomTail = "%6s%10s%13s%7s %8s"

// roomsTable writes a row for each room with work, then the way to the budget.
func roomsTable(p *page, a *answer.Answer) {
	p.heading("By room")
	p.line("%s", p.paint(dim, fmt.Sprintf("%-22s%-13s"+roomTail, "room", "option", "sq ft", "$/sq ft", "cash", "own h", "hired h")))
	for _, room := range a.Model.Root.In("room") {
		cost := a.Of(room, "cash_cost")
		if len(room.In("option")) == 0 {
			if room.Kind == "inside" {
				p.room(room.Label, "as it is", exactly(a.Of(room, "floor_area").Round(0)), "", money(decimal.Decimal{}), "", "")
			}
			continue
		}
		feet, each := "", ""
		if room.Kind == "inside" {
			feet, each = exactly(a.Of(room, "floor_area").Round(0)), money(a.Of(room, "cost_a_foot"))
		}
		p.room(room.Label, optionsOf(room), feet, each, money(cost), count(a.Of(room, "own_hours")), count(a.Of(room, "crew_hours")))
	}
	p.line("")
	for _, l := range []struct{ words, line string }{
		{"the rooms, outside and whole house", "rooms_cost"},
		{"disposal, " + count(a.Line("containers")) + " " + plural("container", a.Line("containers")), "disposal"},
		{"rented by the month, " + months(a.Line("months_of_work")), "rents"},
		{"set aside for what was not seen", "not_seen"},
		{"other lines of the deal file", "lines_cost"},
		{"general lines", "general_cost"},
		{"contingency, " + percent(a.Line("contingency_share")), "contingency"},
		{"renovation budget", "budget"},
	} {
		if x := a.Line(l.line); !x.IsZero() || l.line == "budget" {
			p.line("%-51s%13s", l.words, money(x))
		}
	}
}

// room writes a room's row; its name and option take the columns that are empty, or a
// line of their own.
func (p *page) room(label, option string, figures ...any) {
	tail := fmt.Sprintf(roomTail, figures...)
	left := pad(label, 21) + " " + option
	p.split(left, "", strings.TrimLeft(tail, " "))
}

func optionsOf(room *model.Member) string {
	var names []string
	for _, o := range room.In("option") {
		names = append(names, o.Label)
	}
	return strings.Join(names, ", ")
}

const tradeTail = "%14s%16s%12s%12s"

func tradesTable(p *page, a *answer.Answer) {
	p.heading("By trade")
	p.line("%s", p.paint(dim, fmt.Sprintf("%-26s"+tradeTail, "trade", "cash", "by trades", "own h", "hired h")))
	for _, t := range a.Model.Root.In("trade") {
		if len(t.In("item")) == 0 || a.Of(t, "trade_price").IsZero() && a.Of(t, "own_hours").IsZero() && a.Of(t, "crew_hours").IsZero() {
			continue // nothing there to do it to
		}
		p.row(26, t.Label, fmt.Sprintf(tradeTail, within(a.Of(t, "cash_cost"), 13), within(a.Of(t, "trade_price"), 15), count(a.Of(t, "own_hours")), count(a.Of(t, "crew_hours"))))
	}
	p.line("%-26s"+tradeTail, "all", within(a.Line("rooms_cost"), 13), within(a.Line("rooms_at_trade_price"), 15), count(a.Line("room_own_hours")), count(a.Line("room_crew_hours")))
}

// itemTail is how the right of a row for a piece of work stands.
const itemTail = " %-5s %10s%11s%11s"

// itemsPage writes the pieces of work of a room, a trade, or all of them.
func itemsPage(p *page, a *answer.Answer, view View) {
	for _, room := range a.Model.Root.In("room") {
		if view.Room != "" && !same(room.Label, view.Room) {
			continue
		}
		items := itemsOf(a, room, view.Trade)
		if view.Room != "" && len(room.In("option")) == 0 {
			p.heading(room.Label + ": as it is, nothing is done to it")
			measures(p, a, room)
		}
		if len(items) == 0 {
			continue
		}
		p.heading(fmt.Sprintf("%s: %s", room.Label, optionsOf(room)))
		if view.Room != "" {
			measures(p, a, room)
		}
		if view.Room != "" && room.Kind == "inside" {
			p.text("", fmt.Sprintf("The room costs %s in cash, %s finished by trades.", money(a.Of(room, "cash_cost")), money(a.Of(room, "trade_price"))))
		}
		tail := fmt.Sprintf(itemTail, "who", "materials", "labour", "cash")
		head := "work; + is brought along"
		p.line("%s", p.paint(dim, head+right("quantity", Width-len(head)-len(tail))+tail))
		for _, m := range items {
			w := a.Deal.Work[m]
			mark := "  "
			if w.By != "" {
				mark = "+ "
			}
			p.split(mark+m.Label, howMuch(a, m),
				fmt.Sprintf(itemTail, who(a, m), money(a.Of(m, "materials")), money(a.Of(m, "labour")), money(a.Of(m, "cash_cost"))))
			details(p, a, m)
		}
	}
}

// measures writes what a room inside measures.
func measures(p *page, a *answer.Answer, room *model.Member) {
	if room.Kind != "inside" {
		return
	}
	var parts []string
	for _, m := range []struct{ words, line, unit string }{
		{"floor", "floor_area", "sq ft"}, {"open floor", "open_floor", "sq ft"}, {"ceiling", "ceiling_area", "sq ft"}, {"perimeter", "perimeter", "ft"},
		{"walls", "wall_area", "sq ft"}, {"walls less large openings", "walls_less_large", "sq ft"}, {"wet walls", "wet_walls", "sq ft"},
		{"base run", "base_run", "ft"}, {"casing run", "casing_run", "ft"},
	} {
		if x := a.Of(room, m.line); !x.IsZero() {
			parts = append(parts, m.words+" "+exactly(x)+" "+m.unit)
		}
	}
	switch living, counts := a.Of(room, "living_area"), a.Of(room, "counts_as_living").IsPositive(); {
	case counts && living.LessThan(a.Of(room, "floor_area")):
		parts = append(parts, "counts as living area "+exactly(living)+" sq ft")
	case !counts && room.Kind == "inside":
		parts = append(parts, "does not count as living area")
	}
	p.text("", strings.Join(parts, "; "))
	if slices.ContainsFunc(room.In("section"), slopingCloset) {
		p.text("", "The ceiling is taken to slope in its closets too. Where a closet is level, make it a room of its own.")
	}
}

// slopingCloset reports whether a rectangle of a room is a closet under a slope.
func slopingCloset(m *model.Member) bool {
	_, slopes := m.Given.Look("low_height")
	_, closet := m.Given.Look("closet")
	return slopes && closet
}

func same(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }

func itemsOf(a *answer.Answer, room *model.Member, trade string) []*model.Member {
	var out []*model.Member
	for _, o := range room.In("option") {
		for _, m := range o.In("item") {
			if a.Of(m, "quantity").IsZero() && a.Of(m, "cash_cost").IsZero() {
				continue // brought along, and nothing here to do it to
			}
			if trade == "" || same(a.Deal.Work[m].Item.Trade, trade) {
				out = append(out, m)
			}
		}
	}
	return out
}

func unitWord(u quantity.Unit) string {
	if u == "each" {
		return ""
	}
	return " " + string(u)
}

// howMuch is how much of a piece of work there is. What is rented as long as the work goes on
// has no count of months of its own.
func howMuch(a *answer.Answer, m *model.Member) string {
	n, unit := a.Of(m, "quantity"), a.Deal.Work[m].Item.Unit
	switch {
	case unit == "month" && len(m.In("rental")) > 0:
		return "all months"
	case unit == "month" && !n.Equal(decimal.NewFromInt(1)):
		return exactly(n) + " months"
	}
	return exactly(n) + unitWord(unit)
}

func who(a *answer.Answer, m *model.Member) string {
	given := m.Given
	switch {
	case given.Of("quote_covers").Choice != "":
		return "quote"
	case given.Of("who").Choice == "own":
		return "own"
	}
	return "hired"
}

// details writes what else is to be said of a piece of work.
func details(p *page, a *answer.Answer, m *model.Member) {
	w := a.Deal.Work[m]
	if over := a.Of(m, "quote_over"); !over.IsZero() {
		way := "over"
		if over.IsNegative() {
			way = "under"
		}
		said := fmt.Sprintf("the quote is %s %s what the price book says for this work alone", money(over.Abs()), way)
		if w.From != "" {
			said = w.From + ": " + said
		}
		p.text("      ", said)
	}
	for _, x := range m.In("rental") {
		if a.Of(x, "rent_a_month").IsZero() { // quoted
			continue
		}
		p.text("      ", "rented for "+money(a.Of(x, "rent_a_month"))+" a month; counted with what the rooms share")
	}
	includes := slices.Clone(w.Includes)
	for _, name := range w.IncludesRest {
		includes = append(includes, "the rest of "+name)
	}
	if len(includes) > 0 {
		p.text("      ", "taken to be in the quote: "+strings.Join(includes, ", ")+"; name it as work of its own if it is not")
	}
	if x := a.Of(m, "allowance"); x.IsPositive() {
		p.text("      ", "an allowance of "+money(x)+" instead of "+allowedFor(w))
	}
	if w.Note != "" {
		p.text("      ", w.Note)
	}
}

// allowedFor is what an allowance stands for.
func allowedFor(w *deal.Work) string {
	switch {
	case len(w.Item.Uses) == 0:
		return "materials"
	case w.AllBought:
		return "all that it buys"
	}
	return w.Item.Uses[0].Product
}
