package cashflow

import (
	"errors"
	"fmt"
	"math/big"
	"slices"

	"github.com/shopspring/decimal"
)

// ErrNoRate is what every reason for having no rate of return is: errors.Is
// tells it from flows that could not be read as such. The text of the error at
// hand says why, in words meant for the reader.
var ErrNoRate = errors.New("no rate of return")

// The reasons. Each is an [ErrNoRate].
var (
	// ErrNoFlows: every flow is zero, or they cancel, so any rate would fit.
	ErrNoFlows = fmt.Errorf("%w: nothing is left of the flows, so every rate would fit", ErrNoRate)
	// ErrNoSignChange: all flows go the same way, so none pays for another.
	ErrNoSignChange = fmt.Errorf("%w: the money only goes one way", ErrNoRate)
	// ErrNoRoot: flows go both ways, yet at every rate the sum keeps its sign.
	ErrNoRoot = fmt.Errorf("%w: at every rate one side of the flows outweighs the other", ErrNoRate)
)

// Result is the rate of return of some flows.
type Result struct {
	// Rate is the root nearest zero; of two equally near, the lower one. It
	// counts per period for [IRR] and per year for [APR], 0.01 being 1%. It is
	// good to 34 significant digits, both itself and as 1 + Rate per period.
	Rate decimal.Decimal
	// Roots are all rates at which the flows balance, lowest first, each once.
	Roots []decimal.Decimal
}

// Several reports whether more than one rate fits, which deserves a warning.
func (r Result) Several() bool { return len(r.Roots) > 1 }

// IRR returns the rate i per period, above -1, at which the sum of
// flows[t] / (1+i)^t is zero. Leading and trailing zeros change nothing, nor
// does the sign or the scale of the whole.
//
// It fails with an [ErrNoRate] that says why there is no rate, or with
// [ErrTooLarge].
func IRR(flows []decimal.Decimal) (Result, error) {
	p, err := integers(flows)
	if err != nil {
		return Result{}, err
	}
	if len(p) > 0 && p.signChanges() == 0 {
		return Result{}, ErrNoSignChange
	}
	return solve(p)
}

// solve returns the rates i at which p(1/(1+i)) is zero, for a trimmed p.
func solve(p poly) (Result, error) {
	if len(p) == 0 {
		return Result{}, ErrNoFlows
	}
	var rates []decimal.Decimal
	one := dyadic{num: big.NewInt(1)}
	if p.zeroAt(one) {
		rates = append(rates, decimal.Zero)
		p = p.without(one)
	}
	for _, x := range p.unitRoots() { // x = 1/(1+i), so i is above zero
		rates = append(rates, x.discountRate())
	}
	for _, y := range p.reversed().unitRoots() { // y = 1+i, so i is below zero
		rates = append(rates, y.growthRate())
	}
	if len(rates) == 0 {
		return Result{}, ErrNoRoot
	}
	slices.SortFunc(rates, decimal.Decimal.Cmp)
	return Result{Rate: nearestZero(rates), Roots: rates}, nil
}

// nearestZero picks from ascending rates; a tie goes to the lower, the more
// cautious one.
func nearestZero(rates []decimal.Decimal) decimal.Decimal {
	best := rates[0]
	for _, r := range rates[1:] {
		if r.Abs().LessThan(best.Abs()) {
			best = r
		}
	}
	return best
}
