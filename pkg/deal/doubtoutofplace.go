package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// doubtOutOfPlace doubts charges that have no place among charges, before what they come to is doubted.
func (r *reader) doubtOutOfPlace() {
	r.doubtInterestTwice()
	r.doubtDepositTwice()
	r.doubtPointsTwice()
	r.doubtPremiumTwice()
	r.doubtIncomeTax()
}

// outOfPlace reports whether a charge is told of so, after which its sum tells no more.
func (r *reader) outOfPlace(m *model.Member) bool {
	return slices.ContainsFunc(r.diags, func(d diag.Diag) bool {
		return d.Pos == m.Pos && slices.Contains([]string{"counted-already", "income-tax-as-cost"}, d.Code)
	})
}
