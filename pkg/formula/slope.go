package formula

import "math"

// The slopes of operators: by how much the value changes for each unit that one of the
// operator's values changes. Rounding to the cent has the slope of what it rounds; what
// gives whole numbers, and what compares, has none. At a kink it is that of the value
// which the rule takes.

func slopeAdd(a, by []float64) { by[0], by[1] = 1, 1 }
func slopeSub(a, by []float64) { by[0], by[1] = 1, -1 }
func slopeMul(a, by []float64) { by[0], by[1] = a[1], a[0] }
func slopeDiv(a, by []float64) { by[0], by[1] = 1/a[1], -a[0]/a[1]/a[1] }

func slopeNegative(a, by []float64) { by[0] = -1 }
func slopeCents(a, by []float64)    { by[0] = 1 }
func slopeNone(a, by []float64)     { clear(by) }

func slopeMin(a, by []float64) { slopeOf(a, by, floatMin(a)) }
func slopeMax(a, by []float64) { slopeOf(a, by, floatMax(a)) }

// slopeOf is that of the first of some values that is the one taken.
func slopeOf(a, by []float64, taken float64) {
	clear(by)
	for i, x := range a {
		if x == taken {
			by[i] = 1
			return
		}
	}
}

func slopeIf(a, by []float64) {
	clear(by)
	if a[0] == 0 {
		by[2] = 1
	} else {
		by[1] = 1
	}
}

func slopePower(a, by []float64) {
	clear(by)
	if a[1] != 0 {
		by[0] = a[1] * math.Pow(a[0], a[1]-1)
	}
	if a[0] > 0 {
		by[1] = math.Pow(a[0], a[1]) * math.Log(a[0])
	}
}

func slopeRoot(a, by []float64) { by[0] = 0.5 / math.Sqrt(a[0]) }

// slopeLevelPayment is that of P·i ÷ d with d = 1 - (1+i)^-n.
func slopeLevelPayment(a, by []float64) {
	p, i, n := a[0], a[1], a[2]
	if i == 0 {
		by[0], by[1], by[2] = 1/n, p*(n+1)/(2*n), -p/n/n
		return
	}
	d := -math.Expm1(-n * math.Log1p(i))
	by[0] = i / d
	by[1] = p * (d - i*n*(1-d)/(1+i)) / d / d
	by[2] = -p * i * (1 - d) * math.Log1p(i) / d / d
}
