package chance

import (
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/odds"
)

// within is a spread that does not go beyond some limits.
type within struct {
	odds.Spread
	least, most float64
}

func kept(s odds.Spread, least, most *decimal.Decimal) odds.Spread {
	w := within{s, math.Inf(-1), math.Inf(1)}
	if least != nil {
		w.least = least.InexactFloat64()
	}
	if most != nil {
		w.most = most.InexactFloat64()
	}
	if a, b := s.Ends(); a >= w.least && b <= w.most {
		return s
	}
	return w
}

func (w within) keep(x float64) float64      { return max(w.least, min(w.most, x)) }
func (w within) At(score float64) float64    { return w.keep(w.Spread.At(score)) }
func (w within) Ends() (least, most float64) { a, b := w.Spread.Ends(); return w.keep(a), w.keep(b) }
