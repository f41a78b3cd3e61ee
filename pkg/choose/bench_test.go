package choose

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// Amounts are in cents, up to $10,000 a step; each run takes the next of 20 houses.
const benchUnit = 1_000_000

func house(n int) *rand.Rand { return rand.New(rand.NewPCG(uint64(n%20), 0)) }

func BenchmarkBest(b *testing.B) {
	for name, make := range map[string]func(*rand.Rand, int, int, int, int64) ([][]Option, []int64){
		"plain": additive, "alike": alike,
	} {
		for _, rooms := range []int{12, 20} {
			b.Run(fmt.Sprintf("%s %d rooms 4 options 3 limits", name, rooms), func(b *testing.B) {
				for n := 0; b.Loop(); n++ {
					Best(make(house(n), rooms, 4, 3, benchUnit))
				}
			})
		}
	}
}

func BenchmarkBound(b *testing.B) {
	list, limits := additive(house(1), 12, 4, 3, benchUnit)
	a, err := NewAdditive(list, limits)
	if err != nil {
		b.Fatal(err)
	}
	partial := open(12)
	b.Run("all open", func(b *testing.B) {
		for b.Loop() {
			a.Bound(partial)
		}
	})
	b.Run("half decided", func(b *testing.B) {
		for i := range 6 {
			partial[i] = i % 2
		}
		for b.Loop() {
			a.Bound(partial)
		}
	})
	b.Run("prepare", func(b *testing.B) {
		for b.Loop() {
			if _, err := NewAdditive(list, limits); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkSearch is of a worth with packs and a longest way, the rent of which the
// bound does not know. Leaves and nodes are those of one search.
func BenchmarkSearch(b *testing.B) {
	for _, rooms := range []int{8, 12} {
		for _, rent := range []int64{2_000, 20_000, 100_000} {
			b.Run(fmt.Sprintf("%d rooms rent %d", rooms, rent/100), func(b *testing.B) {
				var n, nodes, leaves, proved int
				for ; b.Loop(); n++ {
					r, err := Search(newPacks(house(n), rooms, 4, 3, benchUnit, rent))
					if err != nil {
						b.Fatal(err)
					}
					nodes, leaves = nodes+r.Nodes, leaves+r.Leaves
					if r.RunnerUpProved {
						proved++
					}
				}
				b.ReportMetric(float64(nodes)/float64(n), "nodes")
				b.ReportMetric(float64(leaves)/float64(n), "leaves")
				b.ReportMetric(float64(proved)/float64(n), "proved")
			})
		}
	}
}
