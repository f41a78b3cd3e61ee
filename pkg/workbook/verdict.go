package workbook

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

// lastColumn is the last column of a page of two lists side by side.
const lastColumn = 5

// twoLists are the widths of such a page.
func twoLists() []float64 { return []float64{37, 15.5, 2, 40, 17} }

// verdict is the page that the owner reads first.
func (b *book) verdict() {
	a, g := b.answer, b.page(&grid{name: "The deal", widths: twoLists(), once: true, noted: true})
	row := g.title(lastColumn, a.Deal.Name, a.Deal.Address)
	row = b.undrawn(g, b.cutBack(g, b.fallsDue(g, b.sticks(g, b.weights(g, b.headline(g, row))))))
	word, why := a.Advice()
	row = g.paragraph(row, 1, lastColumn, "As the file stood: "+word+" "+why, look{role: strong})
	for _, s := range []string{a.Asking(), a.Decides(), a.Gaps(), a.CashAside(), a.BackOut()} {
		if s != "" {
			row = g.paragraph(row, 1, lastColumn, s, look{})
		}
	}
	row = b.stillTrue(g, row) + 1
	row = g.blocks(row, "How high you may go", b.howHigh(), "Your cash at the asking price", b.yourCash())
	row = g.blocks(row, "What it yields at the asking price", b.yields(), "How long it takes", b.howLong())
	row = g.blocks(row, "From the rule of thumb to the maximum offer", b.bridge(row+1), "How far things may move", b.breakEvens())
	row = b.targets(g, row) + 1
	row = b.checks(g, row) + 1
	row = b.careful(g, row)
	g.toPrint(b.footnote(g, row+1, lastColumn))
}

// headline says whether every target holds at the price that the workbook has now.
func (b *book) headline(g *grid, row int) int {
	yes, no := "every target holds", "a target is missed"
	if len(b.answer.Deal.Targets) == 0 {
		yes, no = "no money is lost", "money is lost"
	}
	if b.answer.HasLow {
		yes, no = yes+", at the value you expect", no+", even at the value you expect"
	}
	said := yes
	if len(b.answer.Missed()) > 0 {
		said = no
	}
	at := "At a price of "
	said = at + b.answer.Asked() + " " + said + "."
	again := b.again()
	next := g.paragraph(row, 1, lastColumn, said+lookAgain, look{role: lead})
	c := g.rows[row-1][0]
	c.value = said
	says := quoted(at) + "&" + amountSaid(b.ref("price", 0)) + `&" "&`
	c.formula = "IF(" + b.sound() + "," + b.inMonths(says+"IF("+b.allHold()+","+quoted(yes+".")+","+quoted(no+".")+")"+again, b.tooLong()) + "," + quoted(cannotBe) + ")"
	g.set(row, 1, c)
	return next
}

// again is what a first line adds where an input is doubted.
func (b *book) again() string {
	if doubt := b.none(unusual); doubt != "" {
		return "&IF(" + doubt + `,"",` + quoted(lookAgain) + ")"
	}
	return ""
}

// lookAgain is said behind the headline where an input is doubted.
const lookAgain = " Look again at the inputs named below."

// cannotBe is said in the place of the headline where an input cannot be so, be it the price.
const cannotBe = "Nothing can be said: an input cannot be so, or not beside others; see the checks below."

// inMonths is a formula as long as the sale falls in a month of the workbook, and other
// words beyond: what comes in then is not in its figures.
func (b *book) inMonths(formula, beyond string) string {
	return "IF(" + b.ref("sale_month", 0) + ">" + itoa(b.last) + "," + quoted(beyond) + "," + formula + ")"
}

func (b *book) tooLong() string {
	return fmt.Sprintf("The sale comes after month %d, the last of this workbook, so its figures are wrong: run the program for a longer one.", b.last)
}

// asStood is the condition that every input is what it was when the words were written.
func (b *book) asStood() string {
	if b.stood != "" {
		return b.stood
	}
	b.stood = b.sameAll("whether inputs are as they stood", func(*model.Cell) bool { return true })
	return b.stood
}

