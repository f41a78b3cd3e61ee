package workbook

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What is said of when the loans fall due, where none is early and where that cannot be told.
const (
	noneDue    = "No loan falls due before the sale without an extension agreed."
	untoldDues = "Whether a loan falls due before the sale cannot be said."
)

// fallsDue says on a first page which loans fall due before the sale without an extension, in the
// words in which the file is doubted, as terms and the hold now stand.
func (b *book) fallsDue(g *grid, row int) int {
	months := func(at, places string) string {
		at = "ROUND(" + at + "," + places + ")"
		return at + "&IF(" + at + `=1," month"," months")`
	}
	words, hold := strings.Split(deal.FallsDue, "%s"), b.figure("hold_months")
	return b.loans(g, row, loanNotice{noneDue, untoldDues, "Ask the lender.", func(l *model.Member) loanTold {
		early, term := b.of(l, "due_before_sale"), b.of(l, "term")
		tells := fmt.Sprintf(deal.FallsDue, loanNamed(l), quantity.FormatMonths(b.answer.Of(l, "term"), 1), deal.HoldBeside(b.answer.Of(l, "term"), b.answer.Line("hold_months"))) + ". "
		places := "IF(ROUND(" + hold.formula + ",1)=ROUND(" + term.formula + ",1),2,1)" // as deal.HoldBeside
		live := quoted(loanNamed(l)+words[1]) + "&" + months(term.formula, "1") + "&" + quoted(words[2]) + "&" + months(hold.formula, places) + "&" + quoted(words[3]+". ")
		return loanTold{tells, tells, b.answer.Of(l, "due_before_sale").Round(9).IsPositive(), early, live}
	}})
}
