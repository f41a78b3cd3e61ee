package takeoff

// A dual gives each kind a value, in parts of a cent, so that no way to cut a stick
// yields more than its price. So no plan costs less than the pieces are worth
// together: the dual of the linear program of Gilmore and Gomory (1961, from memory),
// kept in whole numbers.
type dual struct {
	value []int64
	unit  int64 // parts in a cent
	worth int64 // of all pieces, in parts
}

// bound is the worth in cents, rounded up, since prices are whole.
func (d *dual) bound() int64 { return ceilDiv(d.worth, d.unit) }

// dualTop is the price of the dearest bin in parts; so near to 2^31 that size times
// value stays within 64 bits.
const dualTop = 1 << 31

// unitOf is how many parts a cent has in this job.
func (j *job) unitOf() int64 { return dualTop / j.bins[len(j.bins)-1].price }

// scaled makes a dual of any values from 0 up, if a bin holds at most top while it
// costs price, both in parts, and no other bin is worse in proportion (Farley 1990,
// from memory).
func (j *job) scaled(value []int64, top, price int64) *dual {
	d := &dual{value: make([]int64, len(value)), unit: j.unitOf()}
	for k, v := range value {
		if top > price {
			v = v * price / top
		}
		d.value[k] = v
		d.worth += v * int64(j.need[k])
	}
	return d
}

// bySize is the dual that values every kind by its size, at the least price of room.
func (j *job) bySize() *dual {
	unit := j.unitOf()
	value := make([]int64, len(j.size))
	for k, size := range j.size {
		least := int64(huge)
		for _, b := range j.bins {
			least = min(least, b.price*unit*size/b.room)
		}
		value[k] = least
	}
	return j.scaled(value, 0, 1)
}
