// Package measure measures how near the values of package comps come to what
// houses sold for, on a list of real sales: each subject is valued as of the day of
// its sale, from sales before that day alone.
//
// The sales are parted into two halves by a hash of the row. One serves to tune, the
// other to measure; what is drawn of a half depends on a seed alone, so the figures
// are the same on every run.
package measure

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// Half is a half of the sales.
type Half int

// The halves.
const (
	Tuning Half = iota
	Measuring
)

// Since is the first day on which subjects are drawn: there are three years of sales
// before it.
var Since = quantity.Date{Year: 1996, Month: 1, Day: 1}

// Of returns the half of a sale, by FNV-1a over what the row says.
func Of(s comps.Sold) Half {
	h := fnv.New64a()
	fmt.Fprintf(h, "%v|%v|%v|%v|%v|%v", s.Date, s.Price, s.Place.X, s.Place.Y, s.Area.Value, s.Lot.Value)
	return Half(h.Sum64() >> 63)
}

// Eligible returns the sales of a half that can be subjects, by their index, earliest
// first.
func Eligible(l *comps.List, half Half, since quantity.Date) []int {
	var out []int
	for i := range l.Len() {
		if s := l.Sale(i); s.Flags == 0 && s.Date.Compare(since) >= 0 && Of(s) == half {
			out = append(out, i)
		}
	}
	return out
}

// Draw returns n of the subjects, by a seed.
func Draw(of []int, n int, seed uint64) []int {
	out := slices.Clone(of)
	rand.New(rand.NewPCG(seed, 0)).Shuffle(len(out), func(i, j int) { out[i], out[j] = out[j], out[i] })
	return out[:min(n, len(out))]
}

// Outcome is one subject, what it sold for and what it was valued at.
type Outcome struct {
	Price, Likely, Low, High float64
	LeftOut                  float64 // the median leave-one-out error that was stated
	Refused                  bool
}

// Value values each of the subjects as of its day.
func Value(l *comps.List, subjects []int) map[int]Outcome {
	order := slices.Compact(slices.Sorted(slices.Values(subjects)))
	out := make(map[int]Outcome, len(order))
	var market *comps.Market
	for _, i := range order { // by day, so that each day's market is learnt once
		s := l.Sale(i)
		if market == nil || market.Day != s.Date {
			market = l.Before(s.Date)
		}
		out[i] = valued(s, market, 0)
	}
	return out
}

// valued values a subject by a number of the sales of a market; 0 is the usual number.
func valued(s comps.Sold, market *comps.Market, count int) Outcome {
	o := Outcome{Price: s.Price.InexactFloat64()}
	v, err := market.Choose(comps.Subject{House: s.House}, comps.Wish{Count: count}).Value()
	if err != nil {
		o.Refused = true
		return o
	}
	o.Likely, o.Low, o.High, o.LeftOut = v.Likely.InexactFloat64(), v.Low.InexactFloat64(), v.High.InexactFloat64(), v.Error
	return o
}
