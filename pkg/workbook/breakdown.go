package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// cents are dollars in a table that says so in its head.
const cents = `#,##0.00_-;-#,##0.00_-;0.00_-`

// tableSize is the size of letters in a table of many columns, in points.
const tableSize = 9

// The columns of the breakdown.
const (
	colNumber = iota + 1
	colElement
	colRoom
	colWork
	colQuantity
	colUnit
	colEach
	colMaterials
	colLabour
	colOneSum // what is not told apart into materials and labour
	colTotal
	colWho
	colDated
	colPermit
	colStart
	colFinish
	colLender
	colOwner
	colCode
)

var breakdownHeads = []struct {
	words string
	width float64
}{
	{"no.", 5}, {"ele-\nment", 5.6}, {"room", 10}, {"work and grade", 27}, {"quan-\ntity", 7}, {"unit", 5.2}, {"unit\nprice $", 8.6}, {"mate-\nrials $", 9}, {"labour $", 9},
	{"in one\nsum $", 9}, {"total $", 9.8}, {"who and licence", 13}, {"quote\nof", 9.4}, {"per-\nmit", 4.4}, {"from\nmonth", 5.6}, {"to\nmonth", 5.6}, {"lender\npays $", 9.8}, {"owner pays\nor works $", 9.8}, {"lender's\ncode", 7},
}

// A breakdown is the page of the lines of the renovation while it is made.
type breakdown struct {
	*book
	g      *grid
	heads  []int // the rows of the categories
	sums   map[int]decimal.Decimal
	rows   []lineRow
	asleep []int // rows of what comes to nothing as planned
	last   int   // the row of all together
}

// A lineRow is where a line stands.
type lineRow struct {
	row    int
	number string
	line   workLine
}

// breakdownPage lists the renovation line by line for whoever lends on it; nil if there is
// no work.
func (b *book) breakdownPage() *breakdown {
	lines, idle := b.workLines()
	if len(lines) == 0 {
		return nil
	}
	g := b.page(&grid{name: "Cost breakdown", heads: 3, wide: true, closed: true})
	d := &breakdown{book: b, g: g, sums: map[int]decimal.Decimal{}}
	g.set(1, 1, text("Cost breakdown", look{role: title}))
	g.height(1, titleHeight)
	g.set(2, 1, text("Each piece of work at what it costs finished by trades; what own hands do is counted at trade price too.", look{role: small}))
	for i, h := range breakdownHeads {
		g.widths = append(g.widths, h.width)
		g.set(3, i+1, text(h.words, look{role: heading, wrap: true, right: isNumber(i+1) && i+1 != colStart && i+1 != colFinish, center: i+1 == colStart || i+1 == colFinish, off: !isNumber(i+1) && i+1 > colQuantity, size: tableSize}))
	}
	for i, name := range pricebook.Categories {
		d.category(i+1, name, slices.DeleteFunc(slices.Clone(lines), func(l workLine) bool { return l.category != name }), idle)
	}
	d.rest(lines)
	d.contingency()
	d.together()
	d.ownPart()
	d.proof()
	d.sumsTooLarge()
	d.words()
	return d
}

func isNumber(col int) bool {
	return col >= colQuantity && col <= colTotal && col != colUnit || col >= colStart && col <= colOwner
}

// category writes a category with its total and its lines. The last takes also what the
// plan does nothing of, so that nothing is lost when a measure changes.
func (d *breakdown) category(n int, name string, lines []workLine, idle []*model.Cell) {
	if n < len(pricebook.Categories) || !slices.ContainsFunc(idle, func(c *model.Cell) bool { return d.places[c.Index].grid != nil }) {
		idle = nil
	}
	if len(lines)+len(idle) == 0 {
		return
	}
	head := d.g.next()
	d.heads = append(d.heads, head)
	d.g.set(head, colCode, cell{})
	for i, l := range lines {
		d.line(fmt.Sprintf("%d.%02d", n, i+1), l)
	}
	if idle != nil {
		d.idle(fmt.Sprintf("%d.%02d", n, len(lines)+1), idle)
	}
	d.headed(head, fmt.Sprintf("%d  %s", n, name))
}

// rest writes lines of categories that the price book of the owner has named herself.
func (d *breakdown) rest(lines []workLine) {
	n := len(pricebook.Categories)
	for len(lines) > 0 {
		name := lines[0].category
		same := func(l workLine) bool { return l.category == name }
		if !slices.Contains(pricebook.Categories, name) {
			n++
			d.category(n, name, slices.DeleteFunc(slices.Clone(lines), func(l workLine) bool { return !same(l) }), nil)
		}
		lines = slices.DeleteFunc(slices.Clone(lines), same)
	}
}

