package workbook

import (
	"errors"
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/model"
)

// The columns of the draws.
const (
	drawNumber = iota + 1
	drawWork
	drawWhole
	drawApproved
	drawChanges
	drawRevised
	drawBefore
	drawAsked
	drawClaimed
	drawInspected
	drawNow
	drawRetained
	drawNet
	drawLeft
	drawToFinish
	drawRelease
	drawReceipt
	drawPhoto
)

var drawHeads = []struct {
	words string
	width float64
}{
	{"no.", 5}, {"work", 27}, {"whole\nline $", 8.8}, {"ap-\nproved $", 8.8}, {"changes\n$", 7.8}, {"revised\n$", 8.8}, {"drawn\nbefore $", 8.8}, {"asked\nnow $", 8.8},
	{"% claimed", 7.6}, {"% in-\nspected", 7.6}, {"approved\nnow $", 8.8}, {"retained\n$", 8}, {"net $", 8.8}, {"left to\ndraw $", 8.8}, {"left to\nfinish $", 8.8},
	{"release\nof lien", 10}, {"receipt", 7}, {"photo", 7},
}

// framed are the columns of numbers that are filled in, the last of them a share.
var framed = []int{drawChanges, drawBefore, drawAsked, drawInspected}

const (
	drawHead  = 4 // the row of the heads of the draws
	mostDrawn = 60
)

// A drawSheet is the page by which draws are asked for, while it is made.
type drawSheet struct {
	*breakdown
	page   *grid
	first  int
	end    int // the row of the last line
	unpaid int // the row of what changes add that no lender pays
	last   int // the row of all together
	more   int // the row of what lenders have agreed to pay beyond the holdback
}

// drawsPage lists what is drawn of each line; of each category where there are so many
// lines that nobody would draw by them.
func (b *book) drawsPage(d *breakdown) {
	root := b.model.Root
	holdback := b.model.Find(root, "holdback")
	if d == nil || b.stays(holdback) && b.answer.Values.Of(holdback).IsZero() {
		return
	}
	g := b.page(&grid{name: "Draws", heads: drawHead, left: drawWork, wide: true})
	s := &drawSheet{breakdown: d, page: g, first: drawHead + 1}
	g.before = s.choices
	g.set(1, 1, text("Draws", look{role: title}))
	g.height(1, titleHeight)
	about := "One sheet for each draw: fill in the framed cells, and carry what was approved over to the next."
	if len(d.rows) > mostDrawn {
		about += " The lines are the categories of the cost breakdown."
	}
	g.set(2, 1, text(about, look{role: small}))
	g.set(3, drawWork, text("draw no. and day", look{size: tableSize, right: true}))
	g.set(3, drawWhole, toFill(""))
	g.set(3, drawApproved, toFill(""))
	g.set(3, drawNow, text("kept of it", look{size: tableSize, right: true}))
	kept := b.added(g, b.model.Find(root, "retained_of_draws"))
	kept.look = look{role: strong, format: percent, size: tableSize}
	g.set(3, drawRetained, kept)
	for i, h := range drawHeads {
		g.widths = append(g.widths, h.width)
		g.set(drawHead, i+1, text(h.words, look{role: heading, wrap: true, center: i+1 == drawClaimed || i+1 == drawInspected, right: i+1 > drawWork && i+1 < drawRelease && i+1 != drawClaimed && i+1 != drawInspected, off: i+1 >= drawRelease, size: tableSize}))
	}
	s.lines()
	s.covered()
	s.lenders()
}

// lines writes the lines to draw by, and all together.
func (s *drawSheet) lines() {
	if len(s.rows) <= mostDrawn {
		for _, r := range s.rows {
			s.draw(r.number, inShort(r.line), r.row)
		}
	} else {
		for _, row := range s.heads {
			number, name, _ := strings.Cut(fmt.Sprint(s.g.rows[row-1][0].value), "  ")
			s.draw(number, name, row)
		}
	}
	s.end = s.page.next() - 1
	s.unpaid, s.last, s.more = s.end+1, s.end+2, s.end+6
	s.beyond()
	row := s.last
	for col := 1; col <= len(drawHeads); col++ {
		s.page.set(row, col, text("", look{role: total, size: tableSize}))
	}
	s.page.set(row, drawWork, text("All together", look{role: total, size: tableSize}))
	for col := drawWhole; col <= drawToFinish; col++ {
		l := look{role: total, format: cents, size: tableSize}
		switch {
		case col == drawInspected:
		case col == drawClaimed:
			l.format, l.center = percent0, true
			s.page.set(row, col, cell{value: 0.0, formula: claimed(row), look: l})
		default:
			sum := decimal.Zero
			for r := s.first; r <= s.end; r++ {
				sum = sum.Add(s.drawn(r, col))
			}
			s.page.set(row, col, cell{value: near(sum), formula: sumOf(col, s.first, s.unpaid), look: l})
		}
	}
}

