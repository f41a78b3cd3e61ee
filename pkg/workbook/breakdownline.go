package workbook

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// A workLine is a line of the breakdown.
type workLine struct {
	kind
	room, work, unit   string
	who, dated, permit string
	quantity           *model.Cell // nil: one
	each               *model.Cell // nil: the total
	materials, labour  []*model.Cell
	oneSum             bool // materials and labour are not told apart
	total, pays        *model.Cell
}

// workLines are the lines of the breakdown without the contingency, in the order of the
// deal, and the totals of what comes to nothing as planned.
func (b *book) workLines() (lines []workLine, idle []*model.Cell) {
	root := b.model.Root
	for _, m := range root.In("cost") {
		lines = append(lines, b.statedLine(m))
	}
	for _, room := range root.In("room") {
		for _, option := range room.In("option") {
			for _, m := range option.In("item") {
				total := b.model.Find(m, "trade_price")
				if b.answer.Of(m, "quantity").IsZero() && b.answer.Values.Of(total).IsZero() {
					idle = append(idle, total)
					continue
				}
				lines = append(lines, b.pricedLine(room, m))
			}
		}
	}
	for _, m := range root.In("check") {
		total := b.model.Find(m, "set_aside")
		if b.answer.Values.Of(total).IsZero() {
			idle = append(idle, total)
			continue
		}
		lines = append(lines, b.sumLine(m, kindOf(m.Label), "set aside: "+m.Label+", not seen", "set_aside"))
	}
	for _, m := range root.In("general_fee") {
		lines = append(lines, b.sumLine(m, kindOf(m.Label), m.Label, "amount"))
	}
	if b.answer.Line("disposal").IsPositive() {
		l := b.sumLine(root, kind{"Cleanup", "F2010"}, "containers for debris", "disposal")
		l.quantity, l.unit, l.each = b.model.Find(root, "containers"), "each", b.model.Find(root, "container_price")
		l.pays, l.oneSum = b.model.Find(root, "lenders_pay_disposal"), false
		lines = append(lines, l)
	}
	return lines, idle
}

// sumLine is a line of one amount.
func (b *book) sumLine(m *model.Member, k kind, work, total string) workLine {
	return workLine{kind: k, work: work, unit: "job", oneSum: true, total: b.model.Find(m, total), pays: b.model.Find(m, "lender_pays")}
}

// statedLine is a line of the renovation as the deal file states it.
func (b *book) statedLine(m *model.Member) workLine {
	l := b.sumLine(m, kindOf(m.Label), m.Label, "trade_price")
	l.oneSum = b.answer.Of(m, "lump").IsPositive()
	if !l.oneSum {
		l.materials = b.cellsOf(m, "materials")
		l.labour = b.cellsOf(m, "labour", "own_labour")
	}
	own, paid := b.answer.Of(m, "own_hours").IsPositive(), !b.answer.Of(m, "labour").Add(b.answer.Of(m, "lump")).IsZero()
	switch trade, _, found := strings.Cut(m.Label, ": "); {
	case own && paid:
		l.who = "trade and own hands"
	case own:
		l.who = "own hands"
	case found && paid:
		l.who = trade
	}
	return l
}

// pricedLine is a piece of work out of the price book.
func (b *book) pricedLine(room, m *model.Member) workLine {
	w := b.answer.Deal.Work[m]
	covers, own := m.Given.Of("quote_covers").Choice, m.Given.Of("who").Choice == "own"
	l := workLine{
		kind: kindIn(w.Item), room: room.Label, work: described(w.Item, b.grade(m)), unit: string(w.Item.Unit), permit: "no",
		quantity: b.model.Find(m, "quantity"), each: b.model.Find(m, "price_each"),
		materials: b.cellsOf(m, "materials"), labour: b.cellsOf(m, "labour_at_trade"),
		oneSum: covers == "all", total: b.model.Find(m, "trade_price"), pays: b.model.Find(m, "lender_pays"),
	}
	if w.Item.Permit {
		l.permit = "yes"
	}
	if w.Note != "" {
		l.work += " (" + w.Note + ")"
	}
	switch {
	case own && w.Item.Licence:
		l.who = "own hands; a licensed trade is usual"
	case own:
		l.who = "own hands"
	default:
		if l.who = w.From; l.who == "" {
			l.who = w.Item.Trade
		}
		if w.Item.Licence {
			l.who += "; licence no.:"
		}
	}
	if covers != "" {
		l.dated = w.Dated
	}
	return l
}

func (b *book) cellsOf(m *model.Member, lines ...string) []*model.Cell {
	out := make([]*model.Cell, len(lines))
	for i, l := range lines {
		out[i] = b.model.Find(m, l)
	}
	return out
}

// grade is that of the first product that a piece of work takes, "" if it has none.
func (b *book) grade(m *model.Member) string {
	if b.answer.Of(m, "allowance").IsPositive() {
		return "by an allowance"
	}
	for _, use := range m.In("use") {
		for _, p := range use.Links {
			if prod := b.answer.Deal.Products[p]; prod != nil && prod.Grade != "" {
				return prod.Grade
			}
		}
	}
	return ""
}

// described is what is done and of what grade.
func described(it *pricebook.Item, grade string) string {
	work := it.Work
	if work == "" {
		work = it.Name
	}
	if grade != "" {
		work += ", " + grade
	}
	return work
}

// added is the sum of cells on a page.
func (b *book) added(g *grid, all ...*model.Cell) cell {
	var parts []string
	sum, live := decimal.Zero, true
	for _, c := range all {
		v := b.answer.Values.Of(c)
		sum = sum.Add(v)
		switch at := b.places[c.Index]; {
		case at.grid != nil:
			parts = append(parts, at.from(g, 0))
		case !b.stays(c):
			live = false
		case !v.IsZero():
			parts = append(parts, numeral(v, bindsSum))
		}
	}
	out := cell{value: near(sum), look: look{format: cents}}
	if live {
		out.formula = strings.Join(parts, "+")
	}
	return out
}
