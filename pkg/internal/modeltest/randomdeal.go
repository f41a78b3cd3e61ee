package modeltest

import (
	"fmt"
	"strconv"

	"github.com/shopspring/decimal"
)

// values draws the price and what the house is worth.
func (d *drawer) values() {
	arv := d.money(120_000, 600_000)
	if d.chance(1) {
		arv = d.money(1, 3_000_000)
	}
	price := arv.Mul(d.share(0.25, 1.1)).Round(int32(pick(d, 0, -3, 2)))
	d.Deal.GiveNumber("after_repair_value", arv)
	d.Deal.GiveNumber("price", price)
	d.refs = map[string]decimal.Decimal{
		"price": price, "all_in_price": price, "sale_price": arv, "after_repair_value": arv,
		"loan_at_closing": price, "commitment": price, "holdback": price.DivRound(decimal.NewFromInt(10), 0),
	}
	d.near(4, "low_value", arv)
	d.near(3, "lender_value", arv)
	d.near(3, "as_is_value", price)
}

// near gives a value between 60% and 120% of another.
func (d *drawer) near(n int, line string, of decimal.Decimal) {
	d.give(n, d.Deal, line, func() decimal.Decimal { return of.Mul(d.share(0.6, 1.2)).Round(0) })
}

// lasts gives a deal an escrow whose phases would all have no length.
func (d *drawer) lasts(phases ...string) {
	for _, p := range phases {
		if !d.Deal.Given.Of(p).Number.IsZero() {
			return
		}
	}
	d.Deal.GiveNumber("escrow", one)
}

// time draws the phases; a hold of no length is refused.
func (d *drawer) time() {
	phases := 0
	for _, p := range []struct {
		line string
		most int
	}{{"lead_in", 3}, {"renovation", 9}, {"marketing", 5}, {"escrow", 3}} {
		x := d.months(p.most)
		if d.Deal.GiveNumber(p.line, x); x.IsZero() {
			d.use("no " + map[string]string{"lead_in": "lead-in"}[p.line] + map[bool]string{true: "", false: p.line}[p.line == "lead_in"])
		} else {
			phases++
		}
	}
	d.lasts("lead_in", "renovation", "marketing", "escrow")
	if phases <= 1 {
		d.use("only one phase")
	}
	d.give(4, d.Deal, "standstill", func() decimal.Decimal { return d.months(4) })
	d.give(3, d.Deal, "late_sale", func() decimal.Decimal { return d.months(6) })
}

// works draws the renovation, its contingency and its spending.
func (d *drawer) works() {
	sum := decimal.Zero
	lines := d.upTo(4)
	if d.bare {
		lines = 0
	}
	for i := range lines {
		c := d.Deal.Add("cost", "", "work "+strconv.Itoa(i+1))
		given := d.giveMoney(6, c, "materials", 0, 9000)
		given = d.giveMoney(6, c, "labour", 0, 15000) || given
		if !given || d.chance(2) {
			d.giveMoney(15, c, "lump", 0, 40000)
		}
		if d.chance(5) {
			c.GiveNumber("own_hours", d.between(decimal.Zero, decimal.NewFromInt(300), decimal.New(5, -1)))
			d.giveMoney(5, c, "hired_rate", 0, 120)
		}
		for _, line := range []string{"materials", "labour", "lump"} {
			sum = sum.Add(c.Given.Of(line).Number)
		}
	}
	d.giveMoney(6, d.Deal, "own_labour_rate", 0, 90)
	for _, line := range []string{"works_cost", "works_at_trade_price", "base_cost", "budget"} {
		d.refs[line] = sum
	}
	if sum.IsZero() {
		d.use("no works")
	}
	d.fees(d.Deal, "general_fee")
	d.giveShare(11, d.Deal, "contingency_share", 0, 0.3)
	d.giveShare(4, d.Deal, "overrun", 0, 0.6)
	d.giveMoney(4, d.Deal, "extra_work", 0, 6000)
	d.curve(sum)
}

func (d *drawer) curve(cost decimal.Decimal) {
	length := d.Deal.Given.Of("renovation").Number
	if length.IsZero() && cost.IsPositive() {
		d.use("work of no length")
	}
	if d.Deal.Given.Of("standstill").Number.IsPositive() && length.IsPositive() {
		d.use("standstill in work")
	}
	if d.chance(1) {
		return
	}
	word := pick(d, "straight", "front", "back", "s", "stated")
	if choose(d.Deal, "curve", word); word == "stated" {
		d.stages(int(length.Ceil().IntPart()))
	}
}

