package answer

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// nearTerm is how near its term a loan's planned sale is worth a word; common
// practice, no source.
var nearTerm = decimal.NewFromInt(2) // months

// A Term is the end of a loan near which the sale is planned.
type Term struct {
	Loan   string
	Months decimal.Decimal // how long the loan runs
	Spare  decimal.Decimal // months from the planned sale to the term, negative if the term is first
	Each   decimal.Decimal // months of one extension, 0 where none is agreed
	Fee    decimal.Decimal // what one extension costs
	Paid   decimal.Decimal // extension fees in the plan
}

// terms are those of the loans that end within two months of the planned sale.
func (a *Answer) terms() {
	for _, l := range a.Loans() {
		t := Term{
			Loan: l.Label, Months: a.Of(l, "term"), Each: a.Of(l, "extension_months"),
			Fee: a.Of(l, "extension_fee"), Paid: a.Of(l, "extension_fees"),
		}
		t.Spare = t.Months.Sub(a.Line("hold_months")).Round(quantity.MonthPlaces / 2)
		if t.Months.IsPositive() && !a.cleared(l, t.Months) && t.Spare.Abs().LessThanOrEqual(nearTerm) {
			a.Terms = append(a.Terms, t)
		}
	}
}

// cleared reports whether level payments have paid a loan off when its term ends.
func (a *Answer) cleared(l *model.Member, term decimal.Decimal) bool {
	last := int(a.Line("sale_month").IntPart()) - 1 // the sale pays off what is left
	return last >= 0 && a.Values.In(a.Model.Find(l, "cleared"), min(last, int(term.Floor().IntPart()))).IsPositive()
}