// beyond takes off below the lines what no lender has agreed to pay: of what changes add,
// and of what is approved by the lines, so that all together comes to what lenders pay.
func (s *drawSheet) beyond() {
	at := func(col int) string { return address(s.unpaid, col, false, false) }
	lines := func(col int) string { return sumOf(col, s.first, s.end) }
	money := look{size: tableSize, format: cents}
	s.page.set(s.unpaid, drawWork, text("less what no lender has agreed to pay", look{size: tableSize, wrap: true}))
	for col, formula := range map[int]string{
		drawChanges:  fmt.Sprintf("-MAX(0,%s-%s)", s.changed(), filled(address(s.more, drawToFinish, false, false))),
		drawRevised:  at(drawChanges),
		drawNow:      fmt.Sprintf("MIN(0,MAX(0,%s+%s-%s)-%s)", lines(drawRevised), at(drawRevised), lines(drawBefore), lines(drawNow)),
		drawRetained: s.keptOf(at(drawNow)),
		drawNet:      at(drawNow) + "-" + at(drawRetained),
		drawLeft:     at(drawRevised) + "-" + at(drawNow),
	} {
		s.page.set(s.unpaid, col, cell{value: 0.0, formula: formula, look: money})
	}
}

// changed is what the changes make of what lenders pay of the lines.
func (s *drawSheet) changed() string {
	return sumOf(drawRevised, s.first, s.end) + "-" + sumOf(drawApproved, s.first, s.end)
}

// keptOf is what lenders keep of an amount until the work is finished.
func (s *drawSheet) keptOf(amount string) string {
	return toCents(amount + "*" + address(3, drawRetained, true, true))
}

// toCents rounds a formula to cents, after a look at nine decimals, as the model does.
func toCents(formula string) string { return "ROUND(ROUND(" + formula + ",9),2)" }

// inCents rounds by the same rule as toCents.
func inCents(x decimal.Decimal) decimal.Decimal { return x.Round(9).Round(2) }

const percent0 = `0%`

// drawn is the exact amount that stands in a cell: nothing is asked for yet.
func (s *drawSheet) drawn(row, col int) decimal.Decimal {
	from := s.of(row)
	switch col {
	case drawWhole, drawToFinish:
		return s.exactly(from, colTotal)
	case drawApproved, drawRevised, drawLeft:
		return s.exactly(from, colLender)
	}
	return decimal.Zero
}

// of is the row of the breakdown that a line here is of.
func (s *drawSheet) of(row int) int {
	if len(s.rows) <= mostDrawn {
		return s.rows[row-s.first].row
	}
	return s.heads[row-s.first]
}

func claimed(row int) string {
	at := func(col int) string { return address(row, col, false, false) }
	return fmt.Sprintf("IF(%s=0,0,(%s+%s)/%s)", at(drawRevised), filled(at(drawBefore)), filled(at(drawAsked)), at(drawRevised))
}

// filled is a cell that is filled in by hand as a number: nothing where it holds none.
func filled(at string) string { return "N(" + at + ")" }