// headed writes the head of a category above its lines, with their totals.
func (d *breakdown) headed(row int, name string) {
	first, last := row+1, d.g.next()-1
	band := look{role: heading, size: tableSize}
	for col := 1; col <= len(breakdownHeads); col++ {
		d.g.set(row, col, text("", band))
	}
	d.g.set(row, 1, text(name, band))
	for _, col := range []int{colMaterials, colLabour, colOneSum, colTotal, colLender, colOwner} {
		sum := decimal.Zero
		for r := first; r <= last; r++ {
			sum = sum.Add(d.exactly(r, col))
		}
		d.keep(row, col, sum)
		d.g.set(row, col, cell{value: near(sum), formula: fmt.Sprintf("SUM(%s:%s)", address(first, col, false, false), address(last, col, false, false)),
			look: look{role: heading, format: cents, size: tableSize}})
	}
}

// exactly is the exact amount that stands in a cell of the page.
func (d *breakdown) exactly(row, col int) decimal.Decimal { return d.sums[row*100+col] }
func (d *breakdown) keep(row, col int, x decimal.Decimal) { d.sums[row*100+col] = x }

// put writes a sum of cells of the model.
func (d *breakdown) put(row, col int, all ...*model.Cell) {
	c := d.added(d.g, all...)
	c.look.size = tableSize
	sum := decimal.Zero
	for _, x := range all {
		sum = sum.Add(d.answer.Values.Of(x))
	}
	d.keep(row, col, sum)
	d.g.set(row, col, c)
}

func (d *breakdown) line(number string, l workLine) {
	g, row := d.g, d.g.next()
	d.rows = append(d.rows, lineRow{row, number, l})
	wrapped := look{size: tableSize, wrap: true}
	g.set(row, colNumber, text(number, look{size: tableSize}))
	g.set(row, colElement, text(strings.Replace(l.element, "none", "", 1), wrapped))
	g.set(row, colRoom, text(l.room, wrapped))
	g.set(row, colWork, text(l.work, wrapped))
	g.set(row, colUnit, text(l.unit, look{size: tableSize, off: true}))
	g.set(row, colWho, toFill(l.who))
	g.set(row, colDated, toFill(l.dated))
	g.set(row, colPermit, toFill(l.permit))
	g.set(row, colCode, toFill(""))
	d.put(row, colTotal, l.total)
	if l.quantity == nil {
		g.set(row, colQuantity, cell{value: 1.0, look: look{size: tableSize, format: whole}})
		g.set(row, colEach, cell{value: near(d.exactly(row, colTotal)), formula: address(row, colTotal, false, false), look: look{size: tableSize, format: cents}})
	} else {
		d.put(row, colQuantity, l.quantity)
		d.put(row, colEach, l.each)
		g.rows[row-1][colQuantity-1].look.format = twoPlace
		if l.unit == "each" || l.unit == "month" {
			g.rows[row-1][colQuantity-1].look.format = plain
		}
	}
	if l.oneSum || len(l.materials)+len(l.labour) == 0 {
		d.oneSum(row)
	} else {
		d.put(row, colMaterials, l.materials...)
		d.put(row, colLabour, l.labour...)
	}
	d.when(row)
	d.shares(row, l.pays)
}

// oneSum writes the total of a line that is not told apart.
func (d *breakdown) oneSum(row int) {
	sum := d.exactly(row, colTotal)
	d.keep(row, colOneSum, sum)
	d.g.set(row, colOneSum, worked(sum, address(row, colTotal, false, false), look{size: tableSize, format: cents}))
}

// toFill is a cell to be written in, with what is known already.
func toFill(known string) cell {
	c := cell{look: look{size: tableSize, wrap: true, off: true, role: blank}}
	if known != "" {
		c.value = known
	}
	return c
}

// when writes the months of a line: those of the whole work, until somebody knows better.
func (d *breakdown) when(row int) {
	for col, line := range map[int]string{colStart: "works_first_month", colFinish: "works_last_month"} {
		c := d.added(d.g, d.model.Find(d.model.Root, line))
		c.look = look{role: blank, format: whole, size: tableSize, center: true}
		d.g.set(row, col, c)
	}
}

// shares writes what lenders pay and what is left to the owner.
func (d *breakdown) shares(row int, pays *model.Cell) {
	d.put(row, colLender, pays)
	rest := d.exactly(row, colTotal).Sub(d.exactly(row, colLender))
	d.keep(row, colOwner, rest)
	d.g.set(row, colOwner, cell{value: near(rest), formula: address(row, colTotal, false, false) + "-" + address(row, colLender, false, false), look: look{format: cents, size: tableSize}})
}

