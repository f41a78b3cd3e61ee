package workbook

import (
	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/stress"
)

// Stressed is what was found out about how bad a deal can get.
type Stressed struct {
	*stress.Study
	Odds *chance.Odds // nil where they were not asked
}

// Columns of the page: a wide label and as many figures as a grid usually has across.
const stressColumns = 9

// stress is the page of how bad it can get. All of it was found by search: values, which do
// not follow the inputs.
func (b *book) stress() {
	s := b.how.Stress
	if s == nil || b.how.For != Owner {
		return
	}
	g := b.page(&grid{name: "Stress", widths: []float64{30}, left: 1})
	for range stressColumns - 1 {
		g.widths = append(g.widths, 11.8)
	}
	row := g.title(stressColumns, "How bad it can get", b.stressedAs())
	for _, sheet := range []struct {
		title, format string
		of            func(stress.Cell) (decimal.Decimal, string)
		scale         scale
	}{
		{"Your profit", rounded, func(c stress.Cell) (decimal.Decimal, string) { return c.Profit, "" }, rising},
		{"Return on your cash", percent, func(c stress.Cell) (decimal.Decimal, string) {
			if c.NoROI {
				return c.ROI, "no cash"
			}
			return c.ROI, ""
		}, rising},
		{"Cash you need", rounded, func(c stress.Cell) (decimal.Decimal, string) { return c.Cash, "" }, falling},
		{"Maximum offer, if you knew it would come out so", rounded, func(c stress.Cell) (decimal.Decimal, string) {
			switch {
			case c.Offer.Endless:
				return decimal.Zero, "any"
			case !c.Offer.Found:
				return decimal.Zero, "none"
			}
			return c.Offer.Price, ""
		}, priced},
	} {
		row = b.gridOf(g, row, sheet.title, sheet.format, sheet.of, sheet.scale)
	}
	g.breaks = append(g.breaks, row)
	row = b.badDays(g, row)
	if s.Odds != nil {
		row = b.oddsOf(g, row, s.Odds)
	}
	g.breaks = append(g.breaks, row)
	b.ranked(g, row)
}

// stressedAs says that the page does not recalculate, and what it goes by.
func (b *book) stressedAs() string {
	of := "the figures of the deal file"
	if d := b.answer.Deal.PurchaseDate; !d.IsZero() {
		of += ", for a purchase on " + d.Long()
	}
	text := "Values as they were found with " + of + ": they do not recalculate. Write the workbook again after a change of an input."
	if o := b.how.Stress.Odds; o != nil {
		text += " The odds are of " + quantity.FormatCount(decimal.NewFromInt(o.Trials), 0) + " trials with seed " + decimal.NewFromUint64(o.Seed).String() + "."
	}
	return text
}

// A scale is how a grid is coloured.
type scale int

const (
	rising  scale = iota // more is better, 0 in the middle
	falling              // less is better
	priced               // more is better, the asking price in the middle
)

// gridOf writes one figure of the grid, and returns the row of what comes next.
func (b *book) gridOf(g *grid, row int, title, format string, of func(stress.Cell) (decimal.Decimal, string), how scale) int {
	grid := b.how.Stress.Grid
	plan := b.answer.Plan
	across := grid.Across.Values
	row++
	g.heading(row, 1, max(stressColumns, len(across)+1), title+", by "+grid.Across.Label+" (across) and "+grid.Down.Label+" (down)")
	row++
	planned := grid.Across.Planned(plan)
	for k, x := range across {
		words := grid.Across.Says(x)
		if k == planned {
			words += " (plan)"
		}
		g.set(row, k+2, text(words, look{role: strong, right: true}))
	}
	first := row + 1
	used := grid.Down.Contingency(plan, grid.Across)
	for i, x := range grid.Down.Values {
		row++
		words := grid.Down.Says(x)
		if i == grid.Down.Planned(plan) {
			words += " (plan)"
		}
		if i == used {
			words += " contingency is used up"
		}
		g.label(row, 1, words, look{role: strong})
		for k, c := range grid.Cells[i] {
			if x, no := of(c); no != "" {
				g.set(row, k+2, said(no))
			} else {
				g.set(row, k+2, searched(x, format))
			}
		}
	}
	b.scaled(g, area{first, 2, row, len(across) + 1}, how)
	return row + 1
}

// scaled colours a grid from the worst to the best once the sheet is dressed. The figures
// say the same without it.
func (b *book) scaled(g *grid, x area, how scale) {
	const bad, good, none = "E8B4A8", "A9CBB0", "FFFFFF"
	o := excelize.ConditionalFormatOptions{Type: "3_color_scale", Criteria: "=", MinType: "min", MidType: "num", MaxType: "max", MidValue: "0", MinColor: bad, MidColor: none, MaxColor: good}
	switch how {
	case falling:
		o = excelize.ConditionalFormatOptions{Type: "2_color_scale", Criteria: "=", MinType: "min", MaxType: "max", MinColor: none, MaxColor: bad}
	case priced:
		o.MidValue = b.answer.Line("price").String()
	}
	g.then(func(f *excelize.File, g *grid) error {
		return f.SetConditionalFormat(g.name, address(x.row, x.col, false, false)+":"+address(x.toRow, x.toCol, false, false), []excelize.ConditionalFormatOptions{o})
	})
}