// draw writes a line: what lenders pay of a row of the breakdown, and what is drawn of it.
// Nothing is approved beyond what was inspected, and no change takes more off a line than it has.
func (s *drawSheet) draw(number, work string, from int) {
	row := s.page.next()
	at := func(col int) string { return address(row, col, false, false) }
	there := func(col int) string { return sheetPrefix(s.g, s.page) + address(from, col, true, true) }
	s.page.set(row, drawNumber, text(number, look{size: tableSize}))
	s.page.set(row, drawWork, text(work, look{size: tableSize, wrap: true}))
	money := look{size: tableSize, format: cents}
	inspected := "MAX(0,MIN(1," + filled(at(drawInspected)) + "))"
	revised := func(of int) string {
		return fmt.Sprintf("MAX(MIN(0,%s),%s+%s)", at(of), at(of), filled(at(drawChanges)))
	}
	for col, formula := range map[int]string{
		drawWhole: there(colTotal), drawApproved: there(colLender),
		drawRevised:  revised(drawApproved),
		drawNow:      toCents(fmt.Sprintf("MAX(0,MIN(%s,%s*%s-%s))", filled(at(drawAsked)), inspected, at(drawRevised), filled(at(drawBefore)))),
		drawRetained: s.keptOf(at(drawNow)),
		drawNet:      at(drawNow) + "-" + at(drawRetained),
		drawLeft:     at(drawRevised) + "-" + filled(at(drawBefore)) + "-" + at(drawNow),
		drawToFinish: toCents(revised(drawWhole) + "*(1-" + inspected + ")"),
	} {
		s.page.set(row, col, cell{value: near(s.drawn(row, col)), formula: formula, look: money})
	}
	s.page.set(row, drawClaimed, cell{value: 0.0, formula: claimed(row), look: look{size: tableSize, format: percent0, center: true}})
	for _, col := range framed[:3] {
		s.page.set(row, col, cell{look: look{size: tableSize, format: cents, role: blank}})
	}
	s.page.set(row, drawInspected, cell{look: look{size: tableSize, format: percent0, role: blank, center: true}})
	for _, col := range []int{drawRelease, drawReceipt, drawPhoto} {
		s.page.set(row, col, toFill(""))
	}
}

// proven is the row of the owner's cash as proven.
func (s *drawSheet) proven() int { return s.more + 4 }

// covered checks that what is left to finish never exceeds the money for it.
func (s *drawSheet) covered() {
	g, root := s.page, s.model.Root
	row := g.next() + 1
	g.set(row, drawWork, text("Is the cost to finish covered?", look{role: strong, size: tableSize}))
	at := func(r, col int) string { return address(r, col, false, false) }
	left := func(col int) decimal.Decimal { return s.breakdownTotal(col) }
	cash, proven := decimal.Zero, cell{}
	if s.answer.Deal.HasCash {
		proven, cash = s.added(g, s.model.Find(root, "proven_cash")), s.answer.Line("proven_cash")
	}
	kept := inCents(decimal.Max(decimal.Zero, left(colLender)).Mul(s.answer.Line("retained_of_draws")))
	spare := left(colLender).Sub(kept).Add(cash).Sub(left(colTotal))
	first := row + 3
	fill := func(c cell) cell {
		c.look.role = blank
		return c
	}
	// Nothing is known of what is to spare while no cash is proven.
	known := func(of, otherwise string) string {
		return "IF(ISNUMBER(" + at(s.proven(), drawToFinish) + ")," + of + "," + otherwise + ")"
	}
	toSpare := cell{value: near(spare), formula: known(sumOf(drawToFinish, first+1, first+3)+"-"+at(first, drawToFinish), `""`)}
	if !s.answer.Deal.HasCash {
		toSpare.value = ""
	}
	rows := []struct {
		words string
		cell  cell
	}{
		{"what lenders have agreed in writing to pay beyond what they approved at first; changes of lines alone are not it", fill(cell{})},
		{"left to finish, at trade price", cell{value: near(left(colTotal)), formula: at(s.last, drawToFinish)}},
		{"left to draw", cell{value: near(left(colLender)), formula: at(s.last, drawLeft)}},
		{"of it kept until the work is finished, so that it does not pay for the work", cell{value: near(kept.Neg()), formula: "-" + s.keptOf("MAX(0,"+at(first+1, drawToFinish)+")")}},
		{"owner's cash as proven: at first what the purchase leaves of it; then by a statement from after this draw is paid", fill(proven)},
		{"to spare for the work; holding costs, interest and draw fees until the sale are not in it, so it is not room to spend", toSpare},
	}
	for i, r := range rows {
		r.cell.look.size, r.cell.look.format = tableSize, cents
		g.set(first-1+i, drawWork, text(r.words, look{size: tableSize}))
		g.set(first-1+i, drawToFinish, r.cell)
	}
	g.set(row+1, drawWork, s.unagreed())
	c := s.says(at(first+4, drawToFinish)+">=-0.005", !spare.IsNegative(), "Yes: what is left to draw and the proven cash finish the work.",
		"NO: THE WORK TAKES MORE THAN WHAT IS LEFT TO DRAW AND THE PROVEN CASH. Put the difference in first, or take work out.")
	unproven := "Fill in the cash as proven"
	if s.answer.Deal.HasCash {
		unproven += "."
	} else {
		unproven += ": the deal file does not say what there is."
		c.value = unproven
	}
	c.formula = known(c.formula, quoted(unproven))
	g.set(first+5, drawWork, c)
	slips := s.slips()
	for i, c := range slips {
		g.set(first+6+i, drawWork, c)
	}
	s.soFar(first + 6 + len(slips))
}