// sameAll is the condition that every input of some is what the deal file gave.
func (b *book) sameAll(words string, of func(*model.Cell) bool) string {
	var all []string
	for _, c := range b.model.Cells {
		switch {
		case b.places[c.Index].grid == nil || !b.editable(c) || !of(c):
		case c.Line.Unit == "choice":
			all = append(all, b.cellRef(c)+"="+quoted(b.choice(c)))
		default:
			at := b.cellRef(c) // N of a word or of nothing is 0, as an input may stand
			all = append(all, "IF(ISNUMBER("+at+"),ABS(N("+at+")-"+numeral(b.answer.Values.Of(c), bindsAll)+")<0.0000005,FALSE)")
		}
	}
	return b.inCells(words, all, func(some []string) string { return nested("AND(", some) })
}

// inCells is a condition on many parts that holds now, in a cell of the sheet of workings for as
// many of them as a formula takes; "" without any.
func (b *book) inCells(words string, parts []string, holds func(some []string) string) string {
	var all []string
	for some := range groups(parts) {
		all = append(all, b.working(words, "IF("+holds(some)+",1,0)", 1)+"=1")
	}
	switch {
	case len(all) == 0:
		return ""
	case len(all) > few: // other formulas have it in them more than once
		return b.inCells(words, all, func(some []string) string { return nested("AND(", some) })
	}
	return nested("AND(", all)
}

// ifStood is a formula that says words as long as no input has changed, and others after.
func (b *book) ifStood(words, changed string) cell {
	return cell{value: words, formula: "IF(" + b.asStood() + "," + quoted(words) + "," + quoted(changed) + ")"}
}

// stillTrue says whether the words above still fit the figures below: they rest on searches, so
// they do only while no input has changed.
func (b *book) stillTrue(g *grid, row int) int {
	fits := "The words above fit the figures below."
	changed := "Inputs have changed: the advice above, but for the first line, the cautions below and in Notes, and figures in italics are for the deal file as it stood. Run the program for new ones."
	c := b.ifStood(fits, changed)
	c.formula = "IF(" + b.usable() + "," + b.inMonths(c.formula, b.tooLong()) + "," + c.formula + ")"
	return g.spoken(row, lastColumn, changed, c)
}

func (b *book) howHigh() []entry {
	a := b.answer
	out := []entry{b.line("asking price", "price"), {"does it pass?", b.passes()}}
	low := []entry{{"maximum offer at your low value", offered(a.OfferLow)}, {"  the low value", b.figure("low_value").as(rounded)}}
	likely := []entry{{"maximum offer at the likely value", offered(a.Offer)}, {"  the likely value (after repair)", b.figure("after_repair_value").as(rounded)}}
	switch {
	case !a.HasLow:
		out = append(out, likely...)
	case a.LikelyBinds(): // the lower leads, as in the answer
		out = append(append(out, likely...), low...)
	default:
		out = append(append(out, low...), likely...)
	}
	return append(out, b.line("rule-of-thumb offer", "rule_offer"))
}

// passes says whether every target holds at the asking price.
func (b *book) passes() cell {
	word := "no"
	if len(b.answer.Missed()) == 0 {
		word = "yes"
	}
	return cell{value: word, formula: "IF(" + b.sound() + ",IF(" + b.allHold() + `,"yes","no"),"no")`, look: look{role: strong, right: true}}
}

// allHold is the condition that every target holds.
func (b *book) allHold() string {
	var holds []string
	for _, t := range solve.Targets(b.answer.Deal.Targets) {
		holds = append(holds, "ROUND("+b.ref(t, 0)+",9)>=0")
	}
	return "AND(" + strings.Join(holds, ",") + ")"
}

// offered is a maximum offer, or the word for there being none.
func offered(o solve.Offer) cell {
	switch {
	case o.Endless:
		return said("any price")
	case !o.Found:
		return said("no price works")
	}
	return searched(o.Price, rounded).strongly()
}

// strongly keeps a look but makes it bold.
func (c cell) strongly() cell {
	if c.look.role == found {
		c.look.role = foundStrong
		return c
	}
	return c.like(strong)
}

