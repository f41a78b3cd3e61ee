package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/quantity"
)

// Search writes what a result found by search is, and how to check it.
func Search(w io.Writer, a *answer.Answer, f answer.Found, file string, s Style) error {
	says, err := searchSays(a, f, file)
	if err != nil {
		return err
	}
	p := newPage(w, s)
	p.line("%s = %s", p.paint(bold, f.Name), found(f, f.Value(a)))
	p.text("  ", f.Meaning+"; found by search, not by a formula")
	for _, line := range says {
		p.text("  ", line)
	}
	return p.flush()
}

// SearchJSON writes the same as an object; its value is null where there is none.
func SearchJSON(w io.Writer, a *answer.Answer, f answer.Found, file string) error {
	says, err := searchSays(a, f, file)
	if err != nil {
		return err
	}
	return writeJSON(w, map[string]any{"schema": Schema, "why": map[string]any{
		"kind": "search", "line": f.Name, "value": f.Value(a), "text": found(f, f.Value(a)), "unit": f.Unit, "meaning": f.Meaning, "says": says,
	}})
}

// searchSays are what was found on either side, and which command shows it.
func searchSays(a *answer.Answer, f answer.Found, file string) ([]string, error) {
	lines, err := sides(a, f.Name)
	return append(lines, howToCheck(a, f, f.Value(a), file)...), err
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
			fmt.Sprintf("at %s every target holds; at %s you would %s", dollars(x), dollars(next), a.Misses(answer.Miss{Target: a.Offer.Binding, Short: a.Offer.Short})),
			fmt.Sprintf("see both: ledgerboard bid %s --set price=%s, then --set price=%s", file, x, next),
			fmt.Sprintf("how near the target is: ledgerboard why %s --set price=%s %s", file, next, a.Offer.Binding),
		}
	case "one_more_month_unsold":
		return delayed(a, x, "marketing")
	case "one_more_month_stalled":
		return delayed(a, x, "standstill")
	case "one_more_day_unsold":
		return []string{"it is one_more_month_unsold, " + money(a.Late.Month) + ", over 365/12 days"}
	case "one_more_day_stalled":
		return []string{"it is one_more_month_stalled, " + money(a.Stalled.Month) + ", over 365/12 days"}
	case "break_even_sale_price", "break_even_overrun", "break_even_months":
		return []string{"the loans stay as planned; for the profit target: ledgerboard why " + file + " " + f.Name + "_at_target"}
	case "irr":
		return []string{fmt.Sprintf("it is worked out from owner_net by month: ledgerboard cash %s --json", file)}
	case "loan_apr":
		return []string{fmt.Sprintf("it is worked out from loan.lent, loan.paid_back and loan.paid_back_at_sale: ledgerboard cash %s --json", file)}
	}
	return nil
}

// delayed says what one more month does to the profit, and why a plan of that length
// may show another figure.
func delayed(a *answer.Answer, lost decimal.Decimal, line string) []string {
	profit := a.Line("owner_profit")
	return []string{
		fmt.Sprintf("owner_profit is %s as planned and %s with a month more of %s while the loans stay as planned", money(profit), money(profit.Sub(lost)), line),
		"--set time." + line + "=... plans the month from the start, so the loans are sized for it, and may show another figure",
	}
}

// sides says over what a result was searched, and what the line that decides comes to on
// either side of it.
func sides(a *answer.Answer, name string) ([]string, error) {
	if name == "irr" {
		below, above, ok := a.IRRSides()
		if !ok {
			return nil, nil
		}
		month := func(x decimal.Decimal) string { return quantity.FormatPercent(x, 2) }
		return []string{fmt.Sprintf("searched over rates a month: owner_net discounted at %s a month comes to %s, at %s to %s", month(below.At), money(below.Value), month(above.At), money(above.Value))}, nil
	}
	watched, at, beyond, ok, err := a.BreakEvenSides(name)
	if err != nil || !ok {
		return nil, err
	}
	over := map[string]struct {
		steps string
		said  func(decimal.Decimal) string
	}{
		"break_even_sale_price": {"sale prices in whole dollars", dollars},
		"break_even_overrun":    {"overruns in steps of 0.1%", percent},
		"break_even_months":     {"months later in steps of 0.1", func(x decimal.Decimal) string { return months(x) + " later" }},
	}[strings.TrimSuffix(name, "_at_target")]
	return []string{fmt.Sprintf("searched over %s: %s is %s at %s, %s at %s", over.steps, watched, money(at.Value), over.said(at.At), money(beyond.Value), over.said(beyond.At))}, nil
}
