package workbook

import (
	"os"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// A printer writes the formula of a cell as spreadsheet text.
type printer struct {
	*book
	at      *grid
	of      *model.Member
	month   int  // in which it is worked out, or -1
	private bool // it needs what is not in this workbook, so it cannot be a formula
	reads   []int
}

// How tightly spreadsheet operators bind.
const (
	bindsNothing = iota
	bindsCompare
	bindsSum
	bindsProduct
	bindsAll
)

var infix = map[formula.Code]struct {
	sign  string
	binds int
}{
	formula.Add: {"+", bindsSum}, formula.Sub: {"-", bindsSum}, formula.Mul: {"*", bindsProduct}, formula.Div: {"/", bindsProduct},
	formula.Less: {"<", bindsCompare}, formula.LessEqual: {"<=", bindsCompare}, formula.More: {">", bindsCompare},
	formula.MoreEqual: {">=", bindsCompare}, formula.Equal: {"=", bindsCompare}, formula.NotEqual: {"<>", bindsCompare},
}

// number is an expression as a number, in brackets if it binds less than it must.
func (p *printer) number(x *model.Expr, least int) string {
	if v, known := p.fixed(x, p.of); known {
		return numeral(v, least)
	}
	if x.Op == nil {
		return p.ref(p.model.Cells[x.Reads(p.of)])
	}
	if isCondition(x) {
		return "IF(" + p.condition(x) + ",1,0)"
	}
	switch x.Op.Code {
	case formula.Add, formula.Sub, formula.Mul, formula.Div:
		return p.infix(x, least)
	case formula.If:
		return p.branch(x, least)
	}
	if x.Op.Sheet == "" {
		return p.across(x)
	}
	all := make([]string, len(x.Args))
	for i, a := range x.Args {
		all[i] = p.number(a, bindsNothing)
	}
	return spelled(x.Op, all)
}

// spelled fills the spreadsheet text of an operator in.
func spelled(op *formula.Op, args []string) string {
	return os.Expand(op.Sheet, func(what string) string {
		if what == "*" {
			return strings.Join(args, ",")
		}
		i, err := strconv.Atoi(what)
		if err != nil || i > len(args) {
			panic("operator " + op.Name + " has no argument " + what)
		}
		return args[i-1]
	})
}

func (p *printer) infix(x *model.Expr, least int) string {
	a, b, code := x.Args[0], x.Args[1], x.Op.Code
	left, leftKnown := p.fixed(a, p.of)
	right, rightKnown := p.fixed(b, p.of)
	switch {
	case leftKnown && code == formula.Add && left.IsZero(), leftKnown && code == formula.Mul && left.Equal(one):
		return p.number(b, least)
	case !rightKnown:
	case (code == formula.Add || code == formula.Sub) && right.IsZero(), (code == formula.Mul || code == formula.Div) && right.Equal(one):
		return p.number(a, least)
	}
	in := infix[code]
	text := p.number(a, in.binds) + in.sign + p.number(b, in.binds+1)
	if in.binds < least {
		return "(" + text + ")"
	}
	return text
}

var one = decimal.NewFromInt(1)

func (p *printer) branch(x *model.Expr, least int) string {
	if yes, known := p.fixed(x.Args[0], p.of); known {
		if yes.IsZero() {
			return p.number(x.Args[2], least)
		}
		return p.number(x.Args[1], least)
	}
	return "IF(" + p.condition(x.Args[0]) + "," + p.number(x.Args[1], bindsNothing) + "," + p.number(x.Args[2], bindsNothing) + ")"
}

func isCondition(x *model.Expr) bool {
	return x.Op != nil && (x.Op.Code >= formula.Less && x.Op.Code <= formula.Not)
}

// condition is an expression as what IF, AND, OR and NOT ask.
func (p *printer) condition(x *model.Expr) string {
	if !isCondition(x) {
		return p.number(x, bindsNothing)
	}
	if in, is := infix[x.Op.Code]; is {
		return p.compare(x, in.sign)
	}
	var all []string
	for _, a := range x.Args {
		if v, known := p.fixed(a, p.of); known && x.Op.Code == formula.And && !v.IsZero() || known && x.Op.Code == formula.Or && v.IsZero() {
			continue // it decides nothing
		}
		all = append(all, p.condition(a))
	}
	if len(all) == 1 && x.Op.Code != formula.Not {
		return all[0]
	}
	return spelled(x.Op, all)
}

// compare rounds differences to nine decimals, as far as amounts are told apart, unless
// both sides are free of roundings.
func (p *printer) compare(x *model.Expr, sign string) string {
	a, b := x.Args[0], x.Args[1]
	switch {
	case b.Node != nil && b.Node.Text != "":
		return p.ref(p.model.Cells[a.Reads(p.of)]) + sign + quoted(b.Node.Text)
	case p.clean(a) && p.clean(b):
		return p.number(a, bindsSum) + sign + p.number(b, bindsSum)
	}
	if v, known := p.fixed(b, p.of); known && v.IsZero() {
		return "ROUND(" + p.number(a, bindsNothing) + ",9)" + sign + "0"
	}
	if b.Op != nil && b.Op.Code == formula.Negative {
		return "ROUND(" + p.number(a, bindsSum) + "+" + p.number(b.Args[0], bindsProduct) + ",9)" + sign + "0"
	}
	return "ROUND(" + p.number(a, bindsSum) + "-" + p.number(b, bindsProduct) + ",9)" + sign + "0"
}

// clean reports whether a value is a number as somebody wrote it, or a count.
func (p *printer) clean(x *model.Expr) bool {
	if _, known := p.fixed(x, p.of); known {
		return true
	}
	if x.Op != nil {
		return x.Op.Code == formula.Month
	}
	l := p.model.Cells[x.Reads(p.of)].Line
	return l.Input || l.Unit == "flag" || l.Name == "sale_month"
}

// quoted is a text in a formula. Spreadsheets take at most 255 characters in quotes, so that a
// longer one is put together of pieces.
func quoted(s string) string {
	const piece, most = 100, 250 // in characters, of which quotes and rare ones count twice
	in := func(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }
	if len(in(s)) <= most {
		return in(s)
	}
	var parts []string
	for all := []rune(s); len(all) > 0; all = all[min(piece, len(all)):] {
		parts = append(parts, in(string(all[:min(piece, len(all))])))
	}
	return "(" + strings.Join(parts, "&") + ")"
}

// ref is how the formula refers to a cell, in its month.
func (p *printer) ref(c *model.Cell) string {
	at := p.places[c.Index]
	p.reads = append(p.reads, c.Index)
	switch {
	case at.grid == nil && c.Line.Unit == "choice" && p.stays(c):
		return quoted(p.choice(c))
	case at.grid == nil:
		p.private = true
		return "0"
	case c.Line.Monthly:
		return at.from(p.at, p.month)
	}
	if house := p.houseOf(c); house != nil { // left blank, a fact is not known and not adjusted
		return "IF(ISNUMBER(" + at.from(p.at, 0) + ")," + at.from(p.at, 0) + "," + p.ref(house) + ")"
	}
	return at.from(p.at, 0)
}

// houseOf is the house's cell of a fact of a sold house that can be typed over; nil for any other.
func (b *book) houseOf(c *model.Cell) *model.Cell {
	if c.Member.Set != "comp" || !b.editable(c) {
		return nil
	}
	for _, f := range deal.Compared() {
		if house := b.model.Find(b.model.Root, f.Ours); f.Theirs == c.Line.Name && b.places[house.Index].grid != nil {
			return house
		}
	}
	return nil
}

// choice is the word that a cell of choice has.
func (b *book) choice(c *model.Cell) string {
	i := int(b.answer.Values.Of(c).IntPart())
	if i < 1 || i > len(c.Line.Choices) {
		return ""
	}
	return c.Line.Choices[i-1]
}

// choiceRef is an input of choice in a formula: where it stands, or its word.
func (b *book) choiceRef(c *model.Cell) string {
	if b.places[c.Index].grid != nil {
		return b.cellRef(c)
	}
	return quoted(b.choice(c))
}

// numeral is a number in a formula, to the 15 digits that a cell holds.
func numeral(x decimal.Decimal, least int) string {
	text := strconv.FormatFloat(x.InexactFloat64(), 'f', -1, 64)
	if len(text) > 18 {
		text = strconv.FormatFloat(x.InexactFloat64(), 'G', 15, 64)
	}
	if least > bindsNothing && x.IsNegative() {
		return "(" + text + ")"
	}
	return text
}
