package odds

import "math"

// ended is a spread between two ends, found from what low and high mean.
func ended(means Meaning, low, likely, high float64, of func(a, b float64) quantiled) (Spread, error) {
	if err := ordered(means, low, likely, high); err != nil {
		return nil, err
	}
	return tabled(of(ends(means, low, likely, high, of))), nil
}

// ends finds the ends between which the wanted shares lie below low and above high: it
// moves each end by as much as its share is off, until neither is. With shares of up to
// 0.4 that takes some 300 rounds at most.
func ends(means Meaning, low, likely, high float64, of func(a, b float64) quantiled) (a, b float64) {
	a, b = low, high
	for range 1000 {
		d := of(a, b)
		below, above := low-d.Quantile(float64(means)), high-d.Quantile(1-float64(means))
		if math.Abs(below)+math.Abs(above) <= 1e-11*(high-low) {
			break
		}
		a, b = math.Min(a+below, likely), math.Max(b+above, likely)
	}
	return a, b
}
