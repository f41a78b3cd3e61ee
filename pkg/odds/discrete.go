package odds

import (
	"fmt"
	"slices"
	"sort"
)

// A Case is one of a few values that a figure may have, and how much it weighs.
type Case struct{ Value, Weight float64 }

// Discrete is a spread of a few values, likely in proportion to their weights.
func Discrete(cases ...Case) (Spread, error) {
	d := &discrete{}
	sum := 0.0
	for _, c := range cases {
		if !(c.Weight >= 0) {
			return nil, fmt.Errorf("the weight of %v is %v; take 0 or more", c.Value, c.Weight)
		}
		if c.Weight > 0 {
			d.cases = append(d.cases, c)
			sum += c.Weight
		}
	}
	if !(sum > 0) || sum > 1e300 {
		return nil, fmt.Errorf("the weights add up to %v; some value must weigh more than 0", sum)
	}
	slices.SortStableFunc(d.cases, func(a, b Case) int {
		if a.Value < b.Value {
			return -1
		}
		return 1
	})
	below := 0.0
	for _, c := range d.cases[:len(d.cases)-1] {
		below += c.Weight / sum
		d.edges = append(d.edges, standard.Quantile(min(below, 1)))
	}
	for _, c := range d.cases {
		d.mean += c.Value * c.Weight / sum
	}
	return d, nil
}

type discrete struct {
	cases []Case    // by value
	edges []float64 // the scores from which on the next case is drawn
	mean  float64
}

func (d *discrete) At(score float64) float64 {
	return d.cases[sort.Search(len(d.edges), func(i int) bool { return score < d.edges[i] })].Value
}

func (d *discrete) Mean() float64 { return d.mean }

func (d *discrete) Ends() (least, most float64) {
	return d.cases[0].Value, d.cases[len(d.cases)-1].Value
}
