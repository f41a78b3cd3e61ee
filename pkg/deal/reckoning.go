package deal

// A reckoning is where work is done as far as that is being asked, so that each is worked out once, however many
// ways lead to it, and none without an end: in a circle of work that takes each other's place, that which is asked
// again while it is worked out is done nowhere.
type reckoning struct {
	open   map[spot]bool
	known  map[spot]footprint
	circle bool // what is being worked out leads back to itself, so it holds for this way alone
}

// A spot is asked for where a piece of work is done, of all there is of a measure.
type spot struct {
	of      *work
	measure string
}

// once works out where work is done, or knows it. What is known holds as long as anything is being asked.
func (a *reckoning) once(w spot, find func() footprint) footprint {
	if p, is := a.known[w]; is {
		return p
	}
	if a.open[w] {
		a.circle = true
		return footprint{}
	}
	if len(a.open) == 0 {
		*a = reckoning{open: map[spot]bool{}, known: map[spot]footprint{}}
	}
	outer := a.circle
	a.open[w], a.circle = true, false
	p := find()
	delete(a.open, w)
	if !a.circle {
		a.known[w] = p
	}
	a.circle = a.circle || outer
	if len(a.open) == 0 {
		a.known = nil
	}
	return p
}
