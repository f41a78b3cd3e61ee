// Package comps estimates what a house will sell for from houses that were sold:
// it reads a county's list of sales, chooses the comparable ones for a subject and
// a day, adjusts their prices to the subject, and reconciles them into a value with
// a range.
//
//	list, found, err := comps.Read(file, "county.csv", comps.Options{})
//	market := list.Before(day)
//	choice := market.Choose(subject)
//	value, err := choice.Value()
//	fmt.Println(value.Likely, value.Low, value.High)
//
// Only sales before the day are used, whatever the list holds. Nothing is dropped
// silently: what cannot be read is a diagnostic with its line and column, and a
// sale that is doubtful (a duplicate, a price far from its like, words that speak
// against an open sale) is flagged and, where it is set aside, listed as such.
//
// Prices and adjustments that are shown are decimals of whole dollars and re-add to
// the dollar; rates, weights and spreads are estimates and float64. A value is an
// estimate from past sales. It is not an appraisal, and says so.
//
// The package knows no deal file and no model, has no clock and no chance in it:
// equal lists give equal values, in whatever order the sales stand.
package comps