// idle writes the line of what the plan does nothing of.
func (d *breakdown) idle(number string, totals []*model.Cell) {
	row, wrapped := d.g.next(), look{size: tableSize, wrap: true}
	d.g.set(row, colNumber, text(number, wrapped))
	d.g.set(row, colWork, text("nothing as planned; an amount comes here only where an input on the sheets behind is changed", wrapped))
	d.put(row, colTotal, totals...)
	d.oneSum(row)
	d.asleep = append(d.asleep, row)
	pays := make([]*model.Cell, len(totals))
	for i, c := range totals {
		pays[i] = d.model.Find(c.Member, "lender_pays")
	}
	d.put(row, colLender, pays...)
	rest := d.exactly(row, colTotal).Sub(d.exactly(row, colLender))
	d.keep(row, colOwner, rest)
	d.g.set(row, colOwner, cell{value: near(rest), formula: address(row, colTotal, false, false) + "-" + address(row, colLender, false, false), look: look{format: cents, size: tableSize}})
}

func (d *breakdown) contingency() {
	head := d.g.next()
	d.heads = append(d.heads, head)
	d.g.set(head, colCode, cell{})
	root := d.model.Root
	l := workLine{kind: kind{"", "none"}, work: "contingency: for what the walls hide; the part of it that is not needed is not spent", unit: "sum", oneSum: true,
		total: d.model.Find(root, "contingency"), pays: d.model.Find(root, "lenders_pay_contingency")}
	d.line("99.01", l)
	d.headed(head, "99  Contingency")
}

// together adds the categories up.
func (d *breakdown) together() {
	row := d.g.next()
	d.last = row
	for col := 1; col <= len(breakdownHeads); col++ {
		d.g.set(row, col, text("", look{role: total, size: tableSize}))
	}
	d.g.set(row, 1, text("All together", look{role: total, size: tableSize}))
	for _, col := range []int{colMaterials, colLabour, colOneSum, colTotal, colLender, colOwner} {
		var parts []string
		sum := decimal.Zero
		for _, h := range d.heads {
			parts = append(parts, address(h, col, false, false))
			sum = sum.Add(d.exactly(h, col))
		}
		d.keep(row, col, sum)
		d.g.set(row, col, cell{value: near(sum), formula: strings.Join(parts, "+"), look: look{role: total, format: cents, size: tableSize}})
	}
}

// ownPart tells what of the owner's part is own work and what is money.
func (d *breakdown) ownPart() {
	for _, x := range [][2]string{{"of the owner's part: own work, for which no one is paid", "own_work_of_it"}, {"of the owner's part: money", "money_of_it"}} {
		row := d.g.next()
		d.g.set(row, colNumber, text(x[0], look{size: tableSize}))
		d.put(row, colOwner, d.model.Find(d.model.Root, x[1]))
	}
}

// proof compares the totals with the deal's own.
func (d *breakdown) proof() {
	root := d.model.Root
	d.g.set(d.g.next()+1, 1, cell{})
	for _, p := range []struct {
		words string
		col   int
		cells []*model.Cell
	}{
		{"the renovation finished by trades, with contingency, as the deal has it", colTotal, d.cellsOf(root, "trade_cost", "contingency")},
		{"what lenders hold back for the work, as the deal has it", colLender, d.cellsOf(root, "holdback")},
	} {
		row := d.g.next()
		d.g.set(row, colNumber, text(p.words, look{size: tableSize}))
		d.put(row, colTotal, p.cells...)
		all := address(d.last, p.col, true, true)
		d.g.set(row, colWho, d.says(fmt.Sprintf("ABS(%s-%s)<0.005", all, address(row, colTotal, false, false)), d.exactly(row, colTotal).Equal(d.exactly(d.last, p.col)),
			"the lines come to this", "THE LINES DO NOT COME TO THIS"))
	}
}

// says is a sentence that follows a condition.
func (b *book) says(condition string, holds bool, yes, no string) cell {
	said := no
	if holds {
		said = yes
	}
	return cell{value: said, formula: "IF(" + condition + "," + quoted(yes) + "," + quoted(no) + ")", look: look{role: strong, size: tableSize, off: true}}
}

// inShort is a line in few words.
func inShort(l workLine) string {
	if l.room == "" {
		return l.work
	}
	return l.room + ": " + l.work
}

func (d *breakdown) words() {
	row := d.g.next() + 1
	for _, s := range []string{
		"Categories are the lines of a renovation lender's draw request in its order (HUD form HUD-9746-A; that there are 35 is published, names and order are from memory). Elements are those of NISTIR 6389 (public domain).",
		"Lines that the deal file states in its own words have their category and element by the words. Framed cells can be written over: who, licence, quote, permit, months, the lender's code.",
		"Permit: whether one is usual; the local building department decides. A price without a day of a quote is the price book's, or one that the deal file gives without a day. Months count from the purchase closing; a line has those of the whole work until somebody knows better.",
		"Where no grade is named, materials are of the price book's standard one. What is set aside for a part of the house not seen yet wants an inspection's report, not a quote.",
		"Owner pays or works: the rest of the line, in money or as own work, for which no one is paid. The lender pays cents that run on from line to line, so that all lines come to what is held back; of several lenders a later one pays of what those before it leave of each line.",
	} {
		d.g.set(row, 1, text(s, look{role: small, size: tableSize}))
		row++
	}
}
