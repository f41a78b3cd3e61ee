package takeoff_test

import (
	"errors"
	"fmt"
	"maps"

	"ledgerboard/pkg/takeoff"
)

// brute tries every way to share the pieces among sticks: price, sticks and length
// bought of the best. It is written from the rule alone, for some eight pieces.
func brute(pieces []takeoff.Piece, stock []takeoff.Stock, kerf int64) [3]int64 {
	best := [3]int64{1 << 62}
	groups := make([][]int64, 0, len(pieces))
	var place func(k int)
	place = func(k int) {
		if k == len(pieces) {
			var sum [3]int64
			for _, g := range groups {
				s, ok := cheapest(g, stock, kerf)
				if !ok {
					return
				}
				sum = [3]int64{sum[0] + s.Price, sum[1] + 1, sum[2] + s.Length}
			}
			if before(sum, best) {
				best = sum
			}
			return
		}
		for g := range groups {
			groups[g] = append(groups[g], pieces[k].Length)
			place(k + 1)
			groups[g] = groups[g][:len(groups[g])-1]
		}
		groups = append(groups, []int64{pieces[k].Length})
		place(k + 1)
		groups = groups[:len(groups)-1]
	}
	place(0)
	return best
}

// bySubsets gives the same for some fourteen pieces: the best for each set of them is
// a stick with the first of the set and the best for the others.
func bySubsets(pieces []takeoff.Piece, stock []takeoff.Stock, kerf int64) [3]int64 {
	one := make([][3]int64, 1<<len(pieces)) // a set in one stick; no sticks if it does not fit
	best := make([][3]int64, 1<<len(pieces))
	for set := 1; set < len(one); set++ {
		var lengths []int64
		for k, p := range pieces {
			if set>>k&1 == 1 {
				lengths = append(lengths, p.Length)
			}
		}
		if s, ok := cheapest(lengths, stock, kerf); ok {
			one[set] = [3]int64{s.Price, 1, s.Length}
		}
	}
	for set := 1; set < len(best); set++ {
		first := set & -set
		best[set] = [3]int64{1 << 62}
		for sub := set; sub > 0; sub = (sub - 1) & set {
			if a, b := one[sub], best[set^sub]; sub&first > 0 && a[1] > 0 {
				if sum := [3]int64{a[0] + b[0], a[1] + b[1], a[2] + b[2]}; before(sum, best[set]) {
					best[set] = sum
				}
			}
		}
	}
	return best[len(best)-1]
}

func before(a, b [3]int64) bool {
	for k := range a {
		if a[k] != b[k] {
			return a[k] < b[k]
		}
	}
	return false
}

// cheapest is the stock for the pieces of one stick, the shortest of one price.
func cheapest(lengths []int64, stock []takeoff.Stock, kerf int64) (best takeoff.Stock, ok bool) {
	for _, s := range stock {
		if !fits(lengths, s.Length, kerf) {
			continue
		}
		if !ok || s.Price < best.Price || s.Price == best.Price && s.Length < best.Length {
			best, ok = s, true
		}
	}
	return best, ok
}

// fits cuts one piece after the other: a cut takes its kerf unless the piece is all
// that is left.
func fits(lengths []int64, left, kerf int64) bool {
	for _, l := range lengths {
		if l > left {
			return false
		}
		left = left - l - kerf
	}
	return true
}

// feasible checks that a plan cuts just the pieces asked for, from stock that is
// sold, and that its sums are right.
func feasible(p takeoff.Plan, pieces []takeoff.Piece, stock []takeoff.Stock, kerf int64) error {
	want, got := map[takeoff.Piece]int{}, map[takeoff.Piece]int{}
	sold := map[takeoff.Stock]bool{}
	var price, waste int64
	for _, x := range pieces {
		want[x]++
		waste -= x.Length
	}
	for _, s := range stock {
		sold[s] = true
	}
	for k, s := range p.Sticks {
		if !sold[s.Stock] {
			return fmt.Errorf("stick %d is %v, which is not sold", k, s.Stock)
		}
		left := s.Length
		var list []int64
		for _, c := range s.Cuts {
			got[c]++
			list = append(list, c.Length)
			left = left - c.Length - kerf
		}
		if len(list) == 0 || !fits(list, s.Length, kerf) || s.Offcut != max(0, left) {
			return fmt.Errorf("stick %d of %d cannot be cut into %v and %d", k, s.Length, list, s.Offcut)
		}
		price += s.Price
		waste += s.Length
	}
	if !maps.Equal(want, got) {
		return errors.New("the pieces cut are not those asked for")
	}
	if p.Price != price || p.Waste != waste || p.Bound > p.Price {
		return fmt.Errorf("price %d, waste %d, bound %d; the sticks give %d and %d", p.Price, p.Waste, p.Bound, price, waste)
	}
	return nil
}
