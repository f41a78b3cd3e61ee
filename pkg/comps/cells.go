package comps

// cells parts the sales into neighbourhoods of at most size, halving along the
// wider side until they are small enough; sales without a place share the last one.
func cells(x, y []float64, known []bool, size int) (cell []int, n int) {
	cell = make([]int, len(x))
	var placed []int
	for i, k := range known {
		if k {
			placed = append(placed, i)
		}
	}
	var split func(in []int)
	split = func(in []int) {
		if len(in) <= size {
			for _, i := range in {
				cell[i] = n
			}
			n++
			return
		}
		by := x
		if spread(y, in) > spread(x, in) {
			by = y
		}
		halve(in, by)
		split(in[:len(in)/2])
		split(in[len(in)/2:])
	}
	if len(placed) > 0 {
		split(placed)
	}
	if len(placed) < len(x) {
		for i, k := range known {
			if !k {
				cell[i] = n
			}
		}
		n++
	}
	return cell, n
}

func spread(v []float64, in []int) float64 {
	low, high := v[in[0]], v[in[0]]
	for _, i := range in {
		low, high = min(low, v[i]), max(high, v[i])
	}
	return high - low
}

// halve puts the lower half by a figure before the upper one, equals by their index.
func halve(in []int, by []float64) {
	arrange(in, len(in)/2, func(a, b int) bool { return by[a] < by[b] || by[a] == by[b] && a < b })
}
