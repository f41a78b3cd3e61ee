package odds

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// A Spread is a distribution. Its values are asked for by normal score: that of 0 is the
// median, of -1.2816 what one in ten falls short of. A spread may be used by several
// workers at once.
type Spread interface {
	// At is the value at a normal score.
	At(score float64) float64
	// Ends are the least and greatest value that is ever drawn.
	Ends() (least, most float64)
	// Mean is the average of all values.
	Mean() float64
}

// furthest is the normal score beyond which nothing is drawn: one draw in a thousand
// billion would lie there.
const furthest = 7

// Meaning is what is meant by a low and a high figure: the share of cases below the low
// one, and above the high one. 0 means the very ends.
type Meaning float64

// The usual meanings.
const (
	AtEnds   Meaning = 0   // nothing is lower, nothing higher
	OneInTen Meaning = 0.1 // one case in ten is lower, one higher
)

// quantiled is a distribution of the library.
type quantiled interface {
	Quantile(p float64) float64
	Mean() float64
}

var standard = distuv.Normal{Mu: 0, Sigma: 1}

// Uniform is a spread in which all between low and high is as likely.
func Uniform(means Meaning, low, high float64) (Spread, error) {
	if err := ordered(means, low, high); err != nil {
		return nil, err
	}
	beyond := (high - low) / (1 - 2*float64(means)) * float64(means)
	return tabled(distuv.Uniform{Min: low - beyond, Max: high + beyond}), nil
}

// Triangular is a spread that rises evenly to what is likely and falls evenly from it.
func Triangular(means Meaning, low, likely, high float64) (Spread, error) {
	return ended(means, low, likely, high, func(a, b float64) quantiled { return distuv.NewTriangle(a, b, likely, nil) })
}

// PERT is a smooth spread between two ends in which what is likely weighs four times as
// much as an end: a beta distribution whose mean is (least + 4 likely + most) ÷ 6.
func PERT(means Meaning, low, likely, high float64) (Spread, error) {
	return ended(means, low, likely, high, func(a, b float64) quantiled { return newPERT(a, likely, b) })
}

// Normal is the bell curve through a low and a high figure, which cannot be the ends, for
// it has none. It is cut off 7 standard deviations from the middle.
func Normal(means Meaning, low, high float64) (Spread, error) {
	if err := unended(means, low, high); err != nil {
		return nil, err
	}
	score := standard.Quantile(1 - float64(means))
	return normal{(low + high) / 2, (high - low) / 2 / score}, nil
}

// LogNormal is the spread of a figure above 0 whose logarithm is normal, through a low and
// a high figure.
func LogNormal(means Meaning, low, high float64) (Spread, error) {
	if err := unended(means, low, high); err != nil {
		return nil, err
	}
	if low <= 0 {
		return nil, fmt.Errorf("the low figure is %v, and a lognormal one is above 0", low)
	}
	score := standard.Quantile(1 - float64(means))
	return logNormal{normal{(math.Log(low) + math.Log(high)) / 2, math.Log(high/low) / 2 / score}}, nil
}

// Fixed is a spread of one value.
func Fixed(x float64) Spread { return normal{x, 0} }

type normal struct{ mean, deviation float64 }

func (n normal) At(score float64) float64 { return n.mean + n.deviation*score }
func (n normal) Mean() float64            { return n.mean }
func (n normal) Ends() (float64, float64) { return n.At(-furthest), n.At(furthest) }

type logNormal struct{ log normal }

func (n logNormal) At(score float64) float64 { return math.Exp(n.log.At(score)) }
func (n logNormal) Mean() float64            { return math.Exp(n.log.mean + n.log.deviation*n.log.deviation/2) }
func (n logNormal) Ends() (float64, float64) { return n.At(-furthest), n.At(furthest) }

// pert is a beta distribution between two ends.
type pert struct {
	beta        distuv.Beta
	least, most float64
}

func newPERT(a, likely, b float64) pert {
	return pert{distuv.Beta{Alpha: 1 + 4*(likely-a)/(b-a), Beta: 1 + 4*(b-likely)/(b-a)}, a, b}
}

func (p pert) Quantile(q float64) float64 { return p.least + (p.most-p.least)*p.beta.Quantile(q) }
func (p pert) Mean() float64              { return p.least + (p.most-p.least)*p.beta.Mean() }

func ordered(means Meaning, figures ...float64) error {
	if !(means >= 0 && means <= 0.4) {
		return fmt.Errorf("%v of the cases cannot lie below the low figure; take 0 to 0.4", float64(means))
	}
	for i, x := range figures {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return fmt.Errorf("%v is no figure", x)
		}
		if i > 0 && figures[i-1] > x {
			return fmt.Errorf("the figures are %v; they must not fall from low to high", figures)
		}
	}
	if low, high := figures[0], figures[len(figures)-1]; low == high {
		return fmt.Errorf("low and high are both %v; there is no spread", low)
	}
	return nil
}

func unended(means Meaning, low, high float64) error {
	if means == AtEnds {
		return fmt.Errorf("a bell curve has no ends; say which share of the cases lies below %v", low)
	}
	return ordered(means, low, high)
}
