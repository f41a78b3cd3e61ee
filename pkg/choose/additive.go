package choose

// Additive is a choice whose values and uses add up. It is a [Problem] itself, and
// the bound of one that is not additive: give each option the most that it can add
// to the worth and the least that it can use, and its Bound is valid there.
type Additive struct {
	rooms  [][]Option
	limits []int64
	rows   []*row
}

// NewAdditive prepares the bounds. It fails for a room without options, and for
// amounts of more than 2^50. A limit of [math.MaxInt64] never holds back, yet its
// resource counts for ties. The slices are kept.
func NewAdditive(rooms [][]Option, limits []int64) (*Additive, error) {
	if err := checkSizes(sizesOf(rooms)); err != nil {
		return nil, err
	}
	if err := checkAmounts(rooms, len(limits)); err != nil {
		return nil, err
	}
	a := &Additive{rooms: rooms}
	for _, l := range limits {
		a.limits = append(a.limits, min(max(l, -maxWorth), maxWorth))
	}
	a.rows = a.makeRows()
	return a, nil
}

// Rooms is the number of options in each room.
func (a *Additive) Rooms() []int { return sizesOf(a.rooms) }

// Bound is the least that any row says; see [Problem].
func (a *Additive) Bound(partial []int) (int64, bool) {
	var best int64
	for n, r := range a.rows {
		b, possible := r.bound(partial)
		if !possible {
			return 0, false
		}
		if n == 0 || b < best {
			best = b
		}
	}
	return best, true
}

// Worth adds up a choice. Its tie is the use of the first two resources.
func (a *Additive) Worth(choice []int) (value int64, ok bool, tie [2]int64) {
	for i, o := range choice {
		value += a.rooms[i][o].Value
	}
	ok = true
	for k, l := range a.limits {
		used := a.used(choice, k)
		ok = ok && used <= l
		if k < len(tie) {
			tie[k] = used
		}
	}
	return value, ok, tie
}

func (a *Additive) used(choice []int, k int) int64 {
	var sum int64
	for i, o := range choice {
		sum += a.rooms[i][o].use(k)
	}
	return sum
}
