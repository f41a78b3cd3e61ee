package workbook

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// sourcesAndUses is the page of where the money until the sale comes from and what it
// is for.
func (b *book) sourcesAndUses() {
	g := b.page(&grid{name: "Sources and uses", widths: []float64{30, 15, 9, 2, 38, 15, 9}, once: true, noted: true, wide: true})
	said := "Where the money until the sale comes from, and what it is for. Nothing that the sale pays or settles is in it."
	if len(b.answer.Loans()) > 0 {
		said += " Points, fees and interest are part of what the loans cost on other pages: the same money, counted once."
	}
	row := g.title(7, "Sources and uses", said) + 1
	sources, uses := b.sources(), b.uses()
	last := row + max(len(sources), len(uses))
	one := b.shares(g, row, last+1, 1, "sources", sources, b.answer.Line("sources"))
	other := b.shares(g, row, last+1, 5, "uses", uses, b.answer.Line("uses"))
	g.set(last+3, 1, text("sources equal uses", look{}))
	g.set(last+3, 2, b.agree(one, other))
	g.set(last+3, 5, text("and both are those of the model", look{}))
	g.set(last+3, 6, b.agree(one+"-"+b.ref("sources", 0)+"+"+other, b.ref("uses", 0)))
}

// An amount is a label and the cell of the model that it is for.
type amount struct {
	label string
	of    *model.Cell
}

// amounts are lines of the deal, without those that can only be nothing.
func (b *book) amounts(all ...[2]string) (out []amount) {
	for _, x := range all {
		if !b.nothing(x[1]) {
			out = append(out, amount{x[0], b.model.Find(b.model.Root, x[1])})
		}
	}
	return out
}

func (b *book) sources() []amount {
	mine := "your money"
	if b.how.For == Lender {
		mine = "the borrower's money"
	}
	out := b.amounts([2]string{mine, "owner_money"}, [2]string{"partner's money", "partner_money"})
	for _, l := range b.answer.Loans() {
		out = append(out, amount{l.Label + ", at the closing", b.model.Find(l, "loan_at_closing")}, amount{l.Label + ", draws", b.model.Find(l, "draws")})
	}
	return append(out, b.amounts([2]string{"seller's credit", "seller_credit"}, [2]string{"received while the house is owned", "received_until_sale"}, [2]string{"prorations received", "deposits_received"})...)
}

func (b *book) uses() []amount {
	over := "left over, paid out to you"
	if b.how.For == Lender {
		over = "left over, paid out to the borrower"
	}
	return b.amounts([][2]string{
		{"price", "price"}, {"assignment fee", "assignment_fee"}, {"auction premium", "auction_premium"}, {"paid before the closing", "before_cost"},
		{"purchase closing", "closing_cost"}, {"points of the loans", "points"}, {"fees of the loans", "loan_fees"}, {"work, with contingency", "spend"},
		{"holding until the sale", "holding_until_sale"}, {"interest, fees and principal until the sale", "charges_until_sale"}, {"deposits and prorations paid", "deposits_paid"},
		{over, "owner_left_over"}, {"left over, paid out to the partner", "partner_left_over"},
	}...)
}

// shares lists amounts with the share of each, and their sum in a row; it returns where
// the sum is.
func (b *book) shares(g *grid, row, sumRow, col int, head string, all []amount, sum decimal.Decimal) string {
	g.heading(row, col, col+2, head)
	g.set(row, col+2, text("share", look{role: heading, right: true}))
	whole := address(sumRow, col+1, false, false)
	share := func(row int, x decimal.Decimal, l look) {
		of := decimal.Zero
		if !sum.IsZero() {
			of = formula.Divide(x, sum)
		}
		l.format = percent
		g.set(row, col+2, worked(of, "IF("+whole+"=0,0,"+address(row, col+1, false, false)+"/"+whole+")", l))
	}
	for i, x := range all {
		g.label(row+1+i, col, x.label, look{})
		g.set(row+1+i, col+1, b.shownAt(nil, x.of, 0))
		share(row+1+i, b.answer.Values.Of(x.of), look{})
	}
	g.set(sumRow, col, text("total", look{role: total}))
	g.set(sumRow, col+1, worked(sum, sumOf(col+1, row+1, row+len(all)), look{role: total, format: dollars}))
	share(sumRow, sum, look{role: total})
	return whole
}
