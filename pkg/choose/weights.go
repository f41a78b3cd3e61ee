package choose

import "math"

// makeRows makes a row of each limit that can hold back, and one of all of these
// weighted by what they are worth at the margin; without any, a row without limit.
func (a *Additive) makeRows() []*row {
	var tight []int
	for k, l := range a.limits {
		if l < a.most(k) {
			tight = append(tight, k)
		}
	}
	weights := make([]int64, len(a.limits))
	var rows []*row
	for _, k := range tight {
		weights[k] = 1
		rows = append(rows, a.row(weights))
		weights[k] = 0
	}
	switch len(tight) {
	case 0:
		rows = append(rows, a.row(weights))
	case 1:
	default:
		rows = append(rows, a.row(a.weigh(tight, a.prices(tight))))
	}
	return rows
}

// most is the use of a resource if every room uses as much as it can.
func (a *Additive) most(k int) int64 {
	var sum int64
	for _, room := range a.rooms {
		most := int64(never)
		for _, o := range room {
			most = max(most, o.use(k))
		}
		sum += most
	}
	return sum
}

func (a *Additive) row(weights []int64) *row {
	at := make([][]point, len(a.rooms))
	for i, room := range a.rooms {
		at[i] = make([]point, 0, len(room))
		for _, o := range room {
			p := point{value: o.Value}
			for k, w := range weights {
				if w > 0 {
					p.weight += w * o.use(k)
				}
			}
			at[i] = append(at[i], p)
		}
	}
	var limit int64
	for k, w := range weights {
		if w > 0 {
			limit += w * a.limits[k]
		}
	}
	return newRow(at, limit)
}

// weigh turns prices into whole weights, as fine as sums of 64 bits allow.
func (a *Additive) weigh(tight []int, prices []float64) []int64 {
	var total float64
	for n, k := range tight {
		total += float64(prices[n] * a.span(k))
	}
	out := make([]int64, len(a.limits))
	if total == 0 {
		return out
	}
	for n, k := range tight {
		out[k] = int64(prices[n] / total * (1 << 60))
	}
	return out
}

// span is the largest sum of uses of a resource either way, or its limit.
func (a *Additive) span(k int) float64 {
	sum := 1.0
	for _, room := range a.rooms {
		var most float64
		for _, o := range room {
			most = max(most, math.Abs(float64(o.use(k))))
		}
		sum += most
	}
	return max(sum, math.Abs(float64(a.limits[k])))
}
