package comps

import (
	"errors"
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// whole rounds to whole dollars, half away from zero.
func whole(d decimal.Decimal) decimal.Decimal { return d.Round(0) }

// dollars rounds an estimate to whole dollars.
func dollars(v float64) decimal.Decimal { return decimal.NewFromInt(int64(math.Round(v))) }

// TimeSimple returns what a price gains over days at a yearly rate, 0.12 for 12%, a
// day being 1/365 of a year and nothing compounded; whole dollars. The days run from
// the sale's contract to the day of the value (Fannie Mae Selling Guide B4-1.3-09).
func TimeSimple(price, yearly decimal.Decimal, days int) decimal.Decimal {
	return whole(price.Mul(yearly).Mul(decimal.NewFromInt(int64(days))).DivRound(decimal.NewFromInt(365), 10))
}

// TimeCompound returns what a price gains over days at a yearly rate that compounds;
// whole dollars, worked in floating point.
func TimeCompound(price, yearly decimal.Decimal, days int) decimal.Decimal {
	rate := math.Pow(1+yearly.InexactFloat64(), float64(days)/365) - 1
	return dollars(price.InexactFloat64() * rate)
}

// MarketAdjusted brings a sale to the market of the day: what the buyer spent right
// after the sale is added first, then the market's change is taken on the whole, as
// these adjustments follow one another; whole dollars.
func MarketAdjusted(price, spentAfter, change decimal.Decimal) decimal.Decimal {
	p := price.Add(spentAfter)
	return whole(p.Add(p.Mul(change)))
}

// Feature returns the adjustment of a sale for a thing that is worth so much: added
// to the sale's price where the subject alone has it, taken off where the sale alone
// has it. The subject never moves.
func Feature(subjectHas, saleHas bool, worth decimal.Decimal) decimal.Decimal {
	switch {
	case subjectHas == saleHas:
		return decimal.Zero
	case subjectHas:
		return worth
	}
	return worth.Neg()
}

// Paired returns what a thing is worth by two sales alike but for it.
func Paired(with, without decimal.Decimal) decimal.Decimal { return with.Sub(without) }

// ErrNoTime says that two sales do not tell a trend, since no time lies between.
var ErrNoTime = errors.New("no time lies between the two sales")

// Resale returns the market's change per month by two sales of one house that was
// not changed between them: the whole change over the months between, not
// compounded (California BOE Assessors' Handbook 502, 1998, p. 46). A month is
// 365/12 days. The rate is an estimate.
func Resale(first, second decimal.Decimal, from, to quantity.Date) (monthly float64, err error) {
	days := quantity.DaysBetween(from, to)
	if days <= 0 || first.Sign() <= 0 {
		return 0, ErrNoTime
	}
	change := second.Sub(first).InexactFloat64() / first.InexactFloat64()
	return change / (float64(days) / monthDays), nil
}