// slips speak up, each in a row of its own, where words stand for an amount, and where more was drawn of a
// line than it comes to, taken off it, or asked of it than is left. What is left of a line that is a credit
// lies below nothing before anything is drawn.
func (s *drawSheet) slips() []cell {
	span := func(col int) string {
		return address(s.first, col, false, false) + ":" + address(s.end, col, false, false)
	}
	var taken, asked []string
	for row := s.first; row <= s.end; row++ {
		at := func(col int) string { return address(row, col, false, false) }
		taken = append(taken, at(drawWhole)+"+"+filled(at(drawChanges))+"<MIN(0,"+at(drawWhole)+")-0.005")
		asked = append(asked, filled(at(drawAsked))+">MAX(0,"+at(drawRevised)+"-"+filled(at(drawBefore))+")+0.005")
	}
	none := func(of []string) string { return "NOT(" + nested("OR(", of) + ")" }
	words := []string{"ISTEXT(" + address(s.more, drawToFinish, false, false) + ")"}
	for _, col := range framed {
		words = append(words, "SUMPRODUCT(--ISTEXT("+span(col)+"))")
	}
	return []cell{
		s.says(strings.Join(words, "+")+"=0", true, "Every framed amount is a number, or blank.",
			"WORDS STAND WHERE AN AMOUNT BELONGS, red above, and count as nothing: type the amount again as a number."),
		s.says("SUMPRODUCT(("+span(drawLeft)+"<-0.005)*("+span(drawLeft)+"<"+span(drawRevised)+"-0.005))=0", true, "No line is drawn beyond what it comes to.",
			"MORE IS DRAWN OF A LINE THAN IT COMES TO: what is left to draw of it is below nothing. Move money to it, or take it off the next draw."),
		s.says(none(taken), true, "No change takes more off a line than it has.",
			"MORE IS TAKEN OFF A LINE THAN IT HAS: what a change takes beyond the line is not counted."),
		s.says(none(asked), true, "No more is asked of a line than it has left.",
			"MORE IS ASKED OF A LINE THAN IT HAS LEFT: what is asked beyond that is not approved. Move money to it, or ask for less."),
	}
}

// soFar says what lenders keep of the draws so far, and what each draw costs.
func (s *drawSheet) soFar(row int) {
	g := s.page
	at := func(col int) string { return address(s.last, col, false, false) }
	var all []*model.Cell
	charged := false
	for _, l := range s.answer.Loans() {
		all = append(all, s.model.Find(l, "fee_of_a_draw"))
		charged = charged || s.answer.Of(l, "fee_of_a_draw").IsPositive()
	}
	rows := []entry{{"kept of all draws so far; it is released once the work is finished", cell{value: 0.0, formula: s.keptOf(at(drawBefore)) + "+" + at(drawRetained)}}}
	if charged {
		rows = append(rows, entry{"what each draw costs in fees, all lenders together", s.added(g, all...)})
	}
	for i, r := range rows {
		r.cell.look = look{size: tableSize, format: cents}
		g.set(row+i, drawWork, text(r.label, look{size: tableSize}))
		g.set(row+i, drawToFinish, r.cell)
	}
}

