package choose

import (
	"errors"
	"fmt"
	"math"
)

// An Option is one way to do a room, where worths and uses simply add up.
type Option struct {
	Value int64   // in cents
	Uses  []int64 // of each limited resource, in the unit of its limit; missing ones are 0
}

const (
	maxAmount  = 1 << 50 // of an option either way, so that sums stay within 64 bits
	maxRooms   = 1 << 10
	maxOptions = 1 << 15
)

// ErrAmount is returned for values or uses too large to add up.
var ErrAmount = errors.New("a value or use of an option is at most 2^50 either way")

// use is the use of resource k.
func (o Option) use(k int) int64 {
	if k < len(o.Uses) {
		return o.Uses[k]
	}
	return 0
}

// checkSizes returns an error unless every room can be given an option.
func checkSizes(sizes []int) error {
	if len(sizes) > maxRooms {
		return fmt.Errorf("%d rooms; want %d at most", len(sizes), maxRooms)
	}
	for i, n := range sizes {
		if n < 1 || n > maxOptions {
			return fmt.Errorf("room %d has %d options; want 1 to %d", i, n, maxOptions)
		}
	}
	return nil
}

func checkAmounts(rooms [][]Option, limits int) error {
	large := func(n int64) bool { return n > maxAmount || n < -maxAmount }
	for _, room := range rooms {
		for _, o := range room {
			if large(o.Value) {
				return ErrAmount
			}
			for k := range limits {
				if large(o.use(k)) {
					return ErrAmount
				}
			}
		}
	}
	return nil
}

func sizesOf(rooms [][]Option) []int {
	out := make([]int, len(rooms))
	for i, r := range rooms {
		out[i] = len(r)
	}
	return out
}

// never is below every value.
const never = math.MinInt64
