package workbook

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What is said of loans that would give cash back, where none would and where that cannot be told.
const (
	noneBack    = "No loan is cut for being more than what is paid at the purchase."
	untoldBacks = "Whether a loan is more than what is paid at the purchase cannot be said."
)

// cutBack says on a first page which loans are cut since they would give cash back at the purchase,
// in the words of the answer, as loans and price now stand.
func (b *book) cutBack(g *grid, row int) int {
	words := strings.Split(answer.CutBack, "%s")
	return b.loans(g, row, loanNotice{noneBack, untoldBacks, "Lower the loan, or ask the lender.", func(l *model.Member) loanTold {
		cut, now := b.of(l, "cut_no_cash_back"), b.answer.Of(l, "cut_no_cash_back")
		tells := func(x decimal.Decimal) string {
			return fmt.Sprintf(answer.CutBack, l.Label, quantity.FormatMoney(x)) + ". "
		}
		live := quoted(l.Label+words[1]) + `&TEXT(` + cut.formula + `,"$#,##0.00")&` + quoted(words[2]+". ")
		return loanTold{tells(now), tells(decimal.New(99999999, -2)), now.IsPositive(), cut, live}
	}})
}
