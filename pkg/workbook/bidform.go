package workbook

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A bidRow is a piece of work that somebody is asked to bid on.
type bidRow struct {
	item, trade, room, work, unit, size string
	quantity, coats                     decimal.Decimal
}

// ErrNoTrade is wrapped where a deal has no work of the trade that a form is for.
var ErrNoTrade = errors.New("no form")

// bidForm makes the only sheet of a form for bids: quantities and sizes without a price,
// laid out so that it can be read back. Its columns are pricebook.FormColumns.
func (b *book) bidForm() error {
	rows := b.bidRows()
	title1 := "Bid form: the whole job"
	if t := b.how.Trade; t != "" {
		rows = slices.DeleteFunc(rows, func(r bidRow) bool { return !strings.EqualFold(r.trade, strings.TrimSpace(t)) })
		title1 = "Bid form: " + t
	}
	switch {
	case len(b.trades()) == 0:
		return fmt.Errorf("%w: the deal names no work to bid on", ErrNoTrade)
	case len(rows) == 0:
		return fmt.Errorf("%w: there is no work of %s; there is work of: %s", ErrNoTrade, b.how.Trade, strings.Join(b.trades(), ", "))
	}
	g := b.page(&grid{name: pricebook.FormSheet, wide: true})
	g.set(1, 1, text(title1, look{role: title}))
	g.height(1, titleHeight)
	place := b.answer.Deal.Name
	if a := b.answer.Deal.Address; a != "" {
		place += ", " + a
	}
	g.set(2, 1, text(place, look{role: strong}))
	for _, c := range pricebook.FormColumns {
		g.widths = append(g.widths, c.Width)
	}
	g.paragraph(3, 1, len(g.widths), "Please fill in the framed cells with plain numbers. Each row that you bid on needs the unit price (labour alone, for one unit with all coats) or the labour of the row. The total, labour with the materials that you bring, of standard grade where none is named, is welcome beside it; alone, no price can be read from it. In brackets stands what is not meant to be bid on as it is planned; a price is welcome all the same.", look{role: small})
	for i, words := range []string{pricebook.FormFrom, pricebook.FormDay, pricebook.FormLicence, pricebook.FormUntil} {
		g.set(4+i, 1, text(words, look{right: true}))
		g.set(4+i, 2, cell{look: look{role: blank}})
	}
	head := 9
	g.heads = head
	for i, c := range pricebook.FormColumns {
		g.set(head, i+1, text(c.Name, look{role: heading, wrap: true, right: c.Number, off: !c.Number && i > 3 || c.Name == "trade", size: tableSize}))
	}
	room := ""
	for _, r := range rows {
		if r.room == room {
			r.size = "" // said above
		}
		room = r.room
		b.bid(g, r)
	}
	return nil
}

func (b *book) bid(g *grid, r bidRow) {
	row, plain, aside := g.next(), look{size: tableSize, wrap: true}, look{size: tableSize, wrap: true, off: true}
	much := twoPlace
	if r.quantity.IsInteger() {
		much = whole
	}
	known := map[string]cell{
		"item": text(r.item, plain), "trade": text(r.trade, aside), "room": text(r.room, plain), "what is done": text(r.work, plain), "unit": text(r.unit, aside),
		"room size": text(r.size, aside), "quantity": {value: near(r.quantity), look: look{size: tableSize, format: much}},
		"coats": {value: near(r.coats), look: look{size: tableSize, format: whole}},
	}
	for i, c := range pricebook.FormColumns {
		out, is := known[c.Name]
		if !is {
			out = cell{look: look{size: tableSize, role: blank, wrap: !c.Number}}
			if c.Number {
				out.look.format = cents
			}
		}
		g.set(row, i+1, out)
	}
}

// bidRows are all pieces of work of the deal in its order.
func (b *book) bidRows() (rows []bidRow) {
	root := b.model.Root
	for _, m := range root.In("cost") {
		trade, work, found := strings.Cut(m.Label, ": ")
		if !found {
			trade, work = "", m.Label
		}
		rows = append(rows, bidRow{trade: trade, work: work + b.byOwner(m), unit: "job", quantity: one, coats: one})
	}
	for _, room := range root.In("room") {
		size := b.sizeOf(room)
		for _, option := range room.In("option") {
			for _, m := range option.In("item") {
				much := b.answer.Of(m, "quantity")
				if much.IsZero() {
					continue
				}
				w := b.answer.Deal.Work[m]
				work := described(w.Item, b.grade(m))
				if w.Note != "" {
					work += " (" + w.Note + ")"
				}
				work += planned(m)
				rows = append(rows, bidRow{item: w.Item.Name, trade: w.Item.Trade, room: room.Label, work: work, unit: string(w.Item.Unit), size: size, quantity: much.Round(2), coats: b.answer.Of(m, "coats")})
			}
		}
	}
	return rows
}

