package comps

import (
	"slices"

	"ledgerboard/pkg/quantity"
)

// OldYears is how many years before the day a sale is old (common practice, no source).
const OldYears = 5

// Old reports whether a sale is older than that on a day.
func (s *Sold) Old(day quantity.Date) bool { return quantity.DaysBetween(s.Date, day) > OldYears*365+1 }

// withoutOld leaves out the old sales where nearer ones suffice, which the usual three do:
// the market between tells nothing of today's amounts. Those of some lines stay. It
// returns how many were left out.
func (m *Market) withoutOld(stay []int) int {
	near := 0
	for _, s := range m.sales {
		if !s.Old(m.Day) {
			near++
		}
	}
	before := len(m.sales)
	if near >= usualSales && near < before {
		m.sales = slices.DeleteFunc(m.sales, func(s *Sold) bool { return s.Old(m.Day) && !slices.Contains(stay, s.Line) })
	}
	return before - len(m.sales)
}

// LeftOld returns how many sales are left out since they are old and nearer ones suffice.
func (m *Market) LeftOld() int { return m.old }
