package workbook

import (
	"fmt"
	"unicode/utf8"

	"ledgerboard/pkg/model"
)

// request is the page that a lender reads first: what is asked for, against what, and
// how it is repaid.
func (b *book) request() {
	a, g := b.answer, b.page(&grid{name: "The deal", widths: twoLists(), once: true, noted: true})
	row := g.title(lastColumn, a.Deal.Name, a.Deal.Address)
	row = b.asks(g, row)
	row = b.undrawn(g, b.cutBack(g, b.fallsDue(g, b.sticks(g, b.weights(g, b.roomFor(g, row)))))) + 1
	if len(a.Loans()) == 0 {
		row = g.blocks(row, "The house, without a loan", b.house(), "Cash at the purchase closing", b.cashToClose())
	} else {
		row = g.blocks(row, "The house", b.house(), "The loans asked for", b.asked())
		row = g.blocks(row, "The loans as a share", b.ratios(), "Cash at the purchase closing", b.cashToClose())
	}
	row = b.repayment(g, row, b.timing())
	for _, l := range a.Loans() {
		row = b.loanTerms(g, row, l)
	}
	row = b.checks(g, row) + 1
	if len(a.Loans()) > 0 {
		row = b.footnote(g, row, lastColumn)
	}
	g.toPrint(row)
}

// asks says what the workbook is for, and where an input of it cannot be so or is to be looked at again.
func (b *book) asks(g *grid, row int) int {
	says := "A house to buy, renovate and sell. Figures follow the inputs of this workbook" + butFor(append(b.italics(), b.still()...)) + "."
	b.markWhere(g, row, func(at string) string { return "LEN(" + at + ")<>" + itoa(utf8.RuneCountInString(says)) })
	return g.spoken(row, lastColumn, says+lookAgain, cell{value: says, formula: "IF(" + b.sound() + "," + quoted(says) + b.again() + "," + quoted(cannotBe) + ")"})
}

// italics are the figures that a search found, which a lender's workbook has of loans and of
// other options.
func (b *book) italics() []string {
	if len(b.answer.Loans())+len(b.how.Columns) == 0 {
		return nil
	}
	return []string{"those in italics"}
}

// roomFor says up to which month of the sale the figures hold, and speaks up past it.
func (b *book) roomFor(g *grid, row int) int {
	holds := fmt.Sprintf("The months of this workbook have room for a sale up to month %d.", b.last)
	return g.spoken(row, lastColumn, b.tooLong(), cell{value: holds, formula: "IF(" + b.usable() + "," + b.inMonths(quoted(holds), b.tooLong()) + "," + quoted("Whether the sale falls within the months of this workbook cannot be said.") + ")"})
}

func (b *book) house() []entry {
	out := []entry{b.line("price", "price")}
	out = append(out, b.lines([2]string{"assignment fee", "assignment_fee"}, [2]string{"auction premium", "auction_premium"})...)
	out = append(out, b.appraised("value as it is", "value as it is (not appraised: the price)", "as_is_value"),
		entry{"value after repair", b.figure("after_repair_value").strongly()}, b.line("  of it the lender counts", "lender_value"), b.line("renovation budget, with contingency", "budget"))
	return append(out, b.lines([2]string{"  of it set aside for parts not seen yet", "not_seen"}, [2]string{"  of it contingency", "contingency"})...)
}

// appraised is an entry that rests on the value as it is, in other words as long as nobody
// has appraised the house.
func (b *book) appraised(known, otherwise, line string) entry {
	if b.model.Find(b.model.Root, "as_is_value").Given != nil {
		return b.line(known, line)
	}
	c := b.figure(line)
	c.named = "IF(ABS(" + b.ref("as_is_value", 0) + "-" + b.ref("all_in_price", 0) + ")<0.005," + quoted(otherwise) + "," + quoted(known) + ")"
	return entry{otherwise, c}
}

