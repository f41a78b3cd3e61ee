package takeoff_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/takeoff"
)

// The prices are invented: by the foot, and as a shop might ask.
var benchStock = map[string][]takeoff.Stock{
	"one length": {{Length: 192 * takeoff.PerInch, Price: 2099}},
	"by the foot": {
		{Length: 96 * takeoff.PerInch, Price: 1000}, {Length: 120 * takeoff.PerInch, Price: 1250},
		{Length: 144 * takeoff.PerInch, Price: 1500}, {Length: 192 * takeoff.PerInch, Price: 2000},
	},
	"shop prices": {
		{Length: 96 * takeoff.PerInch, Price: 998}, {Length: 120 * takeoff.PerInch, Price: 1321},
		{Length: 144 * takeoff.PerInch, Price: 1547}, {Length: 168 * takeoff.PerInch, Price: 1873}, {Length: 192 * takeoff.PerInch, Price: 2099},
	},
}

// randomTrim is invented: pieces from 6 in to 14 ft to the eighth of an inch.
func randomTrim(n int, seed uint64) []takeoff.Piece {
	r := rand.New(rand.NewPCG(seed, 1))
	out := make([]takeoff.Piece, n)
	for k := range out {
		out[k].Length = int64(48+r.IntN(14*12*8-48+1)) * eighth
	}
	return out
}

// alike makes two pieces in three a copy of one before, as a house does.
func alike(list []takeoff.Piece, seed uint64) []takeoff.Piece {
	r := rand.New(rand.NewPCG(seed, 2))
	for k := range list {
		if k > 0 && r.IntN(3) > 0 {
			list[k] = list[r.IntN(k)]
		}
	}
	return list
}

func BenchmarkCutList(b *testing.B) {
	for _, n := range []int{20, 60, 200} {
		for _, name := range []string{"one length", "by the foot", "shop prices"} {
			var all, some [][]takeoff.Piece
			for k := range uint64(20) {
				all, some = append(all, randomTrim(n, k)), append(some, alike(randomTrim(n, k), k))
			}
			b.Run(fmt.Sprintf("%d pieces, %s, all different", n, name), func(b *testing.B) { benchmark(b, all, benchStock[name]) })
			b.Run(fmt.Sprintf("%d pieces, %s, many alike", n, name), func(b *testing.B) { benchmark(b, some, benchStock[name]) })
		}
	}
}

// benchmark takes the jobs in turn, and says how many were proved and how far the
// others may be from the least price.
func benchmark(b *testing.B, jobs [][]takeoff.Piece, stock []takeoff.Stock) {
	proved, rounds := 0, 0
	var gap, price int64
	for b.Loop() {
		p, err := takeoff.CutList(jobs[rounds%len(jobs)], stock, eighth)
		require.NoError(b, err)
		if p.Proved() {
			proved++
		}
		gap, price = gap+p.Gap(), price+p.Price
		rounds++
	}
	b.ReportMetric(100*float64(proved)/float64(rounds), "%proved")
	b.ReportMetric(100*float64(gap)/float64(price), "%gap")
}

func BenchmarkBinpack1(b *testing.B) {
	names, room, items := binpack(b, "binpack1.txt")
	for k, name := range names {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				_, err := takeoff.CutList(items[k], []takeoff.Stock{{Length: room[k], Price: 1}}, 0)
				require.NoError(b, err)
			}
		})
	}
}
