package choose

import (
	"cmp"
	"slices"
)

// A Problem is a choice of one option for each room whose worth is no plain sum.
// Neither method may keep or change the slice it is given.
type Problem interface {
	// Rooms is the number of options in each room.
	Rooms() []int
	// Bound is a worth in cents that no completion of the partial choice exceeds;
	// a room at -1 is open. It says possible=false only if none keeps the limits.
	Bound(partial []int) (best int64, possible bool)
	// Worth is the truth about a whole choice, in cents, and whether it keeps the
	// limits. Of equal worths the smaller tie is better: cost first, then time.
	Worth(choice []int) (value int64, ok bool, tie [2]int64)
}

// A Narrower is a problem that can bound a whole choice more tightly than Bound does,
// at a price between that of Bound and that of Worth. It is asked before Worth, unless
// the choice is a start.
type Narrower interface {
	Problem
	Narrow(choice []int) (best int64, possible bool)
}

// A Choice is an option for each room, with its worth.
type Choice struct {
	Options []int // an index for each room
	Value   int64 // in cents
	Tie     [2]int64
}

// order is below 0 if c is better: worth more, or the smaller tie, or else, so that
// there is one best, the earlier options from the first room on.
func (c *Choice) order(d *Choice) int {
	return cmp.Or(
		cmp.Compare(d.Value, c.Value),
		slices.Compare(c.Tie[:], d.Tie[:]),
		slices.Compare(c.Options, d.Options),
	)
}

// A Result is what a search found.
type Result struct {
	Best     *Choice // nil if no choice was found that keeps the limits
	RunnerUp *Choice // the best of all others that keep them, or nil

	Nodes  int // partial choices bounded
	Leaves int // whole choices worked out

	// Proved says that nothing is better than Best, or that no choice keeps the
	// limits; RunnerUpProved says the same of the others. Both hold unless a limit
	// of the search was reached.
	Proved, RunnerUpProved bool
	// Bound is what no choice is worth more than, in cents: the value of Best if that
	// is proved.
	Bound int64
}