func (b *book) yourCash() []entry {
	out := []entry{{"cash needed: the most tied up from closing on", b.figure("cash_needed").strongly()}, {"  in month", b.figure("cash_needed_month").as(whole)}}
	if b.answer.Deal.HasCash {
		out = append(out, b.line("  you have", "cash_available"), b.line("  of which you keep back", "cash_reserve"), b.line("  left of what you can use", "cash_to_spare"))
	}
	buy := [][2]string{{"total to buy", "total_to_buy"}, {"  already paid by then", "already_paid"}, {"  " + b.toBring(), "cash_to_close"}}
	if b.partnered() {
		buy = [][2]string{{"total to buy, by both", "total_to_buy"}, {"  of it yours", "owner_to_buy"}, {"  of it your partner's", "partner_to_buy"}, {"  already paid by then, by both", "already_paid"}, {"  " + b.toBring(), "cash_to_close"}}
	}
	return append(out, b.lines(append(buy, [][2]string{
		{"lost by backing out at first", "lost_backing_out"}, {"  once the earnest deposit is not returned", "lost_backing_out_late"},
	}...)...)...)
}

// toBring is what the cash to close is called: with a partner, both bring it.
func (b *book) toBring() string {
	if b.partnered() {
		return "cash to close, both bring"
	}
	return "cash to close, to bring"
}

func (b *book) yields() []entry {
	a := b.answer
	out := []entry{{a.DealProfit(), b.figure("profit").strongly()}}
	if b.partnered() {
		out = append(out, b.line("  "+a.OwnProfit(), "owner_profit"), b.line("  partner's profit", "partner_profit"))
	}
	out = append(out, b.line(a.DealMargin(), "margin"))
	if b.partnered() {
		out = append(out, b.line("  your margin, of the sale price", "owner_margin"))
	}
	out = append(out, b.line("return on the cash needed (ROI)", "roi"), b.line("  for a year (annualised)", "annualised_roi"))
	out = append(out, entry{"  internal rate of return (IRR)", rated(a.IRR)})
	if len(a.Loans()) > 0 {
		out = append(out, entry{"loans' cost a year (APR)", rated(a.LoanAPR)})
	}
	if !b.nothing("own_hours") {
		out = append(out, b.line(a.OwnProfit()+" after own hours at trade price", "profit_after_own_hours"), b.line(a.OwnProfit()+" for each own hour", "profit_per_own_hour"))
	}
	return append(out, b.line("to set aside for tax", "tax_set_aside"))
}

func rated(r solve.Rate) cell {
	switch {
	case !r.Found:
		return said("none")
	case r.Several > 1:
		return said("doubtful")
	}
	return searched(r.Value, percent)
}

func (b *book) howLong() []entry {
	out := []entry{{"the house is owned for, months", b.figure("hold_months").as(twoPlace)}}
	for _, phase := range []string{"lead_in", "renovation", "standstill", "marketing", "late_sale", "escrow"} {
		if !b.answer.Line(phase).IsZero() {
			out = append(out, entry{"  " + strings.ReplaceAll(phase, "_", " "), b.figure(phase).as(twoPlace)})
		}
	}
	if !b.answer.Deal.PurchaseDate.IsZero() {
		out = append(out, entry{"the sale closes about", b.saleDate()})
	}
	return append(out, entry{"one more month unsold takes", searched(b.answer.Late.Month, dollars)}, entry{"one more month stalled takes", searched(b.answer.Stalled.Month, dollars)})
}

// purchaseDay is the day of the purchase as spreadsheets count days, from the end of 1899.
func (b *book) purchaseDay() int {
	return quantity.DaysBetween(quantity.Date{Year: 1899, Month: 12, Day: 30}, b.answer.Deal.PurchaseDate)
}

// saleDate is the day of the sale.
func (b *book) saleDate() cell {
	first := b.purchaseDay()
	return worked(b.answer.Line("sale_day").Add(decimal.NewFromInt(int64(first))), itoa(first)+"+"+b.ref("sale_day", 0), look{format: day, right: true})
}

