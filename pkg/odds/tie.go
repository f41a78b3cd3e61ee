package odds

import (
	"fmt"
	"math"
)

// A Rank is a rank correlation (Spearman's) between two spreads, by their places: 1 where
// the one is always as high among its cases as the other, 0 where they have nothing to do
// with each other.
type Rank struct {
	A, B int
	Rho  float64
}

// Ties ties normal scores together so that what is drawn from spreads has the wanted rank
// correlations.
type Ties struct {
	n     int
	lower []float64 // the lower triangle of the root of the scores' correlations, by row
	free  bool      // nothing is tied
}

// A TieError says that rank correlations contradict each other.
type TieError struct {
	Most float64 // the share of each of them, at most, at which they would not
}

func (e *TieError) Error() string {
	return fmt.Sprintf("these correlations contradict each other: no figures have them all (the matrix is not positive definite); at %.2f times as much each they fit together", e.Most)
}

// Tie ties n spreads. Scores get the correlation 2 sin(π ρ ÷ 6), at which normal figures
// have the rank correlation ρ (K. Pearson, 1907; from memory). It is a TieError if the
// correlations contradict each other.
func Tie(n int, ranks []Rank) (*Ties, error) {
	said := map[[2]int]bool{}
	for _, r := range ranks {
		pair := [2]int{min(r.A, r.B), max(r.A, r.B)}
		switch {
		case pair[0] < 0 || pair[1] >= n || r.A == r.B:
			return nil, fmt.Errorf("a correlation between %d and %d; there are %d figures", r.A, r.B, n)
		case said[pair]:
			return nil, fmt.Errorf("the correlation between %d and %d is given twice", r.A, r.B)
		case !(r.Rho > -1 && r.Rho < 1):
			return nil, fmt.Errorf("a rank correlation of %v; take one between -1 and 1", r.Rho)
		}
		said[pair] = true
	}
	if t, ok := root(n, ranks, 1); ok {
		return t, nil
	}
	low, high := 0.0, 1.0
	for range 40 {
		if mid := (low + high) / 2; fits(n, ranks, mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return nil, &TieError{math.Floor(low*100) / 100}
}

func fits(n int, ranks []Rank, share float64) bool {
	_, ok := root(n, ranks, share)
	return ok
}

// root is the Cholesky root of the scores' correlations at a share of the wanted ones;
// there is none if the matrix is not positive definite.
func root(n int, ranks []Rank, share float64) (*Ties, bool) {
	t := &Ties{n: n, lower: make([]float64, n*n), free: len(ranks) == 0}
	for i := range n {
		t.lower[i*n+i] = 1
	}
	for _, r := range ranks {
		t.lower[max(r.A, r.B)*n+min(r.A, r.B)] = 2 * math.Sin(math.Pi*share*r.Rho/6)
	}
	for i := range n {
		row := t.lower[i*n:]
		for j := range i + 1 {
			other, left := t.lower[j*n:], row[j]
			for k := range j {
				left -= row[k] * other[k]
			}
			switch {
			case j < i:
				row[j] = left / other[j]
			case left < 1e-9:
				return nil, false
			default:
				row[i] = math.Sqrt(left)
			}
		}
	}
	return t, true
}

// apply ties free scores, by spread and trial, in place.
func (t *Ties) apply(scores [][]float64) {
	if t.free {
		return
	}
	for i := t.n - 1; i >= 0; i-- { // the last first: each needs the free ones before it
		to, row := scores[i], t.lower[i*t.n:]
		for k := range to {
			to[k] *= row[i]
		}
		for j := range i {
			by := row[j]
			if by == 0 {
				continue
			}
			for k, x := range scores[j] {
				to[k] += by * x
			}
		}
	}
}
