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
var ErrNoTrade = errors.New("no work of that trade")

// bidForm makes the only sheet of a form for bids: quantities and sizes without a price,
// laid out so that it can be read back. Its columns are pricebook.FormColumns.
func (b *book) bidForm() error {
	rows := b.bidRows()
	title1 := "Bid form: the whole job"
	if t := b.how.Trade; t != "" {
		rows = slices.DeleteFunc(rows, func(r bidRow) bool { return !strings.EqualFold(r.trade, strings.TrimSpace(t)) })
		title1 = "Bid form: " + t
	}
	if len(rows) == 0 {
		return fmt.Errorf("%w: %s; there is work of: %s", ErrNoTrade, b.how.Trade, strings.Join(b.trades(), ", "))
	}
	g := b.page(&grid{name: pricebook.FormSheet, wide: true})
	g.set(1, 1, text(title1, look{role: title}))
	g.height(1, titleHeight)
	place := b.answer.Deal.Name
	if a := b.answer.Deal.Address; a != "" {
		place += ", " + a
	}
	g.set(2, 1, text(place, look{role: strong}))
	g.set(3, 1, text("Please fill in the framed cells with plain numbers. Unit price: labour alone, for one unit with all coats. Labour: for the row. Total: labour with the materials that you bring.", look{role: small}))
	for i, words := range []string{pricebook.FormFrom, pricebook.FormDay, "licence no.", "valid until"} {
		g.set(4+i, 1, text(words, look{right: true}))
		g.set(4+i, 2, cell{look: look{role: blank}})
	}
	head := 9
	g.heads = head
	for i, c := range pricebook.FormColumns {
		g.widths = append(g.widths, c.Width)
		g.set(head, i+1, text(c.Name, look{role: heading, wrap: true, right: c.Number, off: !c.Number && i > 3, size: tableSize}))
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
	known := map[string]cell{
		"item": text(r.item, plain), "trade": text(r.trade, plain), "room": text(r.room, plain), "what is done": text(r.work, plain), "unit": text(r.unit, aside),
		"room size": text(r.size, aside), "quantity": {value: near(r.quantity), look: look{size: tableSize, format: plain2}},
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
		rows = append(rows, bidRow{trade: trade, work: work, unit: "job", quantity: one, coats: one})
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

// sizeOf is what a trade wants to know of a room: its sides, its height and its surfaces.
func (b *book) sizeOf(room *model.Member) string {
	var parts []string
	for _, s := range room.In("section") {
		sides := quantity.FormatCount(b.answer.Of(s, "length"), 2) + " x " + quantity.FormatCount(b.answer.Of(s, "width"), 2) + " ft"
		if h := b.answer.Of(s, "height"); h.IsPositive() {
			sides += ", " + quantity.FormatCount(h, 2) + " ft high"
		}
		parts = append(parts, sides)
	}
	for _, m := range []struct{ words, line, unit string }{
		{"floor", "floor_area", "sq ft"}, {"walls", "wall_area", "sq ft"}, {"perimeter", "perimeter", "ft"},
	} {
		if c := b.model.Find(room, m.line); room.Kind == "inside" && c != nil && b.answer.Values.Of(c).IsPositive() {
			parts = append(parts, m.words+" "+quantity.FormatCount(b.answer.Values.Of(c), 1)+" "+m.unit)
		}
	}
	return strings.Join(parts, "; ")
}
