package comps

// arrange puts the k-th smallest of a in its place, from 0, with what is smaller before
// and what is larger behind it, by Hoare's selection.
func arrange[T any](a []T, k int, less func(x, y T) bool) {
	for low, high := 0, len(a)-1; low < high; {
		pivot := a[(low+high)/2]
		i, j := low, high
		for i <= j {
			for less(a[i], pivot) {
				i++
			}
			for less(pivot, a[j]) {
				j--
			}
			if i <= j {
				a[i], a[j] = a[j], a[i]
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

// smallest returns the k-th smallest of a, from 0, and leaves a in another order.
func smallest(a []float64, k int) float64 {
	arrange(a, k, func(x, y float64) bool { return x < y })
	return a[k]
}
