package measure

import (
	"fmt"
	"io"
	"slices"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// Few values each of the subjects by the n sales most like it alone, as one does who
// has no list and writes a few close sales out, for each n of some. A subject is
// refused where there are none, and counts once however often it is drawn.
func Few(l *comps.List, subjects []int, counts []int) map[int][]Outcome {
	order := slices.Compact(slices.Sorted(slices.Values(subjects)))
	out := make(map[int][]Outcome, len(counts))
	var market *comps.Market
	for _, i := range order {
		s := l.Sale(i)
		if market == nil || market.Day != s.Date {
			market = l.Before(s.Date)
		}
		near := market.Choose(comps.Subject{House: s.House}, comps.Wish{Count: slices.Max(counts)}).Comps
		for _, n := range counts {
			sales := make([]comps.Sold, min(n, len(near)))
			for k := range sales {
				sales[k] = near[k].Sold
			}
			out[n] = append(out[n], outcome(s, sales))
		}
	}
	return out
}

// outcome is a subject valued by some sales alone.
func outcome(s comps.Sold, sales []comps.Sold) Outcome {
	l, _ := comps.NewList(sales, quantity.Date{})
	return valued(s, l.Before(s.Date), len(sales))
}

// FewCounts are the numbers of close sales that ReportFew tells of.
var FewCounts = []int{1, 2, 3, 4, 6, 8, 12, 20, 40, 60, 80, 120, 180, 250, 400, 800}

// ReportFew prints for some numbers of close sales what values by them alone are like,
// over the subjects of several draws together.
func ReportFew(w io.Writer, l *comps.List, half Half, since quantity.Date, subjects, draws int) error {
	if err := heads(w, "sales"); err != nil {
		return err
	}
	eligible := Eligible(l, half, since)
	var all []int
	for seed := range draws {
		all = append(all, Draw(eligible, subjects, uint64(seed+1))...)
	}
	of := Few(l, all, FewCounts)
	for _, n := range FewCounts {
		if err := line(w, fmt.Sprint(n), Sum(of[n])); err != nil {
			return err
		}
	}
	return nil
}