// unagreed says what the changes add that lenders do not pay, or take out.
func (s *drawSheet) unagreed() cell {
	at := func(row, col int) string { return address(row, col, false, false) }
	added, none := s.changed(), "Changes come to nothing in all: they only move money between lines."
	beyond := "(" + added + ")-" + filled(at(s.more, drawToFinish))
	amount := func(x string) string { return "TEXT(" + x + `,"#,##0.00")` }
	return cell{value: none, look: look{size: tableSize, role: strong, off: true}, formula: "IF(" + beyond + ">=0.005," +
		quoted("CHANGES ADD $") + "&" + amount(beyond) + "&" + quoted(" THAT NO ONE HAS AGREED TO PAY: it is the owner's, unless it comes out of contingency; then take it off that line.") +
		",IF(" + added + ">=0.005," + quoted("What changes add, lenders have agreed to pay.") +
		",IF(" + added + "<=-0.005," + quoted("Changes take $") + "&" + amount("-("+added+")") + "&" + quoted(" off what lenders pay.") + "," + quoted(none) + ")))"}
}

// breakdownTotal is the exact total of a column of the breakdown.
func (s *drawSheet) breakdownTotal(col int) (sum decimal.Decimal) {
	for _, h := range s.heads {
		sum = sum.Add(s.exactly(h, col))
	}
	return sum
}

// lenders says who pays of each draw, where there are several.
func (s *drawSheet) lenders() {
	g := s.page
	row := g.next() + 1
	if loans := s.answer.Loans(); len(loans) > 1 {
		g.set(row, drawWork, text("Of each draw, in proportion to what each holds back", look{role: strong, size: tableSize}))
		for _, l := range loans {
			row++
			g.set(row, drawWork, text(l.Label, look{size: tableSize, off: true}))
			for col, line := range map[int]string{drawWhole: "holdback", drawApproved: "retainage_share"} {
				c := s.added(g, s.model.Find(l, line))
				c.look.size = tableSize
				if line == "retainage_share" {
					c.look.format = `0.##%" kept"`
				}
				g.set(row, col, c)
			}
		}
		row += 2
	}
	for _, words := range []string{
		"Approved now: what is asked for, as far as the inspected share of the line covers it with what was drawn before. Drawn before counts what was approved, before anything was kept of it.",
		"Release of lien: conditional with the request, final once the line is paid in full. Forms and deadlines are a matter of state law: ask the title company.",
	} {
		g.set(row, 1, text(words, look{role: small, size: tableSize}))
		row++
	}
}

// choices keeps what is filled in within what makes sense.
func (s *drawSheet) choices(f *excelize.File, g *grid) error {
	const most = 1e12 // larger than any deal
	cells := func(col, first, last int) *excelize.DataValidation {
		v := excelize.NewDataValidation(true)
		v.Sqref = address(first, col, false, false) + ":" + address(last, col, false, false)
		return v
	}
	numbers := func(title, words string, low, high float64, v *excelize.DataValidation) error {
		v.SetError(excelize.DataValidationErrorStyleStop, title, words)
		if err := v.SetRange(low, high, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween); err != nil {
			return err
		}
		return f.AddDataValidation(g.name, v)
	}
	words := func(list []string, v *excelize.DataValidation) error {
		if err := v.SetDropList(list); err != nil {
			return err
		}
		return f.AddDataValidation(g.name, v)
	}
	const amount, either = "An amount of dollars, not below nothing.", "An amount of dollars; below nothing it is taken off."
	more := address(s.more, drawToFinish, false, false)
	marks := []error{s.mark(g, more, "ISTEXT("+more+")")}
	for _, col := range framed {
		first := address(s.first, col, false, false)
		marks = append(marks, s.mark(g, first+":"+address(s.end, col, false, false), "ISTEXT("+first+")"))
	}
	return errors.Join(errors.Join(marks...),
		words([]string{"conditional", "final", "not needed"}, cells(drawRelease, s.first, s.end)),
		words([]string{"attached", "to follow"}, cells(drawReceipt, s.first, s.end)),
		numbers("Inspected", "A share of the line from 0% to 100%.", 0, 1, cells(drawInspected, s.first, s.end)),
		numbers("Changes", either, -most, most, cells(drawChanges, s.first, s.end)),
		numbers("Drawn before", amount, 0, most, cells(drawBefore, s.first, s.end)),
		numbers("Asked now", amount, 0, most, cells(drawAsked, s.first, s.end)),
		numbers("Agreed beyond", amount, 0, most, cells(drawToFinish, s.more, s.more)),
		numbers("Proven cash", "An amount of dollars.", -most, most, cells(drawToFinish, s.proven(), s.proven())),
	)
}
