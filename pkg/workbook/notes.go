package workbook

import (
	"strings"
	"unicode/utf8"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
)

// notes is the page of what the workbook rests on, in words.
func (b *book) notes() {
	g := b.page(&grid{name: "Notes", widths: []float64{34, 66}})
	row := g.title(2, "Notes", "What the figures rest on, how they are worked out, and how to change them.") + 1
	if said := b.answer.Deal.Notes; said != "" && b.how.For == Owner {
		row = g.told(row, "Your own notes", paragraphs(said))
	}
	row = b.toldAssumptions(g, row)
	row = b.cuts(g, row)
	for _, part := range b.conventions() {
		row = g.told(row, part[0], part[1:])
	}
	if b.how.For == Owner {
		row = b.doubtful(g, row)
	}
	b.cautions(g, row)
	g.together()
}

// paragraphs are the lines of a text, those that no row has room for in several.
func paragraphs(said string) (all []string) {
	const most = 1500 // letters: a row is no higher than 409 points
	for line := range strings.Lines(said) {
		line = strings.TrimSpace(line)
		for utf8.RuneCountInString(line) > most {
			part := string([]rune(line)[:most])
			if at := strings.LastIndex(part, " "); at > 0 {
				part = part[:at]
			}
			all, line = append(all, strings.TrimSpace(part)), strings.TrimSpace(line[len(part):])
		}
		if line != "" {
			all = append(all, line)
		}
	}
	return all
}

// told writes paragraphs under a heading and returns a row below them.
func (g *grid) told(row int, head string, all []string) int {
	g.heading(row, 1, 2, head)
	row++
	for _, s := range all {
		row = g.paragraph(row, 1, 2, s, look{})
	}
	return row + 1
}

// toldAssumptions lists what is assumed because the deal file does not say.
func (b *book) toldAssumptions(g *grid, row int) int {
	g.heading(row, 1, 2, "Assumed, because the deal file does not say")
	row++
	first := row
	tell := func(what, meaning string) {
		g.set(row, 1, text(what, look{wrap: true}))
		g.paragraph(row, 2, 2, meaning, look{role: small})
		g.height(row, high(what, g.widths[0]))
		row++
	}
	for _, o := range b.answer.Deal.Firsts {
		tell(answer.FirstOption(o), "the scope does not name the room")
	}
	for _, c := range b.answer.Assumed {
		if !b.hidden(c.Line) {
			tell(b.answer.Assumption(c), c.Line.Meaning)
		}
	}
	if row == first {
		row = g.paragraph(row, 1, 2, "Nothing.", look{})
	}
	return row + 1
}

// cuts says of each product cut from sticks whether the cut list still fits.
func (b *book) cuts(g *grid, row int) int {
	if len(b.answer.Deal.Cuts) == 0 {
		return row
	}
	g.heading(row, 1, 2, "Cut lists: whether the sticks still fit the work")
	row = g.paragraph(row+1, 1, 2, "How many sticks of each length are bought comes from cutting the pieces out of them, which a formula cannot do. Where the feet that the work takes have changed, the number of sticks is that of the deal file as it was: run the program for a new cut list. A change that leaves the feet the same does not show here.", look{role: small})
	for _, cut := range b.answer.Deal.Cuts {
		c := b.model.Find(cut.Product, "total_bought")
		ok := "fits the work"
		g.label(row, 1, cut.Product.Label, look{})
		g.set(row, 2, cell{value: ok, formula: "IF(" + b.fits(c) + `,"` + ok + `","lengths have changed: cut anew")`, look: look{role: strong}})
		row++
	}
	return row + 1
}

// uncut is the condition that the work takes the same feet of each product cut from sticks
// as when it was cut, or nothing where none is.
func (b *book) uncut() string {
	var same []string
	for _, cut := range b.answer.Deal.Cuts {
		same = append(same, b.fits(b.model.Find(cut.Product, "total_bought")))
	}
	if len(same) == 0 {
		return ""
	}
	return nested("AND(", same)
}

// fits is the condition that as much of a product is bought as when it was cut.
func (b *book) fits(bought *model.Cell) string {
	return "ABS(" + b.cellRef(bought) + "-" + numeral(b.answer.Values.Of(bought), bindsAll) + ")<0.000001"
}

