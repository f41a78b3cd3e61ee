package exact_test

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// lowPoint finds the owner's lowest cash anew: in each month money goes out before
// it comes in; what the sale settles counts only where the sale price is too low
// for it, with the prorations that come back in the same closing, and a partner pays a part of what is short over the month.
func lowPoint(w worked) error {
	d, n := w.Deal, w.Months()
	cash, lowest, when := decimal.Zero, decimal.Zero, 0
	var errs []error
	for m := range n + 1 {
		low := cash.Add(w.in(d, "owner_net", m))
		if m > 0 {
			out := w.in(d, "costs_paid", m)
			if m == n {
				short := w.in(d, "settled", m).Add(w.of("tax_withheld")).Sub(w.of("sale_price")).Sub(prorations(d))
				out = out.Add(decimal.Max(decimal.Zero, short))
			}
			low = cash.Sub(out).Add(w.in(d, "partner_in", m))
		}
		errs = append(errs, same(fmt.Sprintf("low point of month %d", m), low, w.in(d, "low_point", m)))
		if low.LessThan(lowest) {
			lowest, when = low, m
		}
		cash = cash.Add(w.in(d, "owner_net", m))
		errs = append(errs, same(fmt.Sprintf("owner's cash after month %d", m), cash, w.in(d, "owner_cumulative", m)))
		errs = append(errs, check(w.of("cash_needed").GreaterThanOrEqual(cash.Neg()), "month %d ends at %s, below the low point", m, cash))
	}
	return errors.Join(append(errs,
		same("cash needed", lowest.Neg(), w.of("cash_needed")),
		same("its month", decimal.NewFromInt(int64(when)), w.of("cash_needed_month")),
		same("to buy", w.in(d, "net_cash", 0).Neg(), w.of("total_to_buy")),
		same("to bring", w.of("total_to_buy"), w.of("cash_to_close").Add(w.of("already_paid"))),
	)...)
}

// prorations are what was paid at the purchase and is counted in the sale's closing.
func prorations(d *model.Member) (sum decimal.Decimal) {
	for _, p := range d.In("deposit") {
		if p.Given.Of("at_the_table").Number.IsPositive() && p.Given.Of("credit").Number.IsZero() {
			sum = sum.Add(p.Given.Of("amount").Number)
		}
	}
	return sum
}

// beyond is how many months past the sale nothingAfterSale looks.
const beyond = 5

// nothingAfterSale works the deal out with more months than it has: no line may
// move in them, and no result may change.
func nothingAfterSale(w worked) error {
	steps := w.m.Needed()
	long := walk.Walker[decimal.Decimal, walk.Decimals]{Values: walk.New[decimal.Decimal](w.m)}
	for i, s := range steps {
		if err := long.Steps(steps[i : i+1]); err != nil {
			return err
		}
		if len(s.Cells) == 1 && s.Cells[0] == w.m.Horizon {
			long.Last += beyond
		}
	}
	var errs []error
	for i, c := range w.m.Cells {
		if !c.Line.Monthly {
			errs = append(errs, same(c.Name()+" with months past the sale", w.Of(c), long.Scalar[i]))
			continue
		}
		if !moves[c.Line.ID()] {
			continue
		}
		for m := w.Months() + 1; m <= long.Last; m++ {
			errs = append(errs, same(fmt.Sprintf("%s in month %d past the sale", c.Name(), m), decimal.Zero, long.Month(i)[m]))
		}
	}
	return errors.Join(errs...)
}

// moves are the monthly lines that are money on its way, or a balance.
var moves = map[string]bool{
	"purchase_paid": true, "loan_charges_paid": true, "holding_paid": true, "holding_received": true, "works_paid": true, "costs_paid": true, "settled": true,
	"money_out": true, "loans_in": true, "sale_in": true, "money_in": true, "net_cash": true, "partner_in": true, "owner_in": true,
	"partner_net": true, "owner_net": true, "holding_fee.paid": true, "loan.draw": true, "loan.draw_fee_paid": true, "loan.interest_charged": true,
	"loan.interest_cash": true, "loan.from_reserve": true, "loan.principal_paid": true, "loan.balance": true, "loan.paid_off": true,
	"loan.extension_paid": true, "loan.lent": true, "loan.paid_back": true,
}

// preparedIsSame asks a prepared question, in which formulas are cut down, at
// another price, overrun or day of sale, and the same one the long way.
func preparedIsSame(w worked) error {
	axis := []string{"price", "overrun", "late_sale"}[len(w.m.Cells)%3]
	change := exact.Change{Cell: w.m.Find(w.Deal, axis)}
	change.Value = w.of(axis).Add(map[string]decimal.Decimal{
		"price": w.of("closing_cost").Abs().Round(0), "overrun": decimal.New(55, -3), "late_sale": decimal.New(7, -1),
	}[axis])
	var wanted []*model.Cell
	for _, line := range []string{"roi_to_spare", "owner_profit", "cash_needed"} {
		wanted = append(wanted, w.m.Find(w.Deal, line))
	}
	p, err := bound.NewPlan(w.m, bound.Axis{Cell: change.Cell, Most: change.Value}, nil, wanted...)
	if err != nil {
		return err
	}
	short, err := exact.Prepared(p.Prepared).Evaluate(change)
	if err != nil {
		return err
	}
	long, err := exact.NewPlan(w.m, wanted...).Evaluate(change)
	if err != nil {
		return err
	}
	var errs []error
	for _, c := range wanted {
		errs = append(errs, same(c.Name()+" at another "+axis, long.Of(c), short.Of(c)))
	}
	return errors.Join(errs...)
}
