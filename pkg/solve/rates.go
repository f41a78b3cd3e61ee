package solve

import (
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
// method of 12 CFR 1026 App. J: nominal, the rate of a unit period times the periods of a
// year. What moves in the month of the sale moves at the sale.
func APR(m *model.Model, v *exact.Values, loans ...*model.Member) Rate {
	hold := v.Of(m.Find(m.Root, "hold_months")).Round(partPlaces)
	var advances, payments []cashflow.Flow
	for month := range v.Months() + 1 {
		paid := decimal.Zero // less what is lent on the same day
		for _, l := range loans {
			paid = paid.Add(v.In(m.Find(l, "paid_back"), month)).Sub(v.In(m.Find(l, "lent"), month))
			if month == v.Months() {
				paid = paid.Add(v.Of(m.Find(l, "paid_back_at_sale")))
			}
		}
		at := cashflow.Flow{Whole: month, Amount: paid.Abs()}
		if month == v.Months() {
			at.Whole, at.Part = whole(hold)
		}
		switch paid.Sign() {
		case 1:
			payments = append(payments, at)
		case -1:
			advances = append(advances, at)
		}
	}
	r, err := cashflow.APR(atOnce(advances, payments))
	if err != nil {
		return Rate{Why: err.Error()}
	}
	return Rate{Found: true, Value: r.Rate, Several: len(r.Roots)}
}

// atOnce returns the arguments of an annual percentage rate. The unit period of one advance
// and one payment is the time between, but a year where it is longer (12 CFR 1026 App. J
// (b)(5) and (c)(5)); of all else it is a month. The time begins with that advance.
func atOnce(advances, payments []cashflow.Flow) (_, _ []cashflow.Flow, periodsAYear decimal.Decimal) {
	year := decimal.NewFromInt(monthsAYear)
	if len(advances) != 1 || len(payments) != 1 || !at(payments[0]).GreaterThan(at(advances[0])) {
		return advances, payments, year
	}
	between := at(payments[0]).Sub(at(advances[0]))
	lent, paid := cashflow.Flow{Amount: advances[0].Amount}, cashflow.Flow{Whole: 1, Amount: payments[0].Amount}
	periodsAYear = formula.Divide(year, between)
	if between.GreaterThan(year) {
		paid.Whole, paid.Part = whole(formula.Divide(between, year))
		periodsAYear = decimal.NewFromInt(1)
	}
	return []cashflow.Flow{lent}, []cashflow.Flow{paid}, periodsAYear
}

// at is when a flow falls, in unit periods.
func at(f cashflow.Flow) decimal.Decimal { return decimal.NewFromInt(int64(f.Whole)).Add(f.Part) }

// whole splits a time into whole periods and a part of one.
func whole(time decimal.Decimal) (int, decimal.Decimal) {
	return int(time.IntPart()), time.Sub(time.Truncate(0))
}
