package workbook

import (
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"
)

// An entry is a label and a figure.
type entry struct {
	label string
	cell  cell
}

// line is an entry of a line of the deal.
func (b *book) line(label, line string) entry { return entry{label, b.figure(line)} }

// lines are entries of lines of the deal, without those that can only be nothing.
func (b *book) lines(all ...[2]string) (out []entry) {
	for _, x := range all {
		if !b.nothing(x[1]) {
			out = append(out, b.line(x[0], x[1]))
		}
	}
	return out
}

// nothing reports whether a line of the deal is 0 whatever the inputs are.
func (b *book) nothing(line string) bool {
	c := b.model.Find(b.model.Root, line)
	return b.stays(c) && b.answer.Values.Of(c).IsZero()
}

// list writes entries one below the other and returns the first row below them.
func (g *grid) list(row, col int, all []entry) int {
	for _, e := range all {
		g.label(row, col, e.label, look{})
		g.rows[row-1][col-1].formula = e.cell.named
		g.set(row, col+1, e.cell)
		row++
	}
	return row
}

// label writes a label, over several lines where it is too long for its column.
func (g *grid) label(row, col int, s string, l look) {
	if points := high(s, g.widths[col-1]/l.wider()); points > 2*lineHeight {
		l.wrap = true
		g.height(row, points)
	}
	g.set(row, col, text(s, l))
}

// blocks writes two lists under headings side by side and returns a row below both.
func (g *grid) blocks(row int, leftHead string, left []entry, rightHead string, right []entry) int {
	for col, words := range map[int]string{1: leftHead, 4: rightHead} {
		g.heading(row, col, col+1, words)
	}
	return max(g.list(row+1, 1, left), g.list(row+1, 4, right)) + 1
}

// heading writes a heading over some columns.
func (g *grid) heading(row, from, to int, words string) {
	for col := from; col <= to; col++ {
		g.set(row, col, text("", look{role: heading}))
	}
	width := 0.0
	for col := from; col <= to; col++ {
		width += g.width(col)
	}
	if l := (look{role: heading}); linesOf(words, width/l.wider()) > 1 { // a long name of a loan
		g.paragraph(row, from, to, words, l)
		return
	}
	g.set(row, from, text(words, look{role: heading}))
}

// Of a line of text on a page.
const (
	lineHeight  = 13.2 // points
	titleHeight = 21.0
)

// high is how high a cell of a width must be for a text.
func high(s string, width float64) float64 {
	return float64(linesOf(s, width))*lineHeight + 2
}

// paragraph writes a text over some columns, as high as it needs, and returns the row
// below it. Cells that are one do not find their height by themselves.
func (g *grid) paragraph(row, from, to int, s string, l look) int {
	l.wrap = true
	for col := from; col <= to; col++ {
		g.set(row, col, cell{look: l})
	}
	g.set(row, from, text(s, l))
	g.merges = slices.DeleteFunc(g.merges, func(a area) bool { return a.row == row && a.col <= to && from <= a.toCol }) // what stood here before
	if to > from {
		g.merges = append(g.merges, area{row, from, row, to})
	}
	size, each := 1.0, lineHeight
	if l.role == lead {
		size, each = 1.25, lineHeight*1.25
	}
	width := 0.0
	for col := from; col <= to; col++ {
		width += g.widths[col-1]
	}
	g.height(row, float64(linesOf(s, width/size))*each+2)
	return row + 1
}

// spoken writes a paragraph over some columns whose words a formula says, with room for the
// longest of them, and returns the row below it.
func (g *grid) spoken(row, to int, longest string, c cell) int {
	next := g.paragraph(row, 1, to, longest, look{role: small})
	c.look = g.rows[row-1][0].look
	g.set(row, 1, c)
	return next
}

func (g *grid) height(row int, points float64) {
	if g.high == nil {
		g.high = map[int]float64{}
	}
	g.high[row] = math.Min(math.Max(points, g.high[row]), excelize.MaxRowHeight)
}

// linesOf is how many lines of a width a text takes.
func linesOf(s string, width float64) (n int) {
	for part := range strings.SplitSeq(s, "\n") {
		n++
		at := 0.0
		for word := range strings.FieldsSeq(part) {
			size := widthOf(word)
			if at > 0 && at+size > width {
				n++
				at = 0
			}
			at += size + widthOf(" ")
		}
	}
	return n
}

// widthOf is about how wide a text is, in units of column width, with a small margin: by
// the widths of the letters in the sans serif fonts that measure alike, from memory.
func widthOf(s string) (sum float64) {
	const unitsAnEm = 1.76 // at 10 points, where a unit is a digit at 11, with the margin
	for _, r := range s {
		em := 0.56
		switch {
		case strings.ContainsRune("ijlI|'", r):
			em = 0.24
		case strings.ContainsRune(" .,:;/!()[]-ft\"r", r):
			em = 0.31
		case strings.ContainsRune("ckszvxyJ", r):
			em = 0.5
		case strings.ContainsRune("mwMW%", r):
			em = 0.84
		case r >= 'A' && r <= 'Z', r > 0x2000:
			em = 0.69
		}
		sum += em * unitsAnEm
	}
	return sum
}

// title writes the name of a page and what it shows, and returns the row below.
func (g *grid) title(to int, name, about string) int {
	g.set(1, 1, text(name, look{role: title}))
	g.height(1, titleHeight)
	if about == "" {
		return 2
	}
	return g.paragraph(2, 1, to, about, look{role: small})
}

// worked is a number that a formula of the page's own cells gives.
func worked(x decimal.Decimal, formula string, l look) cell {
	return cell{value: near(x), formula: formula, look: l}
}

// searched is a number that a search gave: a value, set apart.
func searched(x decimal.Decimal, format string) cell {
	return cell{value: near(x), look: look{role: found, format: format}}
}

// said is a word in the place of a number that there is none of.
func said(s string) cell { return text(s, look{right: true, role: small}) }

// sumOf adds up cells of a column, from the first row to the last.
func sumOf(col, first, last int) string {
	if last < first {
		return "0"
	}
	return "SUM(" + address(first, col, false, false) + ":" + address(last, col, false, false) + ")"
}

// agree says whether two formulas come to the same, to the half cent.
func (b *book) agree(one, other string) cell {
	return cell{value: "ok", formula: b.looked(b.inMonths("IF(ABS("+one+"-"+other+`)<0.005,"ok","does not add up")`, "too long")), look: look{role: strong, right: true}}
}
