package workbook

import (
	"strings"

	"ledgerboard/pkg/model"
)

// A loanNotice is what a first page says of each loan of which something holds, as the inputs now
// stand.
type loanNotice struct {
	none, untold string // where it holds of none, and where that cannot be told
	ask          string // what to do, behind all that is told
	of           func(*model.Member) loanTold
}

// A loanTold is a notice of one loan: in words, the longest that they can be, whether it holds now, the
// cell that is above nothing where it holds, and the words as the text of a formula.
type loanTold struct {
	says, longest string
	now           bool
	over          cell
	live          string
}

// loans writes a notice, if there are loans, and returns the row below.
func (b *book) loans(g *grid, row int, n loanNotice) int {
	said, longest, live := "", "", `""`
	for _, l := range b.answer.Loans() {
		t := n.of(l)
		longest += t.longest
		if t.now {
			said += t.says
		}
		if t.over.formula != "" { // an input can move it
			live += "&IF(ROUND(" + t.over.formula + ",9)>0," + t.live + `,"")`
		}
	}
	if longest == "" {
		return row
	}
	c := cell{value: n.none, formula: "IF(" + b.usable() + ",IF((" + live + `)="",` + quoted(n.none) + "," + live + "&" + quoted(n.ask) + ")," + quoted(n.untold) + ")"}
	if said != "" {
		c.value = said + n.ask
	}
	return g.spoken(row, lastColumn, longest+n.ask, c)
}

// loanNamed is a loan's name where words begin with it: never with a sign that begins a formula.
func loanNamed(l *model.Member) string {
	if strings.ContainsAny(l.Label[:min(1, len(l.Label))], "=+-@") {
		return "loan " + l.Label
	}
	return l.Label
}
