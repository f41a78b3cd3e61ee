package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// hold is how long the house is owned, as the model's line hold_months says; it is
// needed before the model can be bound. It is false where a phase cannot be read.
func (r *reader) hold() (decimal.Decimal, bool) {
	sum := decimal.Zero
	for _, f := range fields["time"] {
		g := r.got[f.Path]
		if g == nil {
			continue
		}
		if !g.ok {
			return sum, false
		}
		sum = sum.Add(g.number)
	}
	if g := r.got["time"]; g != nil && !g.ok {
		return sum, false
	}
	return sum, true
}

// saleDay is the days from the purchase to the sale, as the model's line sale_day
// says: the hold at 365/12 days a month, rounded to 9 decimals and then down.
func (r *reader) saleDay() int {
	months, _ := r.hold()
	days := months.Mul(decimal.NewFromInt(365)).DivRound(decimal.NewFromInt(12), 9)
	return int(days.Floor().IntPart())
}

// saleDate is the planned day of the sale; zero if the purchase has none.
func (r *reader) saleDate() quantity.Date {
	if r.deal.PurchaseDate.IsZero() {
		return quantity.Date{}
	}
	return r.deal.PurchaseDate.AddDays(r.saleDay())
}

func days(a, b quantity.Date) int { return quantity.DaysBetween(a, b) }

// where is the place of a key if the file has it, else of the first of the groups
// around it that it has, else the file as a whole.
func (r *reader) where(paths ...string) diag.Pos {
	for _, p := range paths {
		if g := r.got[p]; g != nil {
			return g.key.at
		}
	}
	return diag.Pos{File: r.name}
}

// needed is where, with the first line for the file as a whole.
func (r *reader) needed(paths ...string) diag.Pos {
	at := r.where(paths...)
	at.Line = max(1, at.Line)
	return at
}
