package measure

import (
	"math"
	"slices"
)

// Figures are what a number of outcomes say together; all are shares.
type Figures struct {
	Subjects int
	Refused  int
	Median   float64 // median size of the error
	Off20    float64 // share of errors of more than 20%
	Bias     float64 // median error with its sign
	Covered  float64 // of the prices inside the range
	Below    float64 // of the prices under its low end
	Above    float64 // of the prices over its high end
	Width    float64 // median of high less low, of the value
	LeftOut  float64 // median of the stated leave-one-out errors
}

// Sum sums up outcomes.
func Sum(of []Outcome) Figures {
	f := Figures{Subjects: len(of)}
	var size, signed, width, left []float64
	for _, o := range of {
		if o.Refused {
			f.Refused++
			continue
		}
		e := o.Likely/o.Price - 1
		size, signed = append(size, math.Abs(e)), append(signed, e)
		width, left = append(width, (o.High-o.Low)/o.Likely), append(left, o.LeftOut)
		switch {
		case o.Price < o.Low:
			f.Below++
		case o.Price > o.High:
			f.Above++
		default:
			f.Covered++
		}
		if math.Abs(e) > 0.2 {
			f.Off20++
		}
	}
	if n := float64(len(size)); n > 0 {
		f.Covered, f.Below, f.Above, f.Off20 = f.Covered/n, f.Below/n, f.Above/n, f.Off20/n
		f.Median, f.Bias, f.Width, f.LeftOut = median(size), median(signed), median(width), median(left)
	}
	return f
}

// Mean returns the mean of the figures of several draws.
func Mean(of []Figures) Figures {
	var m Figures
	n := float64(len(of))
	for _, f := range of {
		m.Subjects += f.Subjects
		m.Refused += f.Refused
		m.Median += f.Median / n
		m.Off20 += f.Off20 / n
		m.Bias += f.Bias / n
		m.Covered += f.Covered / n
		m.Below += f.Below / n
		m.Above += f.Above / n
		m.Width += f.Width / n
		m.LeftOut += f.LeftOut / n
	}
	return m
}

func median(v []float64) float64 {
	slices.Sort(v)
	return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
}
