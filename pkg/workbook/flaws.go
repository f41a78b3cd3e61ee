package workbook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// A flaw is a way in which an input cannot be so, whatever the others are. Of several that a cell
// may have the greatest is told, and of many cells that have one the first with the greatest.
type flaw int

const (
	unusual   flaw = iota + 1 // it can be, and is doubted in a file
	overOther                 // above what it may not be above
	notWhole
	noSide // a side of what has a size is nothing
	beyondRate
	beyondShare
	underLeast
	belowNone
	noDivisor // figures are divided by it, and it is nothing
	noNumber  // nor a word where it is one of some
)

// plainly is added to the flaw of an input that holds no formula: what is typed there is the cause,
// and what formulas of other inputs make of it is told behind it.
const plainly = 10

// A flawRule is what holds of an input, at an address, as long as it has not that flaw.
type flawRule struct {
	flaw  flaw
	holds func(at string) string
}

// flawRules are what must hold of an input, the greatest flaw first. Those behind the first are of
// numbers alone.
func (b *book) flawRules(c *model.Cell) (out []flawRule) {
	fact := strings.HasPrefix(c.Line.Name, "comp_") // one left blank is not known
	rule := func(f flaw, before, after string) {
		out = append(out, flawRule{f, func(at string) string {
			if fact {
				return "OR(" + at + `="",` + before + at + after + ")"
			}
			return before + at + after
		}})
	}
	beyond := func(f flaw, e deal.Edge) {
		than := map[bool]string{true: ">", false: "<"}[e.Least]
		if !e.Open {
			than += "="
		}
		after := "-" + numeral(e.At, bindsAll) + ",9)" + than + "0"
		if e.At.IsNegative() {
			after = "+" + numeral(e.At.Neg(), bindsAll) + ",9)" + than + "0"
		}
		if f == unusual && e.Least && deal.NoneIsUsual(c) { // nothing is not beyond it
			out = append(out, flawRule{f, func(at string) string { return "OR(" + at + "=0,ROUND(" + at + after + ")" }})
			return
		}
		rule(f, "ROUND(", after)
	}
	if chosen(c) {
		out = append(out, flawRule{noNumber, func(at string) string { return oneOf(at, wordsOf(c)) }})
		if word := b.answer.Deal.DoubtedWord(c); word != "" {
			rule(unusual, "", "<>"+quoted(word))
		}
		return out
	}
	switch {
	case c.Line.Unit == "flag":
		out = append(out, flawRule{noNumber, func(at string) string { return "AND(ISNUMBER(" + at + "),OR(" + at + "=0," + at + "=1))" }})
	case fact:
		out = append(out, flawRule{noNumber, func(at string) string { return "OR(ISNUMBER(" + at + ")," + at + `="")` }})
	default:
		rule(noNumber, "ISNUMBER(", ")")
	}
	waste := c.Line.ID() == "use.waste"
	if b.divides(c) {
		rule(noDivisor, "", ">0")
	}
	if waste {
		rule(noDivisor, "OR("+b.choiceRef(b.model.Find(b.model.Root, "waste_rule"))+"<>"+quoted("divided")+",", "<1)")
	}
	if b.fromNothing(c) {
		rule(belowNone, "", ">=0")
	}
	if least, is := b.leastOf(c); is {
		rule(underLeast, "ROUND(", "-"+numeral(least, bindsAll)+",9)>=0")
	}
	if waste {
		rule(beyondShare, "", "<1")
	}
	for _, e := range b.edgesOf(c) {
		switch _, told := b.leastOf(c); {
		case e.Least && (told || e.At.IsZero() && !e.Open && b.fromNothing(c)): // said above
		case isShare(c):
			beyond(beyondShare, e)
		default:
			beyond(beyondRate, e)
		}
	}
	for _, x := range b.ways(c, beyondRate, b.answer.Deal.Unfit(c)) {
		out = append(out, flawRule{x.flaw, x.holds})
	}
	if slices.Contains(sides, c.Line.ID()) && b.answer.Values.Of(c).IsPositive() {
		rule(noSide, "", ">0")
	}
	if deal.IsWhole(c.Line.Name) || c.Line.ID() == "opening.number" {
		rule(notWhole, "", "=INT("+whereAt+")")
	}
	beside := b.besideOf(c)
	told := func(f flaw) {
		for _, x := range beside {
			if x.flaw == f {
				out = append(out, flawRule{x.flaw, x.holds})
			}
		}
	}
	told(overOther)
	usual := b.usualOf(c)
	if low, high, both := closed(usual); both && c.Expr.IsNumber() && deal.NoneIsUsual(c) { // said in one, of what is typed as it is
		between := ">=" + numeral(low, bindsAll) + ","
		most := "<=" + numeral(high, bindsAll) + "))"
		out = append(out, flawRule{unusual, func(at string) string { return "OR(" + at + "=0,AND(" + at + between + at + most }})
		usual = nil
	}
	for _, e := range usual {
		beyond(unusual, e)
	}
	told(unusual)
	if dated(c) { // what stands for no edge is far beyond every day
		out = append(out, flawRule{unusual, func(at string) string {
			return "OR(ABS(" + at + ")<=" + numeral(deal.FarDay, bindsAll) + "," + at + "=" + numeral(b.answer.Values.Of(c), bindsSum) + ")"
		}})
	}
	return out
}