func (b *book) asked() []entry {
	out := []entry{b.line("paid at the closing", "loan_at_closing"), b.line("held back for the work, paid in draws", "holdback")}
	out = append(out, b.lines([2]string{"reserve for interest", "reserve"})...)
	return append(out, entry{"the loans in full", b.figure("commitment").like(total)})
}

func (b *book) ratios() []entry {
	return []entry{
		b.line("of cost: price and budget (LTC)", "loan_to_cost"), b.appraised("at closing, of the value as it is", "at closing, of the price (no as-is value)", "loan_to_as_is"),
		{"of the value that the lender counts (ARV)", b.figure("loan_to_value").strongly()},
	}
}

// cashToClose is what the borrower brings, and what is left of her cash then.
func (b *book) cashToClose() []entry {
	out := []entry{b.line("total to buy", "total_to_buy"), b.line("  already paid by then", "already_paid"), {"  cash to close, to bring", b.figure("cash_to_close").strongly()}}
	if b.partnered() {
		out = append(out, b.line("of the total, the partner pays", "partner_to_buy"), b.line("  the borrower", "owner_to_buy"))
	}
	if b.answer.Deal.HasCash {
		out = append(out, b.line("the borrower's cash", "cash_available"), entry{"  left after the closing", b.figure("cash_after_closing").strongly()})
	}
	return append(out, b.line("the most of it tied up until the sale", "cash_needed"), entry{"  in month", b.figure("cash_needed_month").as(whole)})
}

func (b *book) timing() []entry {
	dated := !b.answer.Deal.PurchaseDate.IsZero()
	var out []entry
	if dated {
		out = append(out, entry{"the house is bought", cell{value: float64(b.purchaseDay()), look: look{format: day, right: true}}})
	}
	out = append(out, []entry{
		{"work starts, months from the purchase", b.figure("works_start").as(twoPlace)}, {"work is done, the house is listed", b.figure("works_end").as(twoPlace)},
		{"an offer is accepted", b.figure("offer_accepted").as(twoPlace)}, {"the sale closes", b.figure("hold_months").as(twoPlace).strongly()},
	}...)
	if dated {
		out = append(out, entry{"  about", b.saleDate()})
	}
	return out
}

// partnered reports whether a partner pays a part of what is short.
func (b *book) partnered() bool { return b.answer.Partnered() }

// repayment shows what the sale pays off and what it leaves to whom, beside the time until
// then.
func (b *book) repayment(g *grid, row int, timing []entry) int {
	out := []entry{b.line("the house sells for", "sale_price"), b.line("less selling", "selling_cost")}
	for _, l := range b.answer.Loans() {
		said := b.paysOff(l)
		back := b.of(l, "paid_back_at_sale")
		back.named = said.formula
		out = append(out, entry{said.value.(string), back})
	}
	by, left := "How the loans are repaid: by the sale", "left when selling and loans are paid"
	if len(b.answer.Loans()) == 0 {
		by, left = "The sale", "left when selling is paid"
	}
	out = append(out, entry{left, b.figure("sale_leaves").like(total)})
	if b.partnered() {
		out = append(out, b.line("  bills and refunds of that month", "other_at_sale"), b.line("  to the partner, profit and capital", "partner_at_sale"),
			entry{"  to the borrower", b.figure("owner_at_sale").strongly()})
	}
	if b.answer.Line("paid_back_at_sale").IsPositive() {
		out = append(out, entry{"sale, less selling, for each dollar paid off", b.figure("sale_covers").as(twoPlace)})
	}
	return g.blocks(row, by, out, "When", timing)
}

