package fast

import "math"

// Steps of arithmetic. Where one value is a number, x is the other.

func add(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = x[i] + y[i]
	}
}

func addNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = x[i] + k
	}
}

func sub(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = x[i] - y[i]
	}
}

func subNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = x[i] - k
	}
}

func subFrom(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = k - x[i]
	}
}

func mul(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = x[i] * y[i]
	}
}

func mulNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = x[i] * k
	}
}

func div(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = x[i] / y[i]
	}
}

func divBy(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = x[i] / k
	}
}

func divNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	for i := range to {
		to[i] = k / x[i]
	}
}

func least(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = min(x[i], y[i])
	}
}

// leastNumber takes no branch; what is no number stays none.
func leastNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	number := math.Float64bits(k)
	for i := range to {
		bits := math.Float64bits(x[i])
		if k < x[i] {
			bits = number
		}
		to[i] = math.Float64frombits(bits)
	}
}

func most(m []float64, n int, s *step) {
	to, x, y := m[s.to:][:n], m[s.x:][:n], m[s.y:][:n]
	for i := range to {
		to[i] = max(x[i], y[i])
	}
}

// mostNumber takes no branch; what is no number stays none.
func mostNumber(m []float64, n int, s *step) {
	to, x, k := m[s.to:][:n], m[s.x:][:n], s.number
	number := math.Float64bits(k)
	for i := range to {
		bits := math.Float64bits(x[i])
		if k > x[i] {
			bits = number
		}
		to[i] = math.Float64frombits(bits)
	}
}
