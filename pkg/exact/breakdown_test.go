package exact_test

import (
	"errors"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

// Of houses too, of which the whole may have work that comes along beside what is named.
func TestLendersPartsOfAHouseComeToTheHoldback(t *testing.T) {
	doc, err := model.Standard()
	require.NoError(t, err)
	modeltest.Check(t, *randomHouses, func(t *rapid.T) {
		d := modeltest.RandomHouse(t)
		d.Deal.Add("loan", "", "lender").GiveNumber("renovation_share", decimal.New(rapid.Int64Range(1, 100).Draw(t, "percent"), -2))
		m, err := model.Bind(doc, d.Deal)
		require.NoError(t, err)
		v, err := exact.Evaluate(m)
		require.NoError(t, err)
		holds(t, worked{d, v, m}, []property{{"what lenders pay of lines comes to the holdback", linesComeToHoldback}})
	})
}

// What lenders pay of each line comes to the holdback; nothing is left for a contingency
// that no lender counts, and of no line more than it costs finished by trades, unless what
// lenders count does not hold what they hold back.
func linesComeToHoldback(w worked) error {
	paid := decimal.Zero
	var errs []error
	lines := func(all []*model.Member, costs string) {
		for _, m := range all {
			part := w.at(m, "lender_pays")
			paid = paid.Add(part)
			errs = append(errs, withinLine(w, m.Path(), part, w.at(m, costs)))
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
	errs = append(errs, withinLine(w, "disposal", w.of("lenders_pay_disposal"), w.of("disposal")), withinLine(w, "rents", w.of("lenders_pay_rents"), w.of("rents")), withinLine(w, "contingency", rest, w.of("contingency")))
	errs = append(errs, same("holdback by lines", w.of("holdback"), total(paid, w.of("lenders_pay_disposal"), w.of("lenders_pay_rents"), rest)))
	counted := false
	for _, l := range w.Deal.In("loan") {
		counted = counted || w.at(l, "with_contingency").IsPositive() && w.at(l, "holdback").IsPositive()
	}
	return errors.Join(append(errs, check(counted || rest.IsZero(), "nobody counts the contingency, and lenders pay %s of it", rest))...)
}

// withinLine checks that lenders pay between nothing and the whole of a line; of one that is
// a credit, between the whole and nothing.
func withinLine(w worked, of string, part, whole decimal.Decimal) error {
	nothing := decimal.New(1, -9)
	for _, l := range w.Deal.In("loan") {
		if w.at(l, "paid_beyond_open").GreaterThan(nothing) {
			return nil
		}
	}
	least, most := decimal.Min(whole, decimal.Zero), decimal.Max(whole, decimal.Zero)
	return check(!part.LessThan(least) && !part.GreaterThan(most), "%s: lenders pay %s of %s", of, part, whole)
}
