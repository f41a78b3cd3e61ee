package exact_test

import (
	"errors"
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Two ways to the profit, and every other result that is made of it.
func cashIsProfit(w worked) error {
	return errors.Join(
		same("net cash of all months", w.of("profit"), w.sum(w.Deal, "net_cash")),
		same("profit by parts", w.of("profit"), w.of("profit_by_parts")),
		same("what comes in less what goes out", w.of("profit"), w.sum(w.Deal, "money_in").Sub(w.sum(w.Deal, "money_out"))),
		same("sale price less all costs", w.of("profit"), w.of("sale_price").Sub(w.of("total_cost"))),
		same("running cash at the end", w.of("profit"), w.in(w.Deal, "cumulative", w.Months())),
	)
}

func sharesAreWhole(w worked) error {
	d := w.Deal
	errs := []error{
		same("profits", w.of("profit"), w.of("owner_profit").Add(w.of("partner_profit"))),
		same("the owner's profit and net cash", w.of("owner_profit"), w.sum(d, "owner_net")),
	}
	put, got := decimal.Zero, decimal.Zero // by all who put money in
	for m := range w.Months() + 1 {
		net, mine, theirs := w.in(d, "net_cash", m), w.in(d, "owner_net", m), w.in(d, "partner_net", m)
		errs = append(errs, same(fmt.Sprintf("month %d", m), net, mine.Add(theirs)))
		errs = append(errs, check(mine.Sign()*theirs.Sign() >= 0, "month %d: one pays in and the other takes out: %s, %s", m, mine, theirs))
		if net.IsNegative() {
			put = put.Sub(net)
		} else {
			got = got.Add(decimal.Min(net, put.Sub(got)))
		}
		capital := w.in(d, "owner_capital", m).Add(w.in(d, "partner_capital", m))
		errs = append(errs, same(fmt.Sprintf("capital after month %d", m), put.Sub(got), capital))
		for _, line := range []string{"owner_capital", "partner_capital"} {
			errs = append(errs, check(!w.in(d, line, m).IsNegative(), "%s below zero in month %d", line, m))
		}
	}
	if w.of("partner_share").IsZero() {
		errs = append(errs, same("profit without a partner", w.of("profit"), w.of("owner_profit")))
	}
	return errors.Join(errs...)
}

func sourcesMeetUses(w worked) error { return same("sources and uses", w.of("sources"), w.of("uses")) }

func chargesAddUp(w worked) error {
	var errs []error
	for kind, line := range map[string]string{
		"before_fee": "before_cost", "purchase_fee": "closing_cost", "general_fee": "general_cost", "selling_fee": "selling_cost",
	} {
		errs = append(errs, same(line, w.of(line), w.over(w.Deal.In(kind), "amount")))
	}
	loans, cost := w.Deal.In("loan"), decimal.Zero
	for _, l := range loans {
		errs = append(errs, same("loan fees", w.at(l, "loan_fees"), w.over(l.In("loan_fee"), "amount")))
		parts := total(w.at(l, "interest"), w.at(l, "points"), w.at(l, "loan_fees"), w.sum(l, "draw_fee_paid"), w.sum(l, "extension_paid"), w.at(l, "exit_fee"))
		errs = append(errs, same("cost of a loan", w.at(l, "cost"), parts))
		cost = cost.Add(parts)
	}
	errs = append(errs, same("cost of the loans", w.of("loan_cost"), cost))
	for _, line := range []string{"loan_at_closing", "holdback", "reserve", "commitment", "points", "loan_fees", "interest", "draws", "payoff"} {
		errs = append(errs, same("the loans' "+line, w.of(line), w.over(loans, line)))
	}
	works := w.Deal.In("cost")
	return errors.Join(append(errs,
		same("base cost", w.of("base_cost"), total(w.over(works, "materials"), w.over(works, "labour"), w.over(works, "lump"), w.of("general_cost"))),
		same("trade cost less own work", w.of("base_cost"), w.of("trade_cost").Sub(w.of("own_labour"))),
		same("budget", w.of("budget"), w.of("base_cost").Add(w.of("contingency"))),
	)...)
}

// The spending comes to spend, never runs back, and lies inside the work.
func spendingIsSpent(w worked) error {
	errs := []error{same("spent", w.of("spend"), w.sum(w.Deal, "works_paid"))}
	start, end := w.of("works_start"), w.of("works_last_month")
	idleFrom, idleTo := w.of("works_start").Add(w.of("pause_at")), w.of("works_start").Add(w.of("pause_at")).Add(w.of("standstill"))
	for m := range w.Months() + 1 {
		paid, month := w.in(w.Deal, "works_paid", m), decimal.NewFromInt(int64(m))
		errs = append(errs, check(!paid.Mul(w.of("spend")).IsNegative(), "month %d: spending runs back by %s", m, paid))
		outside := month.LessThanOrEqual(start) || month.GreaterThan(end)
		if w.of("renovation").IsZero() {
			outside = !month.Equal(w.of("works_first_month"))
		}
		idle := month.Sub(decimal.NewFromInt(1)).GreaterThanOrEqual(idleFrom) && month.LessThanOrEqual(idleTo) && w.of("renovation").IsPositive()
		errs = append(errs, check(!outside && !idle || paid.IsZero(), "month %d: %s spent while no one works", m, paid))
	}
	return errors.Join(errs...)
}

// drawsAddUp follows each holdback: what is asked for, paid, kept, released, and
// what comes too late to be taken.
func drawsAddUp(w worked) error {
	var errs []error
	earned := make([]decimal.Decimal, w.Months()+1) // by all lenders
	for _, l := range w.Deal.In("loan") {
		lag, late := int(w.at(l, "lag").IntPart()), decimal.Zero
		for m := max(0, w.Months()-lag+1); m <= w.Months(); m++ {
			late = late.Add(w.in(l, "draw_net", m))
		}
		kept, finished := w.sum(l, "draw_retained"), decimal.Max(w.of("works_end").Ceil(), w.of("works_first_month"))
		if back := int(finished.IntPart()) + lag; back <= w.Months() {
			errs = append(errs, same("released once the work is finished, idle months in", w.in(l, "released", back), kept))
			kept = decimal.Zero
		}
		asked := w.sum(l, "draw_gross")
		errs = append(errs,
			same("draws, late ones and retainage", asked, total(w.sum(l, "draw"), late, kept)),
			check(asked.LessThanOrEqual(w.at(l, "holdback")), "%s drawn of %s", asked, w.at(l, "holdback")),
			same("asked for in the end", asked, w.in(l, "earned_to_date", w.Months())),
			same("holdback, drawn and never drawn", w.at(l, "holdback"), total(w.at(l, "draws"), late, kept, w.at(l, "holdback").Sub(asked))),
		)
		for m := range w.Months() + 1 {
			earned[m] = earned[m].Add(w.in(l, "earned_to_date", m))
			spent := w.in(w.Deal, "spent_to_date", m)
			errs = append(errs, check(earned[m].LessThanOrEqual(spent) || earned[m].IsZero(), "lenders pay %s of %s spent up to month %d", earned[m], spent, m))
			for _, line := range []string{"draw_gross", "draw_retained", "draw_net", "draw", "draw_fee_paid"} {
				errs = append(errs, check(!w.in(l, line, m).IsNegative(), "month %d: %s below zero", m, line))
			}
			before, least := w.in(l, "draw_gross", m), w.at(l, "least_draw")
			early := int64(m) < w.of("works_last_month").IntPart()
			errs = append(errs, check(!early || before.IsZero() || before.GreaterThanOrEqual(least), "month %d: a draw of %s under the least of %s", m, before, least))
		}
	}
	return errors.Join(errs...)
}

// balancesEnd rolls each balance forward anew.
func balancesEnd(w worked) error {
	var errs []error
	for _, l := range w.Deal.In("loan") {
		balance, words := w.at(l, "loan_at_closing"), w.choice(l, "interest_paid")
		for m := range w.Months() + 1 {
			balance = total(balance, w.in(l, "draw", m), w.in(l, "from_reserve", m)).Sub(w.in(l, "principal_paid", m))
			if words == "added monthly" {
				balance = balance.Add(w.in(l, "interest_charged", m))
			}
			errs = append(errs, check(!balance.IsNegative(), "month %d: the balance is %s", m, balance))
			if m < w.Months() {
				errs = append(errs, same(fmt.Sprintf("balance of month %d", m), balance, w.in(l, "balance", m)))
			}
		}
		errs = append(errs,
			same("payoff", balance, w.at(l, "payoff")),
			check(w.in(l, "balance", w.Months()).IsZero(), "a balance of %s stays after the payoff", w.in(l, "balance", w.Months())),
			same("principal in and out", w.at(l, "loan_at_closing").Add(w.sum(l, "draw")).Add(w.sum(l, "from_reserve")).Add(w.joined(l)), w.at(l, "payoff").Add(w.sum(l, "principal_paid"))),
		)
	}
	return errors.Join(errs...)
}

// joined is interest that joins the balance month by month.
func (w worked) joined(l *model.Member) decimal.Decimal {
	if w.choice(l, "interest_paid") == "added monthly" {
		return w.sum(l, "interest_charged")
	}
	return decimal.Zero
}

// choice is the word that an input of choice has.
func (w worked) choice(x *model.Member, line string) string {
	c := w.m.Find(x, line)
	return c.Line.Choices[w.Of(c).IntPart()-1]
}

func interestAddsUp(w worked) error {
	var errs []error
	for _, l := range w.Deal.In("loan") {
		ways := total(w.sum(l, "interest_cash"), w.sum(l, "from_reserve"), w.joined(l), w.at(l, "interest_at_payoff"))
		errs = append(errs,
			same("interest in all its ways", w.sum(l, "interest_charged"), ways),
			same("interest", w.at(l, "interest"), decimal.Max(w.at(l, "least_interest"), w.sum(l, "interest_charged"))),
			check(w.sum(l, "from_reserve").LessThanOrEqual(w.at(l, "reserve")), "more than the reserve is used"),
			check(slices.Contains([]string{"reserve"}, w.choice(l, "interest_paid")) || w.sum(l, "from_reserve").IsZero(), "interest out of a reserve that does not pay any"),
		)
	}
	return errors.Join(errs...)
}

// capsHold checks the limits of the loans: caps, no cash back, nothing below zero.
func capsHold(w worked) error {
	var errs []error
	so, atClosing := decimal.Zero, decimal.Zero
	for _, l := range w.Deal.In("loan") {
		parts := []string{"loan_at_closing", "holdback", "reserve"}
		for _, p := range parts {
			errs = append(errs, check(!w.at(l, p).IsNegative(), "%s is %s", p, w.at(l, p)))
		}
		atClosing = atClosing.Add(w.at(l, "loan_at_closing"))
		if so = so.Add(w.at(l, "commitment")); w.at(l, "commitment").IsZero() {
			continue
		}
		for _, limit := range []string{"value_limit", "cost_limit"} {
			errs = append(errs, check(so.LessThanOrEqual(w.at(l, limit)), "%s committed above the %s of %s", so, limit, w.at(l, limit)))
		}
	}
	room := decimal.Max(decimal.Zero, w.of("price").Add(w.of("purchase_extras")).Sub(w.of("before_cost")))
	return errors.Join(append(errs, check(atClosing.LessThanOrEqual(room), "%s lent at the closing, where %s is to pay", atClosing, room))...)
}

func holdingAddsUp(w worked) error {
	refunds := w.over(w.Deal.In("holding_fee"), "refund")
	errs := []error{
		same("holding", w.of("holding_cost"), w.sum(w.Deal, "holding_paid").Sub(w.sum(w.Deal, "holding_received")).Sub(refunds)),
		same("holding by charge", w.of("holding_cost"), w.over(w.Deal.In("holding_fee"), "cost_of_holding")),
	}
	for _, f := range w.Deal.In("holding_fee") {
		errs = append(errs,
			same("a charge over the months", w.at(f, "cost_of_holding"), w.sum(f, "paid").Sub(w.at(f, "refund"))),
			check(w.at(f, "refund").LessThanOrEqual(w.at(f, "premium")), "more comes back than one premium"),
			check(!w.at(f, "refund").IsNegative(), "a refund below zero"))
	}
	return errors.Join(errs...)
}

// bridge goes from the rule-of-thumb offer to the price.
func bridge(w worked) error {
	x := w.of("rule_offer").Add(w.of("rule_allowance"))
	for _, line := range []string{"value_given_up", "selling_cost", "holding_cost", "loan_cost", "purchase_extras", "beyond_budget", "profit"} {
		x = x.Sub(w.of(line))
	}
	return same("bridge", w.of("price"), x)
}
