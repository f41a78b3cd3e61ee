package workbook

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// request is the page that a lender reads first: what is asked for, against what, and
// how it is repaid.
func (b *book) request() {
	a, g := b.answer, b.page(&grid{name: "The deal", widths: twoLists(), once: true, noted: true})
	row := g.title(lastColumn, a.Deal.Name, a.Deal.Address)
	row = g.paragraph(row, 1, lastColumn, "A house to buy, renovate and sell. All figures follow the inputs of this workbook.", look{role: small}) + 1
	row = g.blocks(row, "The house", b.house(), "The loans asked for", b.asked())
	row = g.blocks(row, "The loans as a share", b.ratios(), "Cash at the purchase closing", b.cashToClose())
	row = b.repayment(g, row, b.timing())
	for _, l := range a.Loans() {
		row = b.loanTerms(g, row, l)
	}
	row = b.checks(g, row)
	if len(a.Loans()) > 0 {
		b.footnote(g, row+1, lastColumn)
	}
}

func (b *book) house() []entry {
	out := []entry{b.line("price", "price")}
	out = append(out, b.lines([2]string{"assignment fee", "assignment_fee"}, [2]string{"auction premium", "auction_premium"})...)
	return append(out, b.line("value as it is", "as_is_value"), entry{"value after repair", b.figure("after_repair_value").strongly()}, b.line("renovation budget, with contingency", "budget"))
}

func (b *book) asked() []entry {
	out := []entry{b.line("paid at the closing", "loan_at_closing"), b.line("held back for the work, paid in draws", "holdback")}
	out = append(out, b.lines([2]string{"reserve for interest", "reserve"})...)
	return append(out, entry{"the loans in full", b.figure("commitment").like(total)})
}

func (b *book) ratios() []entry {
	return []entry{
		b.line("of cost: price and budget (LTC)", "loan_to_cost"), b.line("at closing, of the value as it is", "loan_to_as_is"),
		{"of the value after repair (ARV)", b.figure("loan_to_value").strongly()},
	}
}

// cashToClose is what the borrower brings, and what is left of her cash then.
func (b *book) cashToClose() []entry {
	out := []entry{b.line("total to buy", "total_to_buy"), b.line("  already paid by then", "already_paid"), {"  cash to close, to bring", b.figure("cash_to_close").strongly()}}
	if b.answer.Deal.HasCash {
		left := b.answer.Line("cash_available").Add(b.answer.Month("owner_net", 0))
		out = append(out, b.line("the borrower's cash", "cash_available"),
			entry{"  left after the closing", worked(left, b.ref("cash_available", 0)+"+"+b.ref("owner_net", 0), look{role: strong, format: dollars})})
	}
	return append(out, b.line("the most of it tied up until the sale", "cash_needed"), entry{"  in month", b.figure("cash_needed_month").as(whole)})
}

func (b *book) timing() []entry {
	out := []entry{
		{"work starts, months from the purchase", b.figure("works_start").as(twoPlace)}, {"work is done, the house is listed", b.figure("works_end").as(twoPlace)},
		{"an offer is accepted", b.figure("offer_accepted").as(twoPlace)}, {"the sale closes", b.figure("hold_months").as(twoPlace).strongly()},
	}
	if !b.answer.Deal.PurchaseDate.IsZero() {
		out = append(out, entry{"  about", b.saleDate()})
	}
	return out
}

// repayment shows what the sale pays off, beside the time until then.
func (b *book) repayment(g *grid, row int, timing []entry) int {
	out := []entry{{"the house sells for", b.figure("sale_price")}, {"less selling", b.figure("selling_cost")}}
	first := row + 1
	due := decimal.Zero
	for _, l := range b.answer.Loans() {
		out = append(out, entry{"pays off " + l.Label + ", with interest and fees", b.of(l, "paid_back_at_sale")})
		due = due.Add(b.answer.Of(l, "paid_back_at_sale"))
	}
	at := func(i int) string { return address(first+i, 2, false, false) }
	net := b.answer.Line("sale_price").Sub(b.answer.Line("selling_cost"))
	loans := sumOf(2, first+2, first+len(out)-1)
	out = append(out, entry{"left to the borrower", worked(net.Sub(due), at(0)+"-"+at(1)+"-"+loans, look{role: total, format: dollars})})
	if due.IsPositive() {
		out = append(out, entry{"sale, less selling, for each dollar paid off", worked(formula.Divide(net, due), "IF("+loans+"=0,0,("+at(0)+"-"+at(1)+")/"+loans+")", look{format: twoPlace})})
	}
	return g.blocks(row, "How the loans are repaid: by the sale", out, "When", timing)
}

// loanTerms are what is agreed of a loan, and what it costs.
func (b *book) loanTerms(g *grid, row int, l *model.Member) int {
	of := func(pairs ...[2]string) (out []entry) {
		for _, p := range pairs {
			c := b.model.Find(l, p[1])
			if b.stays(c) && b.answer.Values.Of(c).IsZero() {
				continue
			}
			out = append(out, entry{p[0], b.shownAt(nil, c, 0)})
		}
		return out
	}
	left := of([2]string{"paid at the closing", "loan_at_closing"}, [2]string{"held back for the work", "holdback"}, [2]string{"reserve for interest", "reserve"},
		[2]string{"the loan in full", "commitment"}, [2]string{"interest a year", "rate"}, [2]string{"term, months", "term"})
	right := of([2]string{"points", "points"}, [2]string{"fees at the closing", "loan_fees"}, [2]string{"interest", "interest"}, [2]string{"draw fees", "draw_fees"},
		[2]string{"extension fees", "extension_fees"}, [2]string{"all that it costs", "cost"})
	for i, apr := range b.answer.APRs {
		if b.answer.Loans()[i] == l {
			right = append(right, entry{"annual percentage rate, as planned", rated(apr)})
		}
	}
	return g.blocks(row, l.Label, left, "What it costs", right)
}
