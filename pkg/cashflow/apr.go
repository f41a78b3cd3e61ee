package cashflow

import (
	"errors"
	"slices"

	"github.com/shopspring/decimal"
)

// Flow is an amount at a time: Whole unit periods after the start, and Part of
// another one, from 0 to below 1.
type Flow struct {
	Amount decimal.Decimal
	Whole  int
	Part   decimal.Decimal
}

// Mistakes in the arguments of [APR].
var (
	// ErrTime: a flow lies before the start, or its part is not a fraction.
	ErrTime = errors.New("a flow needs whole periods from 0 up and a part from 0 to below 1")
	// ErrPeriods: the number of unit periods in a year is not above zero.
	ErrPeriods = errors.New("the unit periods in a year must be above 0")
)

// APR returns the annual percentage rate of a loan, as a share (0.1025 is
// 10.25%), by the actuarial method of 12 CFR 1026 App. J (b)(8): the periodic
// rate i at which advances and payments, each divided by (1 + f i)(1 + i)^t with
// t = Whole and f = Part, have equal sums, times periodsPerYear. It is a nominal
// rate, not an effective one. Advances are what the borrower gets, less prepaid
// finance charges; both kinds of amounts are positive. The policy for no rate
// and for several is that of [IRR].
//
// It fails with an [ErrNoRate], [ErrTime], [ErrPeriods] or [ErrTooLarge].
func APR(advances, payments []Flow, periodsPerYear decimal.Decimal) (Result, error) {
	if !periodsPerYear.IsPositive() {
		return Result{}, ErrPeriods
	}
	net := make([]Flow, 0, len(advances)+len(payments))
	net = append(net, payments...)
	for _, a := range advances {
		a.Amount = a.Amount.Neg()
		net = append(net, a)
	}
	if err := check(net); err != nil {
		return Result{}, err
	}
	p, err := polynomial(net)
	if err != nil {
		return Result{}, err
	}
	if len(p) > 0 && oneWay(net) {
		return Result{}, ErrNoSignChange
	}
	r, err := solve(p)
	if err != nil {
		return Result{}, err
	}
	r.Rate = r.Rate.Mul(periodsPerYear)
	for k := range r.Roots {
		r.Roots[k] = r.Roots[k].Mul(periodsPerYear)
	}
	return r, nil
}

func check(flows []Flow) error {
	amounts := make([]decimal.Decimal, len(flows))
	one := decimal.New(1, 0)
	for k, f := range flows {
		amounts[k] = f.Amount
		switch {
		case f.Part.Exponent() < -maxDigits || f.Part.Exponent() > 0 && !f.Part.IsZero():
			return ErrTime // told before a comparison writes all the digits out
		case f.Whole < 0 || f.Part.IsNegative() || f.Part.GreaterThanOrEqual(one):
			return ErrTime
		case f.Whole >= maxPeriods:
			return ErrTooLarge
		}
	}
	if low, high := span(amounts); high-low > maxDigits {
		return ErrTooLarge
	}
	return nil
}

func oneWay(flows []Flow) bool {
	var in, out bool
	for _, f := range flows {
		in = in || f.Amount.IsPositive()
		out = out || f.Amount.IsNegative()
	}
	return !in || !out
}

// polynomial clears the fractions from the sum of the discounted flows. With
// x = 1/(1+i), the factor 1/(1 + f i) is x / (f + (1-f)x); multiplying the sum
// by f + (1-f)x for every distinct f makes it a polynomial. None of these
// factors is zero at a positive x, so the rates stay the same.
func polynomial(flows []Flow) (poly, error) {
	parts, groups := byPart(flows)
	if len(parts) > maxParts {
		return nil, ErrTooLarge
	}
	one := decimal.New(1, 0)
	var sum []decimal.Decimal
	for k, g := range groups {
		terms := g
		for j, f := range parts {
			if j == k {
				terms = timesLinear(terms, decimal.Zero, one)
			} else {
				terms = timesLinear(terms, f, one.Sub(f))
			}
		}
		sum = plus(sum, terms)
	}
	return integers(sum)
}

// byPart returns the distinct parts in order of appearance, and for each the
// amounts of its flows by whole period.
func byPart(flows []Flow) (parts []decimal.Decimal, groups [][]decimal.Decimal) {
	for _, f := range flows {
		k := slices.IndexFunc(parts, f.Part.Equal)
		if k < 0 {
			k = len(parts)
			parts, groups = append(parts, f.Part), append(groups, nil)
		}
		for len(groups[k]) <= f.Whole {
			groups[k] = append(groups[k], decimal.Zero)
		}
		groups[k][f.Whole] = groups[k][f.Whole].Add(f.Amount)
	}
	return parts, groups
}

// plus adds coefficients, into a if it is long enough.
func plus(a, b []decimal.Decimal) []decimal.Decimal {
	if len(a) < len(b) {
		a, b = b, a
	}
	for k, v := range b {
		a[k] = a[k].Add(v)
	}
	return a
}

// timesLinear multiplies coefficients by low + high x.
func timesLinear(a []decimal.Decimal, low, high decimal.Decimal) []decimal.Decimal {
	r := make([]decimal.Decimal, len(a)+1)
	for k, v := range a {
		r[k] = r[k].Add(v.Mul(low))
		r[k+1] = r[k+1].Add(v.Mul(high))
	}
	return r
}
