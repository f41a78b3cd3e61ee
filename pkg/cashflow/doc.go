// Package cashflow finds rates of return on plain flows of money, the level
// payment of a loan, and the effective annual rate of a periodic one. It knows
// nothing of deals, loans or months: a flow is an amount and a period.
//
// A rate of return is a root of a polynomial, and a polynomial may have none,
// one or several. All of them are found: [IRR] and [APR] turn the flows into a
// polynomial with whole coefficients, separate its positive roots by Descartes'
// rule of signs with bisection (Vincent, Collins, Akritas), and narrow each one
// between two points where the polynomial provably changes sign. Everything is
// integer arithmetic, so equal flows give equal digits on every machine.
//
// The policy: without a change of direction in the money there is no rate
// ([ErrNoSignChange]); with one, there may still be none ([ErrNoRoot]); of
// several the one nearest zero is the rate, and [Result] carries all of them so
// that a caller can warn. A rate is above -100% a period and finite: the limits
// themselves are never answers.
//
// It refuses to guess: there is no starting value, no iteration limit, and no
// rate for flows on calendar dates.
//
// A purchase, two months of costs and a sale, month by month:
//
//	r, err := cashflow.IRR(flows) // -60000, -1200, -1200, 68000
//	r.Rate                        // 0.0296… a month
//	cashflow.Effective(r.Rate, 12)
package cashflow
