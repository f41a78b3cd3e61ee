package exact_test

import (
	"errors"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// What lenders pay of each line comes to the holdback; nothing is left for a contingency
// that no lender counts, and of no line more than it costs.
func linesComeToHoldback(w worked) error {
	paid := decimal.Zero
	var errs []error
	lines := func(all []*model.Member, costs string) {
		for _, m := range all {
			part := w.at(m, "lender_pays")
			paid = paid.Add(part)
			errs = append(errs, check(!part.IsNegative() || w.at(m, costs).IsNegative(), "%s: lenders pay %s", m.Path(), part))
		}
	}
	lines(w.Deal.In("general_fee"), "amount")
	lines(w.Deal.In("cost"), "trade_price")
	for _, room := range w.Deal.In("room") {
		for _, option := range room.In("option") {
			lines(option.In("item"), "trade_price")
		}
	}
	lines(w.Deal.In("check"), "set_aside")
	rest := w.of("lenders_pay_contingency")
	errs = append(errs, same("holdback by lines", w.of("holdback"), total(paid, w.of("lenders_pay_disposal"), rest)))
	counted := false
	for _, l := range w.Deal.In("loan") {
		counted = counted || w.at(l, "with_contingency").IsPositive() && w.at(l, "holdback").IsPositive()
	}
	return errors.Join(append(errs, check(counted || rest.IsZero(), "nobody counts the contingency, and lenders pay %s of it", rest))...)
}
