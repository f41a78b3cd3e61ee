package cashflow

import (
	"errors"

	"github.com/shopspring/decimal"
)

const (
	// resultDigits are the significant digits of a level payment and of an
	// effective rate; the deal needs 34.
	resultDigits = 45
	// workDigits are kept on the way, enough that thousands of rounded
	// steps don't reach the result.
	workDigits = 60
)

// ErrTerms is a loan for which a level payment has no meaning.
var ErrTerms = errors.New("a level payment needs at least 1 period and a rate above -100%")

// LevelPayment returns the amount that, paid at the end of each of so many
// periods, repays principal at the periodic rate (0.01 is 1%): the annuity
// formula principal × rate / (1 - (1+rate)^-periods), and principal / periods at
// rate 0. It is not rounded to cents but to 45 significant digits.
//
// It fails with [ErrTerms].
func LevelPayment(principal, rate decimal.Decimal, periods int) (decimal.Decimal, error) {
	growth := rate.Add(decimal.New(1, 0))
	if periods < 1 || !growth.IsPositive() {
		return decimal.Zero, ErrTerms
	}
	power, sum := geometric(growth, periods)
	return quotient(principal.Mul(power), sum, resultDigits), nil
}

// geometric returns g^n and 1 + g + … + g^(n-1), for positive g. The sum stands
// for ((1+rate)^n - 1) / rate, whose subtraction and division would lose the
// digits of a small rate; here all terms are positive.
func geometric(g decimal.Decimal, n int) (power, sum decimal.Decimal) {
	one := decimal.New(1, 0)
	power, sum = one, decimal.Zero
	for bit := highestBit(n); bit > 0; bit >>= 1 {
		sum = significant(sum.Mul(power.Add(one)), workDigits)
		power = significant(power.Mul(power), workDigits)
		if n&bit != 0 {
			sum = significant(sum.Mul(g).Add(one), workDigits)
			power = significant(power.Mul(g), workDigits)
		}
	}
	return power, sum
}

// Effective returns what a periodic rate comes to when it compounds over a year
// of so many periods: (1 + periodic)^periods - 1, to 45 significant digits. With
// no period it is 0; a periodic rate below -100% counts as -100%.
//
// The nominal annual rate needs no function: it is periodic × periods.
func Effective(periodic decimal.Decimal, periods int) decimal.Decimal {
	if periods < 1 {
		return decimal.Zero
	}
	growth := periodic.Add(decimal.New(1, 0))
	if growth.IsNegative() {
		return decimal.New(-1, 0) // beyond a total loss there is nothing to lose
	}
	// g^n - 1 = (g-1)(1 + g + … + g^(n-1)) keeps the digits of a small rate.
	_, sum := geometric(growth, periods)
	return significant(periodic.Mul(sum), resultDigits)
}

func highestBit(n int) int {
	bit := 1
	for bit <= n/2 {
		bit <<= 1
	}
	return bit
}
