package bound

// An arena is where the slopes of planes are kept as long as one box is worked out, so
// that they are not collected one by one.
type arena struct{ taken []float64 }

// take is room for n slopes, all 0.
func (a *arena) take(n int) []float64 {
	at := len(a.taken)
	if at+n > cap(a.taken) {
		a.taken = make([]float64, at, 2*(at+n)) // what was taken stays where it is
	}
	a.taken = a.taken[:at+n]
	out := a.taken[at : at+n : at+n]
	clear(out)
	return out
}

// release gives back what was taken since so much was.
func (a *arena) release(taken int) { a.taken = a.taken[:taken] }