// trades are those that there is work of.
func (b *book) trades() (names []string) {
	for _, r := range b.bidRows() {
		if r.trade != "" && !slices.Contains(names, r.trade) {
			names = append(names, r.trade)
		}
	}
	slices.Sort(names)
	return names
}

// sizeOf is what a trade wants to know of a room: its sides, its height and how its ceiling
// slopes, and its surfaces; of a roof its plan and its pitch.
func (b *book) sizeOf(room *model.Member) string {
	var parts []string
	for _, s := range room.In("section") {
		of := func(line string) decimal.Decimal { return b.answer.Of(s, line) }
		sides := feet(of("length")) + " x " + feet(of("width"))
		switch low, high := of("low_height"), of("height"); {
		case low.LessThan(high) && of("two_slopes").IsPositive():
			sides += ", ceiling " + feet(low) + " to " + feet(high) + ", sloping to both long sides"
		case low.LessThan(high):
			sides += ", ceiling " + feet(low) + " to " + feet(high) + ", sloping across the width"
		case high.IsPositive():
			sides += ", " + feet(high) + " high"
		}
		parts = append(parts, sides)
	}
	parts = append(parts, b.walk(room)...)
	for _, p := range room.In("plane") {
		of := func(line string) decimal.Decimal { return b.answer.Of(p, line) }
		plan := "roof " + feet(of("plane_length")) + " x " + feet(of("plane_width")) + " in plan, pitch " + quantity.FormatCount(of("pitch").Mul(decimal.NewFromInt(12)), 2) + "/12"
		if over := of("overhang"); over.IsPositive() {
			plan += ", overhang " + feet(over)
		}
		parts = append(parts, plan)
	}
	for _, m := range []struct{ kind, words, line, unit string }{
		{"inside", "floor", "floor_area", "sq ft"}, {"inside", "ceiling", "ceiling_area", "sq ft"}, {"inside", "walls", "wall_area", "sq ft"}, {"inside", "perimeter", "perimeter", "ft"},
		{"outside", "roof along its slope", "roof", "sq ft"}, {"outside", "around the house", "foundation_run", "ft"},
	} {
		if room.Kind != m.kind {
			continue
		}
		if x := b.answer.Of(room, m.line); x.IsPositive() && (m.words != "ceiling" || !x.Equal(b.answer.Of(room, "floor_area"))) {
			parts = append(parts, m.words+" "+quantity.FormatCount(x, 1)+" "+m.unit)
		}
	}
	return strings.Join(parts, "; ")
}

// walk is what the walls of a room are that was measured around them, if it was.
func (b *book) walk(room *model.Member) []string {
	legs := room.In("leg")
	if len(legs) == 0 {
		return nil
	}
	walls := make([]string, len(legs))
	for i, l := range legs {
		walls[i] = feet(b.answer.Of(l, "leg_length"))
	}
	return []string{"walls in order " + strings.Join(walls, ", ") + ", " + feet(b.answer.Of(room, "room_ceiling")) + " high"}
}

func feet(x decimal.Decimal) string { return quantity.Feet(x).String() }

// byOwner says of a line of the deal file that own hands are to do it, or a part of it.
func (b *book) byOwner(m *model.Member) string {
	switch {
	case !b.answer.Of(m, "own_hours").IsPositive():
		return ""
	case b.answer.Of(m, "labour").IsPositive():
		return pricebook.FormPartOwner
	}
	return pricebook.FormByOwner
}

// planned says of a piece of work that it may need no bid.
func planned(m *model.Member) string {
	switch covers := m.Given.Of("quote_covers").Choice; {
	case covers == "all":
		return " [there is a quote]"
	case covers == "labour":
		return " [there is a quote for its labour]"
	case m.Given.Of("who").Choice == "own":
		return pricebook.FormByOwner
	}
	return ""
}