// sticks says below a headline whether the cut lists, and what comes along, still fit.
func (b *book) sticks(g *grid, row int) int {
	const untold = "Whether the cut lists fit cannot be said."
	const brought = "What comes along fits the work."
	fit, anew := "The cut lists fit the work.", "Lengths have changed: cut anew. Numbers of sticks, and what they cost, are those of the deal file as it was (Notes)."
	same := b.uncut()
	if same == "" {
		if along, first := b.alongSays(brought, ""); along != "" {
			return g.spoken(row, lastColumn, alongAnew, cell{value: first, formula: along})
		}
		return row
	}
	formula := "IF(ISERROR(" + same + ")," + quoted(untold) + ",IF(" + same + "," + quoted(fit) + "," + quoted(anew) + "))"
	if along, first := b.alongSays("", " "); along != "" {
		formula, anew, fit = formula+"&"+along, anew+" "+alongAnew, fit+first
	}
	return g.spoken(row, lastColumn, anew, cell{value: fit, formula: formula})
}

// conventions are parts with a heading each.
func (b *book) conventions() [][]string {
	change := []string{"To change something",
		"Shaded cells are inputs that the deal file gives; framed ones are inputs that it does not give and that have a default. What changes no figure of this workbook is neither. Both can be typed over, on the sheet Inputs and, for pieces of work and products, on the sheets Pieces of work, What it takes, What is bought and Sticks. All else is locked against slips, without a password.",
		"Which rooms there are, which option is done to each, which work it brings along, which loans and charges there are: that is the shape of the deal, and changing it takes the program. So does a new cut list, and what comes along with a piece of work when own hands or a trade do it instead: a change of who moves the hours and the labour of that piece alone. So does how much comes along where a part or a count of work is changed, or the size of a room where work is counted: it goes by where each lies.",
		"A change lives in this workbook only. To keep it, put it into the deal file.",
	}
	values := []string{"Formulas and values",
		"Nearly every figure is a formula of the inputs and is worked out anew when one changes. Values, in italics on the pages in front, are what no formula gives: offers, break-evens, rates of return and of loans are found by search; sticks by cutting; weights of comparables, and what sales tell of amounts, by the program; other options by another run. They are right for the deal file as it was.",
	}
	if b.how.For == Lender {
		change = change[:2]
		values = []string{"Formulas and values", "Nearly every figure is a formula of the inputs and is worked out anew when one changes. A few stand as values: what is found by search, such as an annual percentage rate, how many sticks are cut, what comparables weigh and tell of amounts, and what rests on figures that are not in this workbook."}
	}
	return [][]string{change, values,
		{"How it is worked out",
			"A month is 365/12 days, so 12 months are a year of 365 days. Month 0 is the purchase closing. The sale closes in the last month begun; interest and charges by time count the part of it that has passed.",
			"Money is rounded to cents, half away from nothing, where it changes hands; sums add rounded amounts. Roundings look at nine decimals first.",
			"Interest runs on the balance at the end of the month before, unless the loan says otherwise. Draws are paid in arrears: for work of a month that is done, after the lender's lag.",
			"Cash needed is the most that is tied up at any time from the closing on, bills of a month counted before what comes in that month.",
			"Rates of return for a year make a short deal look better than it is: nobody knows whether the money finds as good a deal at once.",
			"Cells hold about 15 digits. The program works with all of them; what it shows to the cent is the same here.",
			"There is room for " + itoa(more) + " months after the planned sale. A hold longer than that takes the program.",
		}}
}

// doubtful lists what the file or the results make one look at again.
func (b *book) doubtful(g *grid, row int) int {
	if len(b.answer.Warnings) == 0 {
		return row
	}
	var all []string
	for _, d := range b.answer.Warnings {
		s := d.Message
		if d.Pos.Line > 0 {
			s = "line " + itoa(d.Pos.Line) + ": " + s
		}
		all = append(all, s+strings.TrimRight(". "+d.Hint, ". "))
	}
	return g.told(row, "Doubtful in the deal file as it stood; look again", all)
}

// cautions writes the cautions in full, with what each rests on.
func (b *book) cautions(g *grid, row int) {
	g.heading(row, 1, 2, careful)
	row++
	for _, c := range b.answer.Cautions {
		if b.how.For == Lender && c.ID == "tax" { // hers alone
			continue
		}
		if b.how.For == Lender {
			c.Text = c.Told
		}
		g.set(row, 1, text(c.Title, look{role: strong, wrap: true}))
		g.paragraph(row, 2, 2, c.Text, look{})
		g.height(row, high(c.Title, g.widths[0]/1.1))
		row = g.paragraph(row+1, 2, 2, c.Source, look{role: small})
	}
}
