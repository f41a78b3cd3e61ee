package report

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/stress"
)

// The marks of a grid, which say without colour what holds.
const (
	holds  = " "
	misses = "*"
	loses  = "!"
)

// A sheet is one figure over a grid.
type sheet struct {
	title string
	show  func(stress.Cell) string
	mark  func(c stress.Cell, asked decimal.Decimal) string
}

// grids writes a grid of each of the four figures.
func (p stressPage) grids() {
	missed := func(c stress.Cell, targets ...string) string {
		for _, t := range targets {
			if slices.Contains(c.Misses, t) {
				return misses
			}
		}
		return holds
	}
	g := p.Grid
	p.heading("Across: " + g.Across.Label + ". Down: " + g.Down.Label + ".")
	p.text("", p.legend())
	for _, s := range []sheet{
		{"Your profit", func(c stress.Cell) string { return dollars(c.Profit) }, func(c stress.Cell, _ decimal.Decimal) string {
			if c.Profit.IsNegative() {
				return loses
			}
			return missed(c, "profit_to_spare", "margin_to_spare")
		}},
		{"Return on your cash", p.returned, func(c stress.Cell, _ decimal.Decimal) string {
			if c.Profit.IsNegative() {
				return loses
			}
			return missed(c, "roi_to_spare")
		}},
		{"Cash you need", func(c stress.Cell) string { return dollars(c.Cash) }, func(c stress.Cell, _ decimal.Decimal) string { return missed(c, "cash_to_spare") }},
		{"Maximum offer, if you knew it would come out so", func(c stress.Cell) string { return offered(c.Offer) }, func(c stress.Cell, asked decimal.Decimal) string {
			if o := c.Offer; !o.Found || !o.Endless && o.Price.LessThan(asked) {
				return misses
			}
			return holds
		}},
	} {
		p.sheet(s)
	}
}

// finest is with how many decimals a return is written at most.
const finest = 4

// returned is the return of a cell, with as many decimals as tell one that is missed from the
// target.
func (p stressPage) returned(c stress.Cell) string {
	if c.NoROI || !slices.Contains(c.Misses, "roi_to_spare") || c.ROI.Shift(2).Round(1).LessThan(c.Asked.Shift(2)) {
		return p.ratio(c.ROI, c.Cash)
	}
	places := int32(2)
	for places < finest && !c.ROI.Shift(2).Round(places).LessThan(c.Asked.Shift(2)) {
		places++
	}
	return quantity.FormatPercent(c.ROI, places)
}

func (p stressPage) legend() string {
	words := "! loses money, and may miss a target too. * misses a target; of a maximum offer, it lies under the price. A stroke stands where that changes."
	if p.Grid.Across.Planned(p.Answer.Plan) >= 0 || p.Grid.Down.Planned(p.Answer.Plan) >= 0 {
		words += " > is the plan."
	}
	if p.Grid.Down.Contingency(p.Answer.Plan, p.Grid.Across) >= 0 {
		words += " c: from here down the contingency is used up."
	}
	if p.Grid.Across.Contingency(p.Answer.Plan, p.Grid.Down) >= 0 {
		words += " c: from here to the right the contingency is used up."
	}
	if why := p.Grid.Across.Idle(p.Answer.Plan); why != "" {
		words += " The columns are alike: " + why + "."
	}
	if why := p.Grid.Down.Idle(p.Answer.Plan); why != "" {
		words += " The rows are alike: " + why + "."
	}
	switch {
	case len(p.Answer.Loans()) == 0:
	case p.Grid.Kept != nil:
		words += " Loans are sized anew by what is known before they are closed, with the lender's " + strings.Join(p.Grid.Kept, " and ") + " as planned."
	case p.Grid.Sized:
		words += " Loans are sized anew at each place."
	default:
		words += " Loans stay as planned, but are sized anew for a maximum offer."
	}
	if p.Grid.SetsAside {
		words += p.setsAside()
	}
	if p.Answer.Plan.ChargesKept(p.Grid.SetsAside) {
		words += " Charges of the closing reckoned on the work or the value stay as planned too; a maximum offer takes them as they then are."
	}
	return words
}

