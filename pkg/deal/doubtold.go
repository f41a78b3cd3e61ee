package deal

import (
	"fmt"
	"math"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// staleDays is how long before the day of the value the newest sale of a list may be for
// the list to tell today's market (two years; common practice, no source).
const staleDays = 2*365 + 1

// doubtOldList warns of a list that ends long before the day of the value: of the file, if
// there is one, else of all sales.
func (r *reader) doubtOldList(l *salesList, list *comps.List, day quantity.Date) {
	var newest comps.Sold
	for _, s := range list.Sales() {
		if (!l.file || s.Line < fromTable) && s.Date.Compare(day) < 0 && s.Date.Compare(newest.Date) > 0 {
			newest = s
		}
	}
	if newest.Date.IsZero() || quantity.DaysBetween(newest.Date, day) <= staleDays {
		return
	}
	r.say("sales-old", l.at[newest.Line], "the newest sale of the list is of %s, %s before the day of the value, %s", newest.Date, yearsBefore(newest.Date, day), day)("prices have moved since in a way that no old sale tells; look for sales of the last 12 months")
}

// OnlyOld is the day of the newest sale that the value is drawn from, and how long before the
// day of the value that is, in words; nothing where it is near enough to tell the market.
func (c *Comparables) OnlyOld() (newest quantity.Date, ago string) {
	for _, row := range c.Value.Rows {
		if row.Date.Compare(newest) > 0 {
			newest = row.Date
		}
	}
	if quantity.DaysBetween(newest, c.Day) <= staleDays {
		return quantity.Date{}, ""
	}
	return newest, yearsBefore(newest, c.Day)
}

// doubtOldSales warns of old sales that count, where others are newer.
func (r *reader) doubtOldSales(c *Comparables) {
	for _, row := range c.Value.Rows {
		if row.Weight >= counts && row.Old(c.Day) {
			r.say("sales-old", c.Place(&row.Sold), "%s was sold %s before the day of the value, and makes up %.0f%% of it", row.Name(), yearsBefore(row.Date, c.Day), 100*row.Weight)("more than %d years is old for a sale to go by; look for newer ones, or strike it", comps.OldYears)
		}
	}
}

// yearsBefore is how many years lie between two days, in words.
func yearsBefore(sold, day quantity.Date) string {
	return fmt.Sprintf("%.0f years", math.Round(float64(quantity.DaysBetween(sold, day))/365.25))
}
