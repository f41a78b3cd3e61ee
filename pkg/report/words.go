package report

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

func money(x decimal.Decimal) string   { return quantity.FormatMoney(x) }
func dollars(x decimal.Decimal) string { return quantity.FormatDollars(x) }
func percent(x decimal.Decimal) string { return quantity.FormatPercent(x, 1) }
func months(x decimal.Decimal) string  { return quantity.FormatMonths(x, 1) }

// goal says what a stated target asks for.
func goal(a *answer.Answer, target string) string {
	switch target {
	case "profit_to_spare":
		if a.Line("target_profit").IsZero() {
			return "not losing money"
		}
		return "a profit of at least " + dollars(a.Line("target_profit"))
	case "margin_to_spare":
		return "a margin of at least " + percent(a.Line("target_margin"))
	case "roi_to_spare":
		return "a return on your cash (ROI) of at least " + percent(a.Line("target_roi"))
	case "cash_to_spare":
		return "needing no more cash than the " + dollars(a.Line("cash_available").Sub(a.Line("cash_reserve"))) + " you can use"
	}
	return target
}

// missedBy says by how much a target is missed.
func missedBy(target string, short decimal.Decimal) string {
	switch target {
	case "cash_to_spare":
		return money(short) + " of cash"
	case "profit_to_spare":
		return money(short)
	}
	return money(short) + " of profit"
}

func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func rate(r solve.Rate) string {
	if !r.Found {
		return "none"
	}
	return percent(r.Value)
}

// words turns a line's name into words.
func words(line string) string { return strings.ReplaceAll(line, "_", " ") }