// setsAside says what a contingency that varies sizes, or nothing where that is nothing.
func (p stressPage) setsAside() string {
	loans, charges := len(p.Answer.Loans()) > 0, p.Answer.Plan.ChargesFollow()
	what := "loans and charges of the closing reckoned on the budget are"
	switch {
	case !loans && !charges:
		return ""
	case !charges:
		what = "loans are"
	case !loans:
		what = "charges of the closing reckoned on the budget are"
	}
	return " The contingency is yours to set before the closing: " + what + " sized by it."
}

// sheet writes one figure, in as many parts side by side as there is room for.
func (p stressPage) sheet(s sheet) {
	p.line("")
	p.title(s.title)
	g := p.Grid
	label, width := 0, 0
	for _, d := range g.Down.Values {
		label = max(label, utf8.RuneCountInString(g.Down.Says(d))+3)
	}
	marks := 1 // before a value
	if g.Across.Contingency(p.Answer.Plan, g.Down) >= 0 {
		marks = 2
	}
	for _, a := range g.Across.Values {
		width = max(width, utf8.RuneCountInString(g.Across.Says(a))+marks)
	}
	for _, row := range g.Cells {
		for _, c := range row {
			width = max(width, utf8.RuneCountInString(s.show(c)))
		}
	}
	width += 2 // the stroke before and the mark behind
	for from, some := 0, max(1, (Width-label)/width); from < len(g.Across.Values); from += some {
		p.part(s, label, width, from, min(from+some, len(g.Across.Values)))
	}
}

// part writes the columns from one to another.
func (p stressPage) part(s sheet, label, width, from, to int) {
	g := p.Grid
	planned := g.Across.Planned(p.Answer.Plan)
	head := strings.Repeat(" ", label)
	for k := from; k < to; k++ {
		said := g.Across.Says(g.Across.Values[k])
		if k == g.Across.Contingency(p.Answer.Plan, g.Down) {
			said = "c" + said
		}
		if k == planned {
			said = ">" + said
		}
		head += right(said, width-1) + " "
	}
	p.line("%s", p.paint(dim, head))
	for i, d := range g.Down.Values {
		line, before := p.rowMark(i)+right(g.Down.Says(d), label-3)+" ", ""
		if from > 0 { // the column before stands in the part above
			before = s.mark(g.Cells[i][from-1], p.asked(i, from-1))
		}
		for k := from; k < to; k++ {
			c := g.Cells[i][k]
			mark := s.mark(c, p.asked(i, k))
			stroke := " "
			if k > 0 && mark != before {
				stroke = "|"
			}
			line += stroke + p.paintMark(mark, right(s.show(c), width-2)+mark)
			before = mark
		}
		p.line("%s", line)
	}
}

// asked is the price of a cell: the asking price, or that of an axis.
func (p stressPage) asked(row, column int) decimal.Decimal {
	g := p.Grid
	switch {
	case g.Down.Moves("price"):
		return g.Down.Values[row]
	case g.Across.Moves("price"):
		return g.Across.Values[column]
	}
	return p.Answer.Line("price")
}

// rowMark says of a row whether it is the plan's and whether the contingency is used up.
func (p stressPage) rowMark(i int) string {
	mark := []byte("  ")
	if i == p.Grid.Down.Planned(p.Answer.Plan) {
		mark[0] = '>'
	}
	if c := p.Grid.Down.Contingency(p.Answer.Plan, p.Grid.Across); c >= 0 && i == c {
		mark[1] = 'c'
	}
	return string(mark)
}

func (p stressPage) paintMark(mark, text string) string {
	switch mark {
	case loses:
		return p.paint(red, text)
	case misses:
		return p.paint(yellow, text)
	}
	return text
}
