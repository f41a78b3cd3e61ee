package chance

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/odds"
)

// A Tie is the rank correlation of two of the ranges, by their places.
type Tie struct {
	A, B    int
	Rho     decimal.Decimal
	Assumed bool
}

// usualTie is how works that cost more and works that take longer go together; common
// practice, no source.
var usualTie = decimal.New(5, -1)

// Ties are the ties of a deal between ranges of it. One whose inputs do not both vary has no
// effect and is left out.
func Ties(d *deal.Deal, ranges []Range) []Tie {
	place := func(in deal.Input) int {
		return slices.IndexFunc(ranges, func(r Range) bool { return r.Is(in) })
	}
	var out []Tie
	for _, t := range d.Ties {
		if a, b := place(t.A), place(t.B); a >= 0 && b >= 0 {
			out = append(out, Tie{A: a, B: b, Rho: t.Rho})
		}
	}
	if d.TiesSaid {
		return out
	}
	a := slices.IndexFunc(ranges, func(r Range) bool { return r.Line == "overrun" && r.Member == d.Root })
	b := slices.IndexFunc(ranges, func(r Range) bool { return r.Line == "standstill" && r.Member == d.Root })
	if a >= 0 && b >= 0 {
		out = append(out, Tie{A: a, B: b, Rho: usualTie, Assumed: true})
	}
	return out
}

// draws are what trials are drawn from.
func draws(ranges []Range, ties []Tie) ([]odds.Spread, *odds.Ties, error) {
	spreads := make([]odds.Spread, len(ranges))
	var each []func() error
	for i, r := range ranges {
		each = append(each, func() (err error) {
			spreads[i], err = r.Draws()
			return err
		})
	}
	if err := together.Run(each...); err != nil {
		return nil, nil, err
	}
	var ranks []odds.Rank
	for _, t := range ties {
		ranks = append(ranks, odds.Rank{A: t.A, B: t.B, Rho: t.Rho.InexactFloat64()})
	}
	tied, err := odds.Tie(len(spreads), ranks)
	return spreads, tied, err
}
