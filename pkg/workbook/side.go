package workbook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
)

// sideBySide is the page of the deal beside others; a lender sees what they cost and what
// the house is worth then.
func (b *book) sideBySide() {
	if len(b.how.Columns) == 0 {
		return
	}
	last := len(b.how.Columns) + 2
	g := b.page(&grid{name: "Options side by side", widths: []float64{34, 17}, left: 1, once: true, wide: len(b.how.Columns) > 2, noted: true})
	for range b.how.Columns {
		g.widths = append(g.widths, 17)
	}
	row := g.title(last, "Options side by side", "This deal follows the inputs of the workbook. The others were worked out with another choice of options, and stand as values (in italics): choosing anew takes the program.") + 1
	head := func(words string) {
		g.set(row, 1, text(words, look{role: heading}))
		g.set(row, 2, text("this deal", look{role: heading, right: true}))
		for i, x := range b.how.Columns {
			g.set(row, i+3, text(x.Name, look{role: heading, right: true, wrap: true}))
		}
		row++
	}
	if b.how.For == Owner {
		head("what each yields")
		row = b.yieldsBeside(g, row)
	}
	head("value, and cost in cash")
	row = b.beside(g, row, "value after repair", "after_repair_value")
	row = b.roomsBeside(g, row)
	note := answer.NewPartsOf(append([]answer.Column{{Name: "this deal", Answer: b.answer}}, b.how.Columns...))
	if len(b.rooms()) > 0 {
		note = strings.TrimSpace(answer.OfRooms + " " + note)
	}
	if note != "" {
		g.paragraph(row+1, 1, last, note, look{role: small})
	}
}

// beside writes a line of the deal in all columns.
func (b *book) beside(g *grid, row int, label, line string) int {
	return b.rowBeside(g, row, label, b.figure(line), func(a *answer.Answer) decimal.Decimal { return a.Line(line) })
}

func (b *book) rowBeside(g *grid, row int, label string, here cell, there func(*answer.Answer) decimal.Decimal) int {
	g.label(row, 1, label, look{role: here.look.role})
	g.set(row, 2, here)
	for i, x := range b.how.Columns {
		c := searched(there(x.Answer), here.look.format)
		if here.look.role == total || here.look.role == strong {
			c = c.strongly()
		}
		g.set(row, i+3, c)
	}
	return row + 1
}

func (b *book) yieldsBeside(g *grid, row int) int {
	if b.partnered() {
		row = b.beside(g, row, "profit of the deal", "profit")
	}
	for _, x := range [][2]string{
		{b.answer.OwnProfit(), "owner_profit"}, {"return on the cash needed (ROI)", "roi"}, {"cash needed", "cash_needed"}, {"owned for, months", "hold_months"},
		{"renovation, months", "renovation"}, {"own hours", "own_hours"}, {"hired hours", "room_crew_hours"},
	} {
		c := b.figure(x[1])
		if c.look.format == plain {
			c = c.as(tenths)
			if strings.HasSuffix(x[0], ", months") {
				c = c.as(twoPlace)
			}
		}
		row = b.rowBeside(g, row, x[0], c, func(a *answer.Answer) decimal.Decimal { return a.Line(x[1]) })
	}
	g.set(row, 1, text("maximum offer", look{}))
	g.set(row, 2, offered(b.answer.Offer))
	g.set(row+1, 2, b.passes())
	g.set(row+1, 1, text("every target met", look{}))
	for i, x := range b.how.Columns {
		g.set(row, i+3, offered(x.Answer.Offer))
		met := "yes"
		if len(x.Answer.Missed()) > 0 {
			met = "no"
		}
		g.set(row+1, i+3, said(met))
	}
	return row + 3
}

// roomsBeside writes the cost by room and the way to the budget, and returns the row below.
func (b *book) roomsBeside(g *grid, row int) int {
	for _, label := range b.rooms() {
		here := cell{look: look{format: dollars}}
		if m := b.answer.Named("room", label); m != nil {
			here = b.of(m, "cash_cost")
		}
		row = b.rowBeside(g, row, label, here, func(a *answer.Answer) decimal.Decimal { return a.OfNamed("room", label, "cash_cost") })
		for i, a := range b.allBeside() {
			if words := a.WithoutWork(label); words != "" {
				g.set(row-1, i+2, said(words))
			}
		}
	}
	for _, x := range [][2]string{{"lines that are no room's", "lines_cost"}, {"containers", "disposal"}, {"rented by the month", "rents"}, {"set aside for what was not seen", "not_seen"}, {"general lines", "general_cost"}, {"contingency", "contingency"}} {
		row = b.beside(g, row, x[0], x[1])
	}
	return b.rowBeside(g, row, "renovation budget", b.figure("budget").like(total), func(a *answer.Answer) decimal.Decimal { return a.Line("budget") })
}

// rooms are the names of all rooms with work in some column, each once.
func (b *book) rooms() (out []string) {
	for _, a := range b.allBeside() {
		for _, m := range a.Model.Root.In("room") {
			if len(m.In("option")) > 0 && !slices.Contains(out, m.Label) {
				out = append(out, m.Label)
			}
		}
	}
	return out
}

// allBeside are this deal and the others, in the order of their columns.
func (b *book) allBeside() []*answer.Answer {
	out := []*answer.Answer{b.answer}
	for _, c := range b.how.Columns {
		out = append(out, c.Answer)
	}
	return out
}
