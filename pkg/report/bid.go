package report

import (
	"io"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// Bid writes the page of a bid: the answer first, then the deal on one screen.
// With cautions in full, their texts and sources follow.
func Bid(w io.Writer, a *answer.Answer, s Style, cautions bool) error {
	p := newPage(w, s)
	verdict(p, a)
	shakes(p, a)
	p.heading("The deal at the asking price of " + a.Asked())
	columns(p, results(a), timing(a))
	p.heading("Where the money until the sale comes from, and what it is for")
	columns(p, sources(a), uses(a))
	remarks(p, a)
	p.heading("From the rule of thumb to the maximum offer, and how far things may move")
	columns(p, bridge(a), breakEvens(a))
	notes(p, a, cautions)
	return p.flush()
}

// results are what the deal yields.
func results(a *answer.Answer) []entry {
	list := []entry{{a.DealProfit(), money(a.Line("profit"))}}
	if a.Partnered() {
		list = append(list, entry{"  " + a.OwnProfit(), money(a.Line("owner_profit"))}, entry{"  partner's profit", money(a.Line("partner_profit"))})
	}
	list = append(list, entry{a.DealMargin(), percent(a.Line("margin"))})
	if a.Partnered() { // a target asks for the owner's
		list = append(list, entry{"  your margin, of sale price", percent(a.Line("owner_margin"))})
	}
	if a.Line("cash_needed").IsPositive() {
		list = append(list, entry{"return on cash (ROI)", percent(a.Line("roi"))}, entry{"  for a year (annualised)", percent(a.Line("annualised_roi"))})
	} else {
		list = append(list, entry{"return on cash (ROI)", "no cash tied up"})
	}
	list = append(list, entry{"  IRR for a year", irr(a)})
	list = append(list, flattery(a)...)
	if len(a.Loans()) > 0 {
		list = append(list, entry{"loans' cost a year (APR)", loanRate(a)})
	}
	if hours := a.Line("own_hours"); hours.IsPositive() {
		list = append(list, afterOwnHours(a), entry{a.OwnProfit() + " per own hour", money(a.Line("profit_per_own_hour"))})
	}
	return append(list, entry{"to set aside for tax", money(a.Line("tax_set_aside"))})
}

// loanRate is what the loans cost a year, where a rate does it.
func loanRate(a *answer.Answer) string {
	if !a.LoanAPR.Found && a.Line("loan_cost").IsPositive() {
		return "no rate fits"
	}
	return rate(a.LoanAPR)
}

// afterOwnHours is the owner's profit less what her hours are worth.
func afterOwnHours(a *answer.Answer) entry {
	label := "profit after own hours"
	if a.Partnered() { // in as many letters as there is room for
		label = "yours, less own hours"
	}
	switch {
	case !a.Line("unrated_hours").IsPositive():
	case a.Line("own_labour").IsZero():
		return entry{label, "no rate given"}
	default:
		return entry{label, "some unrated"}
	}
	return entry{label, money(a.Line("profit_after_own_hours"))}
}

// flattery warns of the rates for a year above it, if there are any.
func flattery(a *answer.Answer) []entry {
	switch {
	case a.Line("cash_needed").IsPositive():
		return []entry{{"  (both flatter a short deal)", ""}}
	case a.IRR.Found:
		return []entry{{"  (it flatters a short deal)", ""}}
	}
	return nil
}

func irr(a *answer.Answer) string {
	if a.IRR.Several > 1 {
		return "doubtful"
	}
	return rate(a.IRR)
}

// timing is what it takes, and when.
func timing(a *answer.Answer) []entry {
	list := append(toBuy(a),
		entry{"cash needed, in month " + a.Line("cash_needed_month").String(), money(a.Line("cash_needed"))},
		entry{"hold", months(a.Line("hold_months"))})
	for _, phase := range []string{"lead_in", "renovation", "marketing", "escrow"} {
		list = append(list, entry{"  " + words(phase), months(a.Line(phase))})
		if stands := a.Line("standstill"); phase == "renovation" && stands.IsPositive() {
			list = append(list, entry{"  standstill", months(stands)})
		}
	}
	return append(list, delay("unsold", a.Late), delay("stalled", a.Stalled))
}

// delay is what one more month costs, or brings where rent is more than the bills.
func delay(how string, d answer.Delay) entry {
	if d.Month.IsNegative() {
		return entry{"a month more " + how + " gains", money(d.Month.Neg())}
	}
	return entry{"one more month " + how, money(d.Month)}
}

// toBuy is what the purchase takes; with a partner, whose it is.
func toBuy(a *answer.Answer) []entry {
	total, paid, bring := money(a.Line("total_to_buy")), money(a.Line("already_paid")), money(a.Line("cash_to_close"))
	switch {
	case !a.Partnered() && a.Line("cash_to_close").IsNegative():
		return []entry{{"total to buy", total}, {"  already paid", paid}, {"  of it back at closing", money(a.Line("cash_to_close").Neg())}}
	case !a.Partnered():
		return []entry{{"total to buy", total}, {"  already paid", paid}, {"  cash to close, to bring", bring}}
	}
	return []entry{
		{"total to buy, by both", total},
		{"  of it yours", money(a.Line("owner_to_buy"))}, {"  of it your partner's", money(a.Line("partner_to_buy"))},
		{"  already paid, by both", paid}, {"  cash to close, both", bring},
	}
}

// An entry is a label and a figure.
type entry struct{ label, figure string }

func sources(a *answer.Answer) []entry {
	list := []entry{{"your money", money(a.Line("owner_money"))}}
	list = more(list, "partner's money", a.Line("partner_money"))
	for _, l := range a.Loans() {
		list = more(list, ofLoan(l, ", at closing"), a.Of(l, "loan_at_closing"))
		list = more(list, ofLoan(l, ", draws"), a.Of(l, "draws"))
	}
	list = more(list, "seller's credit", a.Line("seller_credit"))
	list = more(list, "received while you own", a.Line("received_until_sale"))
	return append(more(list, "prorations received", a.Line("deposits_received")), entry{"sources", money(a.Line("sources"))})
}

// ofLoan names a sum of a loan; a long name is cut rather than what the sum is.
func ofLoan(l *model.Member, sum string) string {
	const room = 23 // letters beside a figure of some millions
	return cut(l.Label, room-len(sum)) + sum
}

// loanPayments says what is paid to lenders between the closing and the sale.
func loanPayments(a *answer.Answer) string {
	label := "interest"
	if !a.Line("interest").Equal(a.Line("charges_until_sale")) { // a reserve pays some, or the sale
		label = "interest in cash"
	}
	for _, l := range a.Loans() {
		switch {
		case a.Of(l, "amortising_months").IsPositive():
			return "payments on loans"
		case a.Of(l, "extension_fees").IsPositive():
			label = "interest and loan fees"
		case label != "interest and loan fees" && a.Of(l, "draw_fees").IsPositive():
			label = "interest and draw fees"
		}
	}
	return label
}

func uses(a *answer.Answer) []entry {
	list := []entry{{"price", money(a.Line("price"))}}
	list = more(list, "assignment fee", a.Line("assignment_fee"))
	list = more(list, "auction premium", a.Line("auction_premium"))
	list = more(list, "paid before closing", a.Line("before_cost"))
	list = more(list, "closing", a.Line("closing_cost"))
	list = more(list, "points and loan fees", a.Line("points").Add(a.Line("loan_fees")))
	list = more(list, "work and contingency", a.Line("spend"))
	list = more(list, "holding until the sale", a.Line("holding_until_sale"))
	list = more(list, loanPayments(a), a.Line("charges_until_sale"))
	list = more(list, "deposits and prorations", a.Line("deposits_paid"))
	list = more(list, leftOver, a.Line("owner_left_over"))
	list = more(list, "left over, to your partner", a.Line("partner_left_over"))
	return append(list, entry{"uses", money(a.Line("uses"))})
}

// leftOver is what is called what comes in until the sale beyond what goes out.
const leftOver = "left over, paid out to you"

// remarks say how three sums of the owner's money differ where they do, and what is in
// none of the columns.
func remarks(p *page, a *answer.Answer) {
	if need := a.Line("cash_needed"); !need.Round(0).Equal(a.Line("owner_money").Round(0)) {
		who := "is paid"
		if a.Partnered() {
			who = "you and your partner pay"
		}
		p.text("  ", "Your money is what you have in it by the sale; cash needed, the most you have in it at any time from the closing on; total to buy, what "+who+" up to the closing.")
	}
	if again := costsAgain(a); again != "" {
		p.text("  ", again)
	}
	if tax := a.Line("tax_withheld"); tax.IsPositive() {
		p.text("  ", money(tax)+" of tax withheld at the sale is in neither column and not taken off the profit: it comes off what you are paid that day, and counts toward the tax that you owe.")
	}
	for _, l := range a.Loans() {
		if used := a.Values.In(a.Model.Find(l, "reserve_used"), a.Values.Months()); used.IsPositive() {
			p.text("  ", money(used)+" of interest out of the reserve of "+l.Label+" is in neither column: it joins what is owed, and is paid at the sale.")
		}
	}
}

// costsAgain says that what loans cost at the closing is seen twice on the page, and is one
// and the same money; nothing where it is not.
func costsAgain(a *answer.Answer) string {
	if !a.Line("points").Add(a.Line("loan_fees")).IsPositive() {
		return ""
	}
	again := "Points and loan fees are part of what the loans cost: that is the same money, taken off once."
	if len(a.Bridge) > 0 {
		again = "Points and loan fees stand again below, within all loan costs at the maximum offer: the same money, taken off once."
	}
	return again
}

func more(list []entry, label string, amount decimal.Decimal) []entry {
	if amount.IsZero() {
		return list
	}
	return append(list, entry{label, money(amount)})
}

func breakEvens(a *answer.Answer) []entry {
	words := "the profit is gone (break-even) at a"
	if a.Partnered() { // who is paid first, while the owner's part is nothing for a stretch
		words = "you lose money (break-even) at a"
	}
	list := []entry{{words, ""}}
	works := a.Line("base_cost").IsPositive()
	list = append(list, breakEven(a.BreakEven, works)...)
	if b := a.BreakEvenAtTarget; b != nil {
		list = append(list, entry{"your profit target is missed at a", ""})
		list = append(list, breakEven(*b, works)...)
	}
	list = append(list, entry{"planned sale price", dollars(a.Line("sale_price"))})
	if works {
		list = append(list, entry{"planned overrun", percent(a.Line("overrun"))})
	}
	return list
}

// breakEven are the limits of a loss; without works nothing overruns.
func breakEven(b answer.BreakEvens, works bool) []entry {
	list := []entry{limit(b.SalePrice, "sale price below", "sale price even of", dollars)}
	if works {
		list = append(list, limit(b.Overrun, "overrun over bids above", "overrun over bids not within", percent))
	}
	return append(list, limit(b.Months, "months later than", "months of delay not within", func(x decimal.Decimal) string { return x.String() }))
}

// limit is how far a thing may move: not at all, so far, or further than is looked, which
// other words tell.
func limit(b solve.BreakEven, words, beyond string, format func(decimal.Decimal) string) entry {
	switch {
	case b.Missed:
		return entry{"  " + words, "already"}
	case b.Never:
		return entry{"  " + beyond, format(b.Value)}
	}
	return entry{"  " + words, format(b.Value)}
}

// halfWidth is one of two columns side by side.
const halfWidth = 37

// columns writes two lists side by side.
func columns(p *page, left, right []entry) {
	for i := range max(len(left), len(right)) {
		p.line("  %s  %s", half(left, i), half(right, i))
	}
}

func half(list []entry, i int) string {
	if i >= len(list) {
		return pad("", halfWidth)
	}
	width := halfWidth
	if n := utf8.RuneCountInString(list[i].figure); n > 0 {
		width -= n + 1
	}
	label := cut(list[i].label, width)
	return label + right(list[i].figure, halfWidth-utf8.RuneCountInString(label))
}