var stepWords = map[string]string{
	"rule_offer": "rule-of-thumb offer", "rule_allowance": "the rest of the value", "value_given_up": "sold under the value",
	"selling_cost": "selling", "holding_cost": "holding, less refunds", "loan_cost": "all that the loans cost",
	"purchase_extras": "costs of buying", "beyond_budget": "beyond the budget", "partner_profit": "partner's profit at that price",
	"owner_profit": "your profit at that price",
}

// bridge explains the maximum offer from the rule of thumb; its head is in the row.
func (b *book) bridge(row int) []entry {
	var out []entry
	sum := decimal.Zero
	for _, s := range b.answer.Bridge {
		if s.Line == "owner_profit" || !s.Amount.IsZero() {
			out = append(out, entry{s.Sign() + stepWords[s.Line], searched(s.Amount, dollars)})
			sum = sum.Add(s.Amount)
		}
	}
	if len(out) == 0 {
		return []entry{{"rule-of-thumb offer", b.figure("rule_offer")}, {"maximum offer", offered(b.answer.Offer)}}
	}
	return append(out, entry{"= maximum offer at the likely value", worked(sum, sumOf(2, row, row+len(out)-1), look{role: foundTotal, format: dollars})})
}

func (b *book) breakEvens() []entry {
	gone := "no profit is left (break-even)"
	if b.partnered() {
		gone = "nothing is left of your profit (break-even)"
	}
	out := []entry{{gone, cell{}}}
	out = append(out, apart(b.answer.BreakEven)...)
	if at := b.answer.BreakEvenAtTarget; at != nil {
		out = append(out, entry{"your profit target is missed", cell{}})
		out = append(out, apart(*at)...)
	}
	return append(out, entry{"planned sale price", b.figure("sale_price").as(rounded)}, entry{"planned overrun", b.figure("overrun").as(percent)})
}

func apart(e answer.BreakEvens) []entry {
	return []entry{
		apartAt(e.SalePrice, "  at a sale price below", "  at a sale price even of", rounded),
		apartAt(e.Overrun, "  at an overrun over the bids above", "  overrun over the bids not within", percent),
		apartAt(e.Months, "  at more months unsold than", "  months of delay not within", tenths),
	}
}

// apartAt is how far a thing may move, in other words where that is further than is looked.
func apartAt(x solve.BreakEven, words, beyond, format string) entry {
	if x.Never {
		words = beyond
	}
	return entry{words, limit(x, format)}
}

// limit is how far a thing may move.
func limit(x solve.BreakEven, format string) cell {
	if x.Missed {
		return said("already")
	}
	return searched(x.Value, format)
}

// targets lists what the deal is held to, and whether it holds at the asking price.
func (b *book) targets(g *grid, row int) int {
	g.heading(row, 1, lastColumn, "Your targets at the asking price")
	g.set(row, 2, text("to spare", look{role: heading, right: true}))
	for _, t := range solve.Targets(b.answer.Deal.Targets) {
		row++
		g.set(row, 1, text(strings.Replace(targetWords[t], "profit", b.answer.OwnProfit(), 1), look{}))
		g.set(row, 2, b.figure(t))
		g.set(row, 4, b.goal(t, look{role: small}))
		g.set(row, 5, holds(b.answer.Line(t), address(row, 2, false, false)))
	}
	return row + 1
}

// amountSaid is a formula for an amount in words: with cents where there are any.
func amountSaid(x string) string {
	return "TEXT(" + x + ",IF(ROUND(" + x + ",2)=ROUND(" + x + `,0),"$#,##0;-$#,##0","$#,##0.00;-$#,##0.00"))`
}

// goal names what a target asks for now, as the answer does for what it asked at first.
func (b *book) goal(t string, l look) cell {
	share := func(x string) string { return "ROUND(100*" + x + `,9)&"%"` }
	c := text(b.answer.Goal(t), l)
	switch t {
	case "profit_to_spare":
		at := b.ref("target_profit", 0)
		c.formula = "IF(" + at + `=0,"breaking even","your profit target of "&` + amountSaid(at) + ")"
	case "margin_to_spare":
		c.formula = `"your margin target of "&` + share(b.ref("target_margin", 0))
	case "roi_to_spare":
		c.formula = `"your return on cash (ROI) target of "&` + share(b.ref("target_roi", 0))
	case "cash_to_spare":
		c.formula = `"the "&` + amountSaid("("+b.ref("cash_available", 0)+"-"+b.ref("cash_reserve", 0)+")") + `&" of cash you can use"`
	}
	return c
}

