package answer

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// Goal says what a stated target asks for.
func (a *Answer) Goal(target string) string {
	switch target {
	case "profit_to_spare":
		if a.Line("target_profit").IsZero() {
			return "breaking even"
		}
		return "a profit of at least " + stated(a.Line("target_profit"))
	case "margin_to_spare":
		if a.Line("partner_share").IsPositive() {
			return "a margin of at least " + statedShare(a.Line("target_margin")) + " from your part"
		}
		return "a margin of at least " + statedShare(a.Line("target_margin"))
	case "roi_to_spare":
		return "a return on your cash (ROI) of at least " + statedShare(a.Line("target_roi"))
	case "cash_to_spare":
		return "needing no more cash than the " + stated(a.Line("cash_available").Sub(a.Line("cash_reserve"))) + " you can use"
	}
	return target
}

// stated is an amount that the file gives, with its cents where it has some.
func stated(x decimal.Decimal) string {
	if x.Round(2).IsInteger() {
		return dollars(x)
	}
	return money(x)
}

// statedShare is a share that the file gives, not rounded.
func statedShare(x decimal.Decimal) string { return quantity.FormatPercent(x, 12) }

// MissedBy says by how much a target is missed.
func MissedBy(target string, short decimal.Decimal) string {
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
