package workbook

import (
	"strings"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/model"
)

// cash is the page of the money by month, months down the page. Months after the sale
// look empty and fill when the hold gets longer.
func (b *book) cash() {
	g := b.page(&grid{name: "Cash by month", left: 1, noted: true})
	yours, tied := "your cash so far", "inside the month"
	if b.how.For == Lender {
		yours, tied = "the borrower's cash so far", "inside the month"
	}
	type column struct {
		head, note string
		cell       *model.Cell
	}
	var all []column
	add := func(head string, m *model.Member, line string) {
		c := b.model.Find(m, line)
		all = append(all, column{head, c.Line.Meaning, c})
	}
	root := b.model.Root
	add("money out", root, "money_out")
	add("money in", root, "money_in")
	add("net", root, "net_cash")
	add("the deal's\nnet so far", root, "cumulative") // in one line it would run into the head before it
	add(strings.Replace(yours, "your cash ", "your cash\n", 1), root, "owner_cumulative")
	add(tied, root, "low_point")
	for _, l := range b.answer.Loans() {
		add(l.Label+":\nowed", l, "balance")
	}
	g.widths = []float64{8}
	for range all {
		g.widths = append(g.widths, 12.5)
	}
	mark := len(all) + 2
	g.widths = append(g.widths, 11)
	head := g.title(mark, "Cash by month", "Month 0 is the purchase closing; the last one filled is that of the sale. What waits for the payoff is in the balance only where it joins it.")
	g.heads = head
	wrapped := look{role: heading, wrap: true, right: true}
	g.set(head, 1, text("month", wrapped))
	for i, c := range all {
		g.set(head, i+2, cell{value: c.head, look: wrapped, note: c.note})
	}
	g.set(head, mark, text("", wrapped))
	for m := 0; m <= b.last; m++ {
		row := head + 1 + m
		g.set(row, 1, cell{value: float64(m), formula: sheetPrefix(b.months, nil) + address(monthRow, firstMonth+m, false, false), look: look{format: whole}})
		for i, c := range all {
			x := b.shownAt(nil, c.cell, m)
			if c.cell.Line.Name == "owner_cumulative" {
				x = x.strongly()
			}
			g.set(row, i+2, x)
		}
		g.set(row, mark, b.lowest(m, address(row, 1, false, true)))
	}
	const drawn = 6 // months after the sale in the chart
	end := min(b.last, b.answer.Values.Months()+drawn)
	under := g.paragraph(head+b.last+3, 1, mark, "The low point is inside its month: when its bills are paid and nothing has come in yet. That is the cash needed. The chart ends with month "+itoa(end)+".", look{role: small})
	at := address(under+1, 1, false, false)
	g.before = func(f *excelize.File, g *grid) error {
		if g.across() && !g.roomBelow(chartHeight) {
			g.breaks = append(g.breaks, under-1)
		}
		if err := b.hideAfterSale(f, g, area{head + 1, 1, head + 1 + b.last, mark}); err != nil {
			return err
		}
		return b.draw(f, g, at, yours, area{head + 1, 6, head + 1 + end, 6})
	}
}

// lowest marks the month in which the most is tied up.
func (b *book) lowest(m int, month string) cell {
	a, mark := b.answer, "low point"
	c := cell{value: "", formula: "IF(AND(" + b.ref("cash_needed", 0) + ">0," + month + "=" + b.ref("cash_needed_month", 0) + `),"` + mark + `","")`, look: look{role: alarm, center: true}}
	if a.Line("cash_needed").IsPositive() && a.Line("cash_needed_month").IntPart() == int64(m) {
		c.value = mark
	}
	return c
}

// hideAfterSale lets rows of months after the sale look empty.
func (b *book) hideAfterSale(f *excelize.File, g *grid, x area) error {
	nothing := ";;;"
	hidden, err := f.NewConditionalStyle(&excelize.Style{CustomNumFmt: &nothing, Font: &excelize.Font{Color: "FFFFFF"}})
	if err != nil {
		return err
	}
	return f.SetConditionalFormat(g.name, address(x.row, x.col, false, false)+":"+address(x.toRow, x.toCol, false, false), []excelize.ConditionalFormatOptions{
		{Type: "formula", Criteria: address(x.row, x.col, false, true) + ">" + b.ref("sale_month", 0), Format: &hidden},
	})
}

// chartHeight is how high the chart is, in points.
const chartHeight = 225.0

// roomBelow lays a sheet that lies on its side on one page with something below it, where it is read so.
func (g *grid) roomBelow(points float64) bool {
	g.reckoned()
	for row := 1; row <= len(g.rows); row++ {
		points += g.high[row]
	}
	g.once = paperOf["landscape"].tall/points >= readable
	return g.once
}

// draw puts a chart of a column over the months.
func (b *book) draw(f *excelize.File, g *grid, at, title string, x area) error {
	span := func(col int) string {
		return sheetPrefix(g, nil) + address(x.row, col, true, true) + ":" + address(x.toRow, col, true, true)
	}
	const column, pixels = 64, 96.0 / 72 // what columns are taken for while the chart is placed, and how many a point has
	gap, noLegend, small := uint(40), "none", excelize.Font{Size: 9, Color: ink}
	return f.AddChart(g.name, at, &excelize.Chart{
		Type: excelize.Col,
		Series: []excelize.ChartSeries{{
			Name: sheetPrefix(g, nil) + address(x.row-1, x.col, true, true), Categories: span(1), Values: span(x.col),
			Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{rule}},
		}},
		Title:        excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: title + ", at the end of each month", Font: &excelize.Font{Bold: true, Size: 11, Color: ink}}}},
		Legend:       excelize.ChartLegend{Position: noLegend},
		Dimension:    excelize.ChartDimension{Width: uint(column * len(g.widths)), Height: uint(chartHeight * pixels)},
		GapWidth:     &gap,
		XAxis:        excelize.ChartAxis{TickLabelPosition: excelize.ChartTickLabelLow, Font: small, Title: excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: "month", Font: &small}}}},
		YAxis:        excelize.ChartAxis{MajorGridLines: true, Font: small, NumFmt: excelize.ChartNumFmt{CustomNumFmt: rounded}},
		ShowBlanksAs: "gap",
	})
}
