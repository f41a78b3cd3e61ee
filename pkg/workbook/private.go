package workbook

import (
	"slices"

	"ledgerboard/pkg/model"
)

// Private are the sections and lines that only the owner sees.
var (
	privateSections = []string{"Targets", "Tax", "Rule of thumb"}
	privateLines    = []string{
		"own_labour_rate", "cost.hired_rate", "profit_after_own_hours", "profit_per_own_hour", "low_value",
	}
)

// hidden reports whether a line is kept from whom the workbook is for. What needs it
// stands as a value.
func (b *book) hidden(l *model.Line) bool {
	return b.how.For == Lender && (slices.Contains(privateSections, l.Section) || slices.Contains(privateLines, l.ID()))
}
