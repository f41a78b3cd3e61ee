package workbook

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What is said of loans that are cut, where none is and where that cannot be told.
const (
	noneBack     = "No loan is cut for being more than what is paid at the purchase."
	untoldBacks  = "Whether a loan is more than what is paid at the purchase cannot be said."
	noneCapped   = "No loan is cut by a cap of its lender."
	untoldCapped = "Whether a loan is cut by a cap of its lender cannot be said."
	noneUndrawn  = "Every holdback comes in whole before the sale."
	untoldDrawn  = "Whether every holdback comes in before the sale cannot be said."
)

// cutBack says on a first page which loans are cut since they would give cash back at the purchase, or
// by a cap, in the words of the answer, as loans, price and values now stand.
func (b *book) cutBack(g *grid, row int) int {
	row = b.loans(g, row, loanNotice{noneBack, untoldBacks, "Lower the loan, or ask the lender.", func(l *model.Member) loanTold {
		return b.cut(l, "cut_no_cash_back", answer.CutBack)
	}})
	return b.loans(g, row, loanNotice{noneCapped, untoldCapped, "Have that much more cash ready, or look at the value and the cost that the lender counts.", func(l *model.Member) loanTold {
		if !b.answer.Of(l, "value_cap").IsPositive() && !b.answer.Of(l, "cost_cap").IsPositive() {
			return loanTold{}
		}
		return b.cut(l, "cut_by_caps", answer.CutByCap)
	}})
}

// undrawn says on a first page of which loans some of the holdback never comes in before the sale, in
// the words of the answer, as draws and the hold now stand.
func (b *book) undrawn(g *grid, row int) int {
	return b.loans(g, row, loanNotice{noneUndrawn, untoldDrawn, "Ask the lender how soon draws are paid; what takes no cash, such as own work, is never drawn.", func(l *model.Member) loanTold {
		if !b.answer.Of(l, "holdback").IsPositive() {
			return loanTold{}
		}
		return b.cut(l, "never_drawn", answer.NeverDrawn)
	}})
}

// cut is what a line of a loan says is taken off it, or never comes in, in words that hold the loan's name and the amount.
func (b *book) cut(l *model.Member, line, format string) loanTold {
	cut, now := b.of(l, line), b.answer.Of(l, line)
	tells := func(x decimal.Decimal) string {
		return fmt.Sprintf(format, loanNamed(l), quantity.FormatMoney(x)) + ". "
	}
	words := strings.Split(format, "%s")
	live := quoted(loanNamed(l)+words[1]) + `&TEXT(` + cut.formula + `,"$#,##0.00")&` + quoted(words[2]+". ")
	return loanTold{tells(now), tells(decimal.New(99999999, -2)), now.IsPositive(), cut, live}
}
