package solve

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/cashflow"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// A Rate is a rate of return or of a loan, or the reason why there is none.
type Rate struct {
	Found   bool
	Value   decimal.Decimal
	Several int    // how many rates solve the equation; more than 1 is doubtful
	Why     string // why there is none
}

// monthsAYear is the number of periods a year of every rate here.
const monthsAYear = 12

// partPlaces is how exactly the part of the last month is taken for a rate.
const partPlaces = 12

// IRR is the owner's internal rate of return over months 0 to the sale, as an
// effective annual rate. Of several rates it takes the one nearest zero.
func IRR(m *model.Model, v *exact.Values) Rate {
	r, err := cashflow.IRR(v.ByMonth(m.Find(m.Root, "owner_net")))
	if err != nil {
		return Rate{Why: err.Error()}
	}
	return Rate{Found: true, Value: cashflow.Effective(r.Rate, monthsAYear), Several: len(r.Roots)}
}

// APR is the annual percentage rate of loans taken as one, by the actuarial
// method of 12 CFR 1026 App. J: nominal, twelve times the monthly rate. What
// moves in the month of the sale moves at the sale.
func APR(m *model.Model, v *exact.Values, loans ...*model.Member) Rate {
	hold := v.Of(m.Find(m.Root, "hold_months")).Round(partPlaces)
	var advances, payments []cashflow.Flow
	for month := range v.Months() + 1 {
		at := cashflow.Flow{Whole: month}
		if month == v.Months() {
			at.Whole = int(hold.IntPart())
			at.Part = hold.Sub(hold.Truncate(0))
		}
		for _, l := range loans {
			advances = flow(advances, at, v.In(m.Find(l, "lent"), month))
			payments = flow(payments, at, v.In(m.Find(l, "paid_back"), month))
			if month == v.Months() {
				payments = flow(payments, at, v.Of(m.Find(l, "paid_back_at_sale")))
			}
		}
	}
	r, err := cashflow.APR(atOnce(advances, payments, hold))
	if err != nil {
		return Rate{Why: err.Error()}
	}
	return Rate{Found: true, Value: r.Rate, Several: len(r.Roots)}
}

// atOnce returns the arguments of an annual percentage rate. One advance and one
// payment within a year are not compounded: the time between is the unit period
// (12 CFR 1026 App. J (c)(5)). All else goes by months.
func atOnce(advances, payments []cashflow.Flow, hold decimal.Decimal) (_, _ []cashflow.Flow, periodsAYear decimal.Decimal) {
	year := decimal.NewFromInt(monthsAYear)
	at := func(f cashflow.Flow) decimal.Decimal { return decimal.NewFromInt(int64(f.Whole)).Add(f.Part) }
	early := slices.ContainsFunc(payments, func(f cashflow.Flow) bool { return at(f).LessThan(hold) })
	if len(advances) != 1 || !at(advances[0]).IsZero() || early || hold.GreaterThan(year) {
		return advances, payments, year
	}
	one := slices.Clone(payments)
	for i := range one {
		one[i].Whole, one[i].Part = 1, decimal.Decimal{}
	}
	return advances, one, formula.Divide(year, hold)
}

func flow(all []cashflow.Flow, at cashflow.Flow, amount decimal.Decimal) []cashflow.Flow {
	if amount.IsZero() {
		return all
	}
	at.Amount = amount
	return append(all, at)
}
