package odds

import "math"

// A table has the values of a spread at many scores, with straight lines between them: so
// near each other that a value is off by under a millionth of the spread.
type table struct {
	values [2*furthest*perScore + 2]float64
	mean   float64
}

const perScore = 512 // values for each unit of the score

func tabled(d quantiled) *table {
	t := &table{mean: d.Mean()}
	for i := range t.values {
		score := math.Min(float64(i)/perScore-furthest, furthest)
		t.values[i] = d.Quantile(standard.CDF(score))
	}
	return t
}

func (t *table) At(score float64) float64 {
	x := (math.Max(-furthest, math.Min(furthest, score)) + furthest) * perScore
	i := int(x)
	low := t.values[i]
	return low + (x-float64(i))*(t.values[i+1]-low)
}

func (t *table) Mean() float64 { return t.mean }

func (t *table) Ends() (least, most float64) { return t.values[0], t.values[len(t.values)-1] }