var targetWords = map[string]string{
	"profit_to_spare": "profit", "margin_to_spare": "margin, in dollars of profit", "roi_to_spare": "return on cash, in dollars of profit", "cash_to_spare": "cash",
}

// holds says whether there is something to spare in a cell.
func holds(x decimal.Decimal, at string) cell {
	word := "met"
	if x.IsNegative() {
		word = "missed"
	}
	return cell{value: word, formula: "IF(ROUND(" + at + `,9)>=0,"met","missed")`, look: look{role: strong, right: true}}
}

// checks are sums that must agree whatever the inputs are.
func (b *book) checks(g *grid, row int) int {
	g.heading(row, 1, lastColumn, "Checks, worked out anew whenever an input changes")
	row = b.firstFlaw(g, row+1)
	g.set(row, 1, text("sources equal uses", look{}))
	g.set(row, 2, b.agree(b.ref("sources", 0), b.ref("uses", 0)))
	g.set(row, 4, text("profit from cash and from totals agree", look{}))
	g.set(row, 5, b.agree(b.ref("profit", 0), b.ref("profit_by_parts", 0)))
	all := b.canBe()
	for i, x := range all {
		at, col := row+1+i/2, 1+i%2*3
		g.set(at, col, text(x.words, look{}))
		formula := "IF(" + x.holds + `,"ok",` + quoted(x.otherwise) + ")"
		if !x.first {
			formula = b.looked(formula)
		}
		g.set(at, col+1, cell{value: "ok", formula: formula, look: look{role: strong, right: true}})
	}
	return row + 1 + (len(all)+1)/2
}

// careful is the head of cautions, which no formula tells.
const careful = "Be careful, by the deal file as it stood; this informs, it does not advise"

// careful names the cautions and what is assumed.
func (b *book) careful(g *grid, row int) int {
	g.heading(row, 1, lastColumn, careful+" (texts and sources: Notes)")
	row++
	for i, c := range b.answer.Cautions {
		g.set(row+i/2, 1+i%2*3, text("· "+c.Title, look{role: small}))
	}
	row += (len(b.answer.Cautions) + 1) / 2
	all := b.answer.Assumptions()
	if len(all) == 0 {
		return row
	}
	g.heading(row+1, 1, lastColumn, "Assumed, because the deal file does not say")
	return g.paragraph(row+2, 1, lastColumn, strings.Join(all, "; "), look{role: small})
}

// footnote says what stands as a value on a page, and returns the row below.
func (b *book) footnote(g *grid, row, to int) int {
	return g.paragraph(row, 1, to, fmt.Sprintf("Figures in italics were found by a search, for the deal as it was at a price of %s: they stand as values and do not follow a change. All others do%s.",
		b.answer.Asked(), b.but()), look{role: small})
}

// toPrint says below the first page which sheets are for paper.
func (g *grid) toPrint(row int) {
	g.paragraph(row, 1, lastColumn, "To print, choose the sheets as far as Notes: those behind, from Inputs on, hold every input and figure on many pages, and are for the screen.", look{role: small})
}

// but says what else does not follow a change.
func (b *book) but() string { return butFor(b.still()) }

// still is what does not follow a change, beside what a search found.
func (b *book) still() (all []string) {
	if len(b.answer.Deal.Cuts) > 0 {
		all = append(all, "the numbers of sticks in cut lists")
	}
	if len(b.howMuch()) > 0 {
		all = append(all, "how much work brings along")
	}
	if b.byComps() {
		all = append(all, "the weights of the comparables and what they told of amounts")
	}
	if b.how.For == Lender {
		all = append(all, "what rests on figures that are not in this workbook")
	}
	return all
}

func butFor(all []string) string {
	if len(all) == 0 {
		return ""
	}
	return ", but for " + answer.Listed(all)
}