// paysOff says what is in the payoff of a loan: the balance, and what joins it or is due
// with it.
func (b *book) paysOff(l *model.Member) cell {
	of := func(line string) *model.Cell { return b.model.Find(l, line) }
	paid := of("interest_paid")
	how := b.choice(paid)
	at := b.choiceRef(paid)
	positive := func(line string) (string, bool) { return b.cellRef(of(line)) + ">0", b.answer.Of(l, line).IsPositive() }
	reserve, reserved := positive("reserve")
	waited, waits := positive("interest_at_payoff")
	least, tops := positive("top_up")
	fee, leaves := positive("exit_fee")
	said := "pays off " + l.Label + ": principal"
	live := quoted(said)
	for _, part := range []struct {
		words, condition string
		holds            bool
	}{
		{", interest added to it", "OR(" + at + `="added monthly",AND(` + at + `="reserve",` + reserve + "))", how == "added monthly" || how == "reserve" && reserved},
		{", interest due with it", waited, waits},
		{", what its least interest lacks", least, tops},
		{", exit fee", fee, leaves},
	} {
		if part.holds {
			said += part.words
		}
		live += "&IF(" + part.condition + "," + quoted(part.words) + `,"")`
	}
	return cell{value: said, formula: live}
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
	left := of([2]string{"paid at the closing", "loan_at_closing"}, [2]string{"held back for the work", "holdback"})
	if !b.answer.Of(l, "holdback").IsZero() && !b.answer.Of(l, "lender_budget").Equal(b.answer.Line("budget")) {
		left = append(left, of([2]string{"  of a budget" + b.counting(l), "lender_budget"})...)
	}
	left = append(left, of([2]string{"reserve for interest", "reserve"},
		[2]string{"the loan in full", "commitment"}, [2]string{"interest a year", "rate"}, [2]string{"  it runs on the", "interest_on"}, [2]string{"  it is paid", "interest_paid"})...)
	left = append(left, entry{"term, months", b.unlessNone(l, "term", "none stated")})
	if !b.of(l, "extension_months").is(0) {
		left = append(left, of([2]string{"  each extension, months", "extension_months"})...)
	}
	if !b.of(l, "renovation_share").is(0) {
		left = append(left, entry{"draws, months after the month of the work", b.of(l, "lag").as(whole)})
		left = append(left, of([2]string{"  kept of each until the work is done", "retainage_share"}, [2]string{"  the smallest that is paid", "least_draw"}, [2]string{"  fee for each", "draw_fee"})...)
	}
	right := of([2]string{"points, of the loan", "points_share"}, [2]string{"  in dollars", "points"}, [2]string{"fees at the closing", "loan_fees"}, [2]string{"interest", "interest"}, [2]string{"draw fees", "draw_fees"})
	if !b.of(l, "extension_months").is(0) {
		right = append(right, of([2]string{"fee of one extension", "extension_fee"})...)
	}
	right = append(right, of([2]string{"extension fees, as planned", "extension_fees"}, [2]string{"exit fee", "exit_fee"}, [2]string{"all that it costs", "cost"})...)
	for i, apr := range b.answer.APRs {
		if b.answer.Loans()[i] == l {
			right = append(right, entry{"annual percentage rate, as planned", rated(apr)})
		}
	}
	return g.blocks(row, l.Label, left, "What it costs", right)
}

// counting says how the budget that a lender counts differs from that of the deal.
func (b *book) counting(l *model.Member) (words string) {
	if b.answer.Of(l, "at_trade_price").IsPositive() {
		words = ", own work at trade price"
	}
	if b.answer.Of(l, "with_contingency").IsZero() {
		words += ", without contingency"
	}
	return words
}

// is reports whether a cell holds a number.
func (c cell) is(x float64) bool { return c.value == x }

// unlessNone is a line of a member on a page, or a word where it is nothing.
func (b *book) unlessNone(m *model.Member, line, word string) cell {
	c := b.of(m, line)
	c.look.right = true
	if c.formula != "" {
		c.formula = "IF(" + c.formula + "=0," + quoted(word) + "," + c.formula + ")"
	}
	if c.is(0) {
		c.value = word
	}
	return c
}
