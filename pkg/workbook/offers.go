package workbook

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

// A trial is the deal at a price that a search led to; without one it is the deal as it
// is asked for, live.
type trial struct {
	head string
	at   *answer.Priced
}

// offers is the page of the whole deal at the asking price, at the maximum offer and one
// dollar higher, so that the offer can be checked by eye.
func (b *book) offers() {
	trials := b.trials()
	last := len(trials) + 1
	g := b.page(&grid{name: "Offers", widths: []float64{46}, left: 1, wide: true, once: true, noted: true})
	for range trials {
		g.widths = append(g.widths, 18)
	}
	for last < 4 { // room for the words
		g.widths = append(g.widths, 18)
		last++
	}
	about := "The whole deal at the asking price, which follows the inputs."
	row := g.title(last, "Offers", about)
	if len(trials) > 1 {
		changed := about + " Inputs have changed: the other prices and their figures (in italics) are for the deal file as it stood, and need not be the highest any more; what is to spare there is of those figures by the targets and the cash as they are now. Run the program for new ones."
		row = g.spoken(2, last, changed, b.ifStood("The whole deal at the asking price, which follows the inputs, and at the prices that a search found (in italics). At the maximum offer every target is met; one dollar higher one is missed.", changed))
	}
	for _, s := range b.offersSaid() {
		row = g.paragraph(row, 1, last, "As the file stood: "+strings.ToLower(s[:1])+s[1:], look{})
	}
	row++
	g.set(row, 1, text("", look{role: heading}))
	g.height(row, 2*lineHeight+3)
	for i, t := range trials {
		g.set(row, i+2, text(t.head, look{role: heading, right: true, wrap: true}))
	}
	row = b.compared(g, row+1, trials)
	b.judged(g, row+1, trials)
}

// trials are the columns of the page.
func (b *book) trials() []trial {
	a, out := b.answer, []trial{{head: "at the asking price"}}
	add := func(o solve.Offer, value decimal.Decimal, words string) {
		if !o.Found || o.Endless {
			return
		}
		for i, head := range []string{"maximum offer", "one dollar higher"} {
			at, err := a.At(o.Price.Add(decimal.NewFromInt(int64(i))), value)
			if err != nil {
				b.err = err
				return
			}
			out = append(out, trial{head + words, at})
		}
	}
	if a.HasLow {
		add(a.Offer, a.Line("after_repair_value"), ", likely value")
		add(a.OfferLow, a.Line("low_value"), ", low value")
	} else {
		add(a.Offer, a.Line("after_repair_value"), "")
	}
	return out
}

// offersSaid says what there is to say in words.
func (b *book) offersSaid() []string {
	a := b.answer
	out := []string{a.Decides()}
	none := func(o solve.Offer, value string) {
		if !o.Found {
			out = append(out, "If it turns out worth "+quantity.FormatDollars(a.Line(value))+" no price works: "+a.AsAGift(o)+".")
		}
	}
	none(a.Offer, "after_repair_value")
	if a.HasLow {
		none(a.OfferLow, "low_value")
	}
	if len(a.Deal.Targets) == 0 {
		out = append(out, "The deal file states no target, so a price will do as long as no money is lost.")
	}
	return out
}

// compared lists the deal's figures at each price.
func (b *book) compared(g *grid, row int, trials []trial) int {
	figure := func(label, line string, r role) {
		c := b.model.Find(b.model.Root, line)
		if b.stays(c) && c.Line.Unit == "$" && b.answer.Values.Of(c).IsZero() {
			return
		}
		g.set(row, 1, text(label, look{role: r}))
		for i, t := range trials {
			x := b.shownAt(nil, c, 0)
			if t.at != nil {
				x = searched(t.at.Line(line), x.look.format)
			}
			if r == strong {
				x = x.strongly()
			}
			if line == "cash_needed_month" {
				x = x.as(whole)
			}
			g.set(row, i+2, x)
		}
		row++
	}
	figure("price", "price", strong)
	figure("value after repair", "after_repair_value", label)
	figure("sale price", "sale_price", label)
	for n, l := range b.answer.Loans() {
		for _, line := range []string{"loan_at_closing", "holdback"} {
			g.label(row, 1, l.Label+map[string]string{"loan_at_closing": ", at the closing", "holdback": ", held back for draws"}[line], look{})
			for i, t := range trials {
				x := b.of(l, line)
				if t.at != nil {
					x = searched(t.at.Loan(n, line), dollars)
				}
				g.set(row, i+2, x)
			}
			row++
		}
	}
	for _, x := range [][2]string{
		{b.toBring(), "cash_to_close"}, {"cash needed", "cash_needed"}, {"  in month", "cash_needed_month"}, {"costs of buying", "purchase_extras"},
		{"work, with contingency", "spend"}, {"holding", "holding_cost"}, {"loans' cost", "loan_cost"}, {"selling", "selling_cost"},
	} {
		figure(x[0], x[1], label)
	}
	figure(b.answer.DealProfit(), "profit", strong)
	if b.partnered() {
		figure("  "+b.answer.OwnProfit(), "owner_profit", label)
	}
	figure(b.answer.DealMargin(), "margin", label)
	if b.partnered() {
		figure("  your margin, of the sale price", "owner_margin", label)
	}
	figure("return on the cash needed (ROI)", "roi", label)
	return row
}

// judged says of each target whether it is met at each price.
func (b *book) judged(g *grid, row int, trials []trial) {
	g.set(row, 1, text("to spare of each target, and whether it is met", look{role: heading}))
	for i := range trials {
		g.set(row, i+2, text("", look{role: heading}))
	}
	for _, t := range solve.Targets(b.answer.Deal.Targets) {
		g.set(row+1, 1, b.goal(t, look{wrap: true}))
		g.height(row+1, high(b.answer.Goal(t), g.widths[0]))
		for i, x := range trials {
			spare, c := b.answer.Line(t), b.figure(t)
			if x.at != nil {
				spare = x.at.Line(t)
				c = b.heldTo(t, x.at)
			}
			g.set(row+1, i+2, c)
			g.set(row+2, i+2, holds(spare, address(row+1, i+2, false, false)))
		}
		g.height(row+2, 1.6*lineHeight) // apart from the next
		row += 2
	}
}

// asks are the inputs that say how much of a line a target asks for; of "" for an amount.
var asks = map[string]struct{ line, of string }{
	"profit_to_spare": {"target_profit", ""}, "margin_to_spare": {"target_margin", "sale_price"}, "roi_to_spare": {"target_roi", "cash_needed"},
}

// heldTo is what the figures at a price that a search led to leave to spare of a target as
// it is asked now.
func (b *book) heldTo(t string, at *answer.Priced) cell {
	spare := at.Line(t)
	x, is := asks[t]
	if !is { // cash
		has := b.answer.Line("cash_available").Sub(b.answer.Line("cash_reserve"))
		return worked(spare, b.ref("cash_available", 0)+"-"+b.ref("cash_reserve", 0)+"-"+numeral(has.Sub(spare), bindsAll), look{format: dollars})
	}
	of := one
	if x.of != "" {
		of = at.Line(x.of)
	}
	has := spare.Add(b.answer.Line(x.line).Mul(of))
	return worked(spare, numeral(has, bindsAll)+"-"+b.ref(x.line, 0)+"*"+numeral(of, bindsAll), look{format: dollars})
}