// stages draws stated amounts; those of the first month are never nothing, since
// nothing cannot be scaled to the spending.
func (d *drawer) stages(months int) {
	n := max(1, months+d.upTo(4)-2)
	switch {
	case n > months:
		d.use("stated past the end")
	case n < months:
		d.use("stated short of the end")
	}
	for i := range n {
		low := 0.0
		if i == 0 {
			low = 100
		}
		d.Deal.Add("stage", "", fmt.Sprintf("month %d", i+1)).GiveNumber("amount", d.money(low, 12000))
	}
}

// purchase draws what comes on top of the price, and deposits.
func (d *drawer) purchase() {
	x := d.Deal
	d.giveMoney(3, x, "assignment_fee", 0, 12000)
	if d.chance(4) {
		d.giveShare(14, x, "premium_share", 0, 0.1)
		d.giveMoney(9, x, "premium_least", 0, 5000)
	}
	d.giveMoney(4, x, "seller_credit", 0, 8000)
	d.giveMoney(6, x, "earnest_deposit", 0, 6000)
	d.fees(x, "before_fee")
	d.fees(x, "purchase_fee")
	d.fees(x, "holding_fee")
	for range d.upTo(2) {
		p := x.Add("deposit", "", "deposit")
		p.GiveNumber("amount", d.money(0, 2500))
		d.giveFlag(4, p, "at_the_table")
		if d.giveFlag(8, p, "credit") {
			d.use("credit at the purchase")
		} else {
			d.use("deposit")
		}
	}
}

// sale draws what the house sells for and what that costs.
func (d *drawer) sale() {
	d.giveShare(6, d.Deal, "expected_discount", 0, 0.12)
	d.giveShare(4, d.Deal, "market_change", -0.25, 0.1)
	d.near(2, "sale_price", d.refs["after_repair_value"])
	d.giveMoney(2, d.Deal, "tax_withheld", 0, 20000)
	d.fees(d.Deal, "selling_fee")
}

// partner draws somebody who puts money in.
func (d *drawer) partner() {
	if !d.chance(6) {
		return
	}
	d.Deal.GiveNumber("partner_share", d.share(0.01, 0.99))
	if d.giveShare(9, d.Deal, "partner_split", 0, 0.95) && !d.Deal.Given.Of("partner_split").Number.Equal(d.Deal.Given.Of("partner_share").Number) {
		d.use("unequal split")
	}
	d.giveShare(9, d.Deal, "preferred_rate", 0, 0.2)
}

func (d *drawer) tax() {
	x := d.Deal
	switch d.upTo(2) {
	case 0:
		return
	case 1:
		choose(x, "tax_method", "share")
		d.giveShare(12, x, "tax_share", 0, 0.6)
		return
	}
	choose(x, "tax_method", "rates")
	d.giveShare(15, x, "income_rate", 0, 0.4)
	d.giveMoney(9, x, "other_wages", 0, 250_000)
	for line, v := range map[string]float64{ // invented figures of the usual size
		"wage_base": 180_000, "earnings_factor": 0.9235, "least_earnings": 400, "social_security_rate": 0.124,
		"medicare_rate": 0.029, "additional_rate": 0.009, "additional_threshold": 200_000,
	} {
		x.GiveNumber(line, dec(v))
	}
}

// targets draws what the deal must bring, in the order in which targets are listed.
func (d *drawer) targets() {
	x := d.Deal
	for _, one := range []struct {
		name string
		give func() bool
	}{
		{"profit", func() bool { return d.giveMoney(10, x, "target_profit", 0, 60_000) }},
		{"margin", func() bool { return d.giveShare(10, x, "target_margin", 0, 0.3) }},
		{"roi", func() bool { return d.giveShare(10, x, "target_roi", 0, 1) }},
		{"cash", func() bool { return d.giveMoney(10, x, "cash_available", 0, 250_000) }},
	} {
		if one.give() {
			d.Targets = append(d.Targets, one.name+"_to_spare")
		}
	}
	if d.Deal.Given.Of("cash_available").Text != "" {
		d.giveMoney(8, x, "cash_reserve", 0, 20_000)
	}
	switch len(d.Targets) {
	case 0:
		d.use("no targets")
	case 4:
		d.use("all targets")
	}
	d.giveShare(4, x, "rule_share", 0.5, 0.9)
	d.giveShare(3, x, "walk_away_share", 0, 0.4)
}