// closed are the two ends of a range that holds both; false of another.
func closed(all []deal.Edge) (low, high decimal.Decimal, both bool) {
	if len(all) != 2 || all[0].Least == all[1].Least || all[0].Open || all[1].Open {
		return low, high, false
	}
	if !all[0].Least {
		all[0], all[1] = all[1], all[0]
	}
	return all[0].At, all[1].At, true
}

// dated reports whether an input is a day, counted from that of the purchase.
func dated(c *model.Cell) bool { return c.Line.Set == "table" && c.Line.Unit == "day" }

// whereAt stands for the address of a cell in what comes behind it.
const whereAt = "\x00"

// oneOf is the condition that a cell holds one of some words.
func oneOf(at string, words []string) string {
	var all []string
	for _, w := range words {
		all = append(all, at+"="+quoted(w))
	}
	return "OR(" + strings.Join(all, ",") + ")"
}

// flawOf is the formula of the flaw of an input by its rules, with whereAt in the place of its
// address; 0 for none. The checks of the first page and the marks in the sheets both go by it.
func flawOf(rules []flawRule, more int) string {
	out := "0"
	for _, r := range slices.Backward(rules) {
		told := int(r.flaw) + more
		if r.flaw <= overOther { // whatever cannot be so by itself is told before it
			told = int(r.flaw)
		}
		out = "IF(" + r.holds(whereAt) + "," + out + "," + itoa(told) + ")"
	}
	return out
}

// A flawList is where the flaws of all inputs stand, each beside the place of its input.
type flawList struct {
	flaws, places, besides string
	some                   map[flaw]bool  // those that an input may have
	formulas               map[int]string // by the index of the input, with whereAt in the place of its address
}

// flawed lists the flaws of all that can be typed over, on the sheet of workings.
func (b *book) flawed() *flawList {
	if b.flaws != nil {
		return b.flaws
	}
	b.flaws = &flawList{some: map[flaw]bool{}, formulas: map[int]string{}}
	var typed []*model.Cell
	for _, c := range b.model.Cells {
		if b.typed(c) {
			rules := b.flawRules(c)
			more := 0
			if c.Expr.IsNumber() {
				more = plainly
			}
			b.flaws.formulas[c.Index] = flawOf(rules, more)
			typed = append(typed, c)
			for _, r := range rules {
				b.flaws.some[r.flaw] = true
			}
		}
	}
	g := b.workingSheet()
	first := g.next() // behind what the rules have worked out
	for _, c := range typed {
		b.working(b.whereIs(c), strings.ReplaceAll(b.flaws.formulas[c.Index], whereAt, b.cellRef(c)), 0)
		if beside := b.besideWords(c); beside != "" {
			g.set(g.next()-1, 3, text(beside, look{role: small}))
		}
	}
	column := func(col int) string {
		return sheetPrefix(g, nil) + address(first, col, true, true) + ":" + address(g.next()-1, col, true, true)
	}
	b.flaws.places, b.flaws.flaws, b.flaws.besides = column(1), column(2), column(3)
	return b.flaws
}

// whereIs names the place of an input for people.
func (b *book) whereIs(c *model.Cell) string {
	at, of := b.places[c.Index], ""
	switch {
	case c.Line.Set == model.Deal:
	case at.grid == b.inputs:
		of = b.called(c.Member) + ", "
	default:
		of = c.Member.Path() + ", "
	}
	months := ""
	switch {
	case deal.InWeeks(c):
		months = ", which is in months of 4.35 weeks,"
	case b.answer.Deal.DoubtedWord(c) != "":
		months = ", which counts for nothing once it is bad (its work goes into the deal file),"
	case dated(c):
		months = ", which is in days from the purchase,"
	}
	return at.grid.name + ", cell " + address(at.row, at.col, false, false) + ": " + of + words(c.Line) + months
}

// none is the condition that no input has a flaw; "" where none can.
func (b *book) none(f flaw) string {
	all := b.flawed()
	if !all.some[f] {
		return ""
	}
	return "COUNTIF(" + all.flaws + "," + itoa(int(f)) + ")+COUNTIF(" + all.flaws + "," + itoa(int(f)+plainly) + ")=0"
}

// flawless begins what the first page says where no input has a flaw.
const flawless = "Every input can be so by itself."

// firstFlaw names the first input that cannot be so, and how many there are.
func (b *book) firstFlaw(g *grid, row int) int {
	all := b.flawed()
	if len(all.some) == 0 {
		return row
	}
	good := flawless + " One that cannot is named here, and red on its sheet."
	worst := "MAX(" + all.flaws + ")"
	of := func(column string) string { return "INDEX(" + column + ",MATCH(" + worst + "," + all.flaws + ",0))" }
	others := "COUNTIF(" + all.flaws + `,">0")-1`
	red := ". What cannot be so, or is not usual, is red on its sheet."
	c := cell{value: good, formula: "IF(" + worst + "=0," + quoted(good) + "," + of(all.places) + "&IF(" + worst + "<=" + itoa(int(overOther)) + "," + of(all.besides) + `,"")&IF(` + worst + "=" + itoa(int(unusual)) + "," + quoted(" is not usual, look again") + "," + quoted(" cannot be so") + ")" +
		"&IF(" + others + `>0," (and "&` + others + `&" more)","")&` + quoted(red) + ")"}
	b.markWhere(g, row, func(at string) string { return "LEFT(" + at + "," + itoa(len(flawless)) + ")<>" + quoted(flawless) })
	return g.spoken(row, lastColumn, good, c)
}
