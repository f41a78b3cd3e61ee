package modeltest

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// loans draws none to three loans. The shares of the renovation that are not of
// what other loans left open come to at most the whole.
func (d *drawer) loans() {
	if d.bare {
		d.wholeLoan()
		return
	}
	n := pick(d, 1, 0, 2, 1, 3, 2, 1)
	d.use([]string{"cash purchase", "one loan", "two loans", "three loans"}[n])
	left := one
	capped := !d.steady || d.chance(8) // a steady deal has caps or a charge for each draw
	for i := range n {
		x := d.Deal.Add("loan", "", fmt.Sprintf("loan %d", i+1))
		d.amounts(x, i, &left, capped)
		d.interest(x)
		d.ending(x)
		if x.Given.Of("renovation_share").Text != "" {
			d.draws(x, d.steady && capped)
		}
		d.fees(x, "loan_fee")
	}
}

// wholeLoan draws one that pays all that is due at the closing and waits for the sale.
func (d *drawer) wholeLoan() {
	x := d.Deal.Add("loan", "", "loan 1")
	d.use("one loan")
	x.GiveNumber("fixed_amount", d.refs["price"].Add(decimal.NewFromInt(100_000)))
	choose(x, "interest_paid", pick(d, "at payoff", "added monthly"))
	d.giveShare(14, x, "rate", 0, 0.25)
	d.ending(x)
}

// amounts draws what the lender lends.
func (d *drawer) amounts(x *model.Member, before int, left *decimal.Decimal, capped bool) {
	fixed := d.giveMoney(4, x, "fixed_amount", 0, 250_000)
	if !fixed || d.chance(2) {
		d.giveShare(14, x, "price_share", 0, 1)
	}
	d.giveFlag(4, x, "finances_premium")
	remainder := d.giveFlag(5, x, "of_remainder")
	if remainder && before > 0 {
		d.use("of remainder behind a loan")
	}
	if d.chance(11) {
		share := d.share(0, 1)
		if !remainder {
			share = decimal.Min(share, *left)
			*left = left.Sub(share)
		}
		x.GiveNumber("renovation_share", share)
	}
	d.giveFlag(8, x, "with_contingency")
	d.giveFlag(6, x, "at_trade_price")
	if capped {
		d.giveShare(6, x, "value_cap", 0.02, 0.8)
		d.giveShare(5, x, "cost_cap", 0.05, 1)
	}
	d.giveShare(9, x, "points_share", 0, 0.06)
}

// interest draws how it runs. A reserve needs interest paid from it, and level
// payments need monthly interest on the balance.
func (d *drawer) interest(x *model.Member) {
	if !d.giveShare(14, x, "rate", 0, 0.25) || x.Given.Of("rate").Number.IsZero() {
		d.use("no rate")
	}
	if d.chance(10) {
		choose(x, "interest_on", pick(d, "balance", "commitment"))
	}
	if d.chance(12) {
		choose(x, "interest_paid", pick(d, "reserve", "monthly", "at payoff", "added monthly", "reserve"))
	}
	onCommitment := x.Given.Of("interest_on").Choice == "commitment"
	switch paid := x.Given.Of("interest_paid").Choice; {
	case paid == "reserve":
		if d.giveMoney(14, x, "reserve_wanted", 0, pick(d, 60_000.0, 2500, 2500, 12_000, 12_000, 900_000)) && onCommitment {
			d.use("commitment and reserve")
		}
	case (paid == "" || paid == "monthly") && !onCommitment && d.chance(11):
		x.GiveNumber("amortising_months", pick(d, dec(12), dec(360), dec(1), dec(3), dec(180)))
	}
	d.giveFlag(5, x, "actual_360")
	d.give(6, x, "least_interest_months", func() decimal.Decimal { return d.months(9) })
}

// ending draws the term, its extensions and the exit fee.
func (d *drawer) ending(x *model.Member) {
	if d.give(9, x, "term", func() decimal.Decimal { return decimal.Max(d.months(12), dec(0.5)) }) {
		_, amortising := x.Given.Look("amortising_months")
		if d.chance(11) && !(d.steady && amortising) { // what level payments have cleared is not extended
			x.GiveNumber("extension_months", decimal.Max(d.months(6), dec(0.25)))
			if d.chance(9) {
				d.use("extension by share")
				x.GiveNumber("extension_share", d.share(0, 0.02))
			} else {
				d.use("extension by fixed fee")
				x.GiveNumber("extension_fixed", d.money(0, 1500))
			}
		} else {
			d.use("term without extension")
		}
	}
	switch {
	case d.chance(6):
		x.GiveNumber("exit_share", d.share(0, 0.03))
		if d.chance(8) {
			choose(x, "exit_on", "commitment")
			d.use("exit by share of commitment")
			return
		}
		choose(x, "exit_on", "balance")
		d.use("exit by share of balance")
	case d.chance(5):
		x.GiveNumber("exit_fixed", d.money(0, 2500))
	}
}

// draws draws how the holdback comes out.
func (d *drawer) draws(x *model.Member, free bool) {
	d.give(13, x, "lag", func() decimal.Decimal { return decimal.NewFromInt(int64(d.upTo(3))) })
	d.giveShare(9, x, "retainage_share", 0, 0.2)
	if !free {
		d.giveMoney(8, x, "draw_fee", 0, 400)
		d.giveMoney(5, x, "least_draw", 0, 12_000)
	}
	d.giveFlag(5, x, "owner_first")
}
