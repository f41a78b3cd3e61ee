package report

import (
	"fmt"
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/quantity"
)

// Search writes what a result found by search is, and how to check it.
func Search(w io.Writer, a *answer.Answer, f answer.Found, file string, s Style) error {
	p := newPage(w, s)
	p.line("%s = %s", p.paint(bold, f.Name), found(f, f.Value(a)))
	p.text("  ", f.Meaning+"; found by search, not by a formula")
	for _, line := range howToCheck(a, f, f.Value(a), file) {
		p.text("  ", line)
	}
	return p.flush()
}

func found(f answer.Found, v any) string {
	x, ok := v.(decimal.Decimal)
	switch {
	case v == nil:
		return "none"
	case !ok:
		return fmt.Sprint(v)
	case f.Unit == "$":
		return money(x)
	case f.Unit == "share":
		return quantity.FormatPercent(x, 4)
	case f.Unit == "month":
		return months(x)
	}
	return x.String()
}

// howToCheck says which command shows the figure for oneself.
func howToCheck(a *answer.Answer, f answer.Found, v any, file string) []string {
	x, ok := v.(decimal.Decimal)
	if !ok {
		return nil
	}
	one := decimal.NewFromInt(1)
	switch f.Name {
	case "max_offer":
		next := x.Add(one)
		return []string{
			fmt.Sprintf("at %s every target holds; at %s you would miss %s, by %s", dollars(x), dollars(next), a.Goal(a.Offer.Binding), answer.MissedBy(a.Offer.Binding, a.Offer.Short)),
			fmt.Sprintf("see both: ledgerboard bid %s --set price=%s, then --set price=%s", file, x, next),
			fmt.Sprintf("how near the target is: ledgerboard why %s %s --set price=%s", file, a.Offer.Binding, next),
		}
	case "one_more_month_unsold", "one_more_month_stalled":
		line := map[string]string{"one_more_month_unsold": "marketing", "one_more_month_stalled": "standstill"}[f.Name]
		return []string{
			"it is what owner_profit loses with a month more of " + line + " while the loans stay as planned",
			"--set time." + line + "=... plans the month from the start, so the loans are sized for it, and may show another figure",
		}
	case "break_even_sale_price", "break_even_overrun", "break_even_months":
		return []string{"the loans stay as planned; for the profit target: ledgerboard why " + file + " " + f.Name + "_at_target"}
	case "irr":
		return []string{fmt.Sprintf("it is worked out from owner_net by month: ledgerboard cash %s --json", file)}
	case "loan_apr":
		return []string{fmt.Sprintf("it is worked out from loan.lent, loan.paid_back and loan.paid_back_at_sale: ledgerboard cash %s --json", file)}
	}
	return nil
}
