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

// halve puts the lower half by a figure before the upper one, equals by their index,
// by Hoare's selection.
func halve(in []int, by []float64) {
	less := func(a, b int) bool { return by[a] < by[b] || by[a] == by[b] && a < b }
	k := len(in) / 2
	for low, high := 0, len(in)-1; low < high; {
		pivot := in[(low+high)/2]
		i, j := low, high
		for i <= j {
			for less(in[i], pivot) {
				i++
			}
			for less(pivot, in[j]) {
				j--
			}
			if i <= j {
				in[i], in[j] = in[j], in[i]
				i++
				j--
			}
		}
		switch {
		case k <= j:
			high = j
		case k >= i:
			low = i
		default:
			return
		}
	}
}