// then adds to what a sheet has besides its cells.
func (g *grid) then(more func(f *excelize.File, g *grid) error) {
	before := g.before
	g.before = func(f *excelize.File, g *grid) error {
		if before != nil {
			if err := before(f, g); err != nil {
				return err
			}
		}
		return more(f, g)
	}
}

// helps is the column of what helps on a bad day.
const helps = 8

// badDays writes the bad days, one below the other.
func (b *book) badDays(g *grid, row int) int {
	row++
	g.heading(row, 1, stressColumns, "Bad days")
	for i, words := range []string{b.answer.OwnProfit(), "against plan", "return", "cash needed", "months owned", "targets missed"} {
		g.set(row, i+2, text(words, look{role: heading, right: true, wrap: true}))
	}
	g.set(row, helps, text("what helps", look{role: heading, off: true}))
	g.height(row, 2*lineHeight+2)
	a := b.answer
	row++
	g.set(row, 1, text("as planned", look{role: strong}))
	for i, x := range []cell{searched(a.Line("owner_profit"), rounded), {}, searched(a.Line("roi"), percent), searched(a.Line("cash_needed"), rounded), searched(a.Line("hold_months"), twoPlace), missing(a.Missed())} {
		g.set(row, i+2, x)
	}
	for _, o := range b.how.Stress.Days {
		row++
		day := o.Title + ": " + o.What
		g.label(row, 1, day, look{wrap: true})
		for i, x := range []cell{searched(o.Profit, rounded), searched(o.Lost.Neg(), rounded), searched(o.ROI, percent), searched(o.Cash, rounded), searched(o.Months, twoPlace), missing(o.Misses)} {
			g.set(row, i+2, x)
		}
		for col := helps; col <= stressColumns; col++ {
			g.set(row, col, text("", look{wrap: true, off: true, role: small}))
		}
		g.set(row, helps, text(o.Remedy, look{wrap: true, off: true, role: small}))
		g.merges = append(g.merges, area{row, helps, row, stressColumns})
		g.height(row, high(o.Remedy, 2*g.widths[helps]-2))
		g.height(row, high(stress.Words(o.Misses), g.widths[helps]))
		g.height(row, high(day, g.widths[0]))
	}
	return row + 1
}

// missing names the targets that are missed.
func missing(misses []stress.Miss) cell {
	return text(stress.Words(misses), look{role: found, right: true, wrap: true})
}

// mostRanked is how many of the ranking stand in the sheet.
const mostRanked = 12

// ranked writes what matters most, with a chart of it.
func (b *book) ranked(g *grid, row int) {
	all := b.how.Stress.Ranking
	all = all[:min(mostRanked, len(all))]
	row++
	g.heading(row, 1, stressColumns, "")
	g.label(row, 1, "What matters most, and "+b.answer.OwnProfit()+" at either end", look{role: heading}) // heads stand beside it
	for i, words := range []string{"from", "to", "at from", "at to", "swings by"} {
		g.set(row, i+2, text(words, look{role: heading, right: true}))
	}
	g.set(row, 7, text("each", look{role: heading, off: true}))
	first := row + 1
	for _, s := range all {
		row++
		g.label(row, 1, s.Label, look{wrap: true})
		g.set(row, 2, text(s.Says(s.Low), look{role: found, right: true}))
		g.set(row, 3, text(s.Says(s.High), look{role: found, right: true}))
		for i, x := range []decimal.Decimal{s.AtLow, s.AtHigh, s.Size()} {
			g.set(row, i+4, searched(x, rounded))
		}
		each := quantity.FormatDollars(decimal.NewFromFloat(s.Slope).Round(0)) + " for " + s.UnitWords()
		if !s.Step.IsZero() { // the slope is flat, one whole step is not
			each = quantity.FormatDollars(s.Step.Round(0)) + " for a whole " + s.UnitWords()
		}
		g.set(row, 7, text(each, look{role: found, off: true}))
	}
	if len(all) > 0 {
		b.tornado(g, address(row+2, 1, false, false), area{first, 1, row, 6})
	}
}

// tornado draws how far each thing swings the profit, the farthest on top.
func (b *book) tornado(g *grid, at string, x area) {
	span := func(col int) string {
		return sheetPrefix(g, nil) + address(x.row, col, true, true) + ":" + address(x.toRow, col, true, true)
	}
	small := excelize.Font{Size: 9, Color: ink}
	const column = 64 // pixels: what columns are taken for while the chart is placed
	gap := uint(40)
	g.then(func(f *excelize.File, g *grid) error {
		return f.AddChart(g.name, at, &excelize.Chart{
			Type: excelize.Bar,
			Series: []excelize.ChartSeries{{
				Name: sheetPrefix(g, nil) + address(x.row-1, x.toCol, true, true), Categories: span(1), Values: span(x.toCol),
				Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{rule}},
			}},
			Title:     excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: "How far your profit swings", Font: &excelize.Font{Bold: true, Size: 11, Color: ink}}}},
			Legend:    excelize.ChartLegend{Position: "none"},
			Dimension: excelize.ChartDimension{Width: column * stressColumns, Height: 320},
			GapWidth:  &gap,
			XAxis:     excelize.ChartAxis{ReverseOrder: true, Font: small},
			YAxis:     excelize.ChartAxis{MajorGridLines: true, Font: small, NumFmt: excelize.ChartNumFmt{CustomNumFmt: rounded}},
		})
	})
}
