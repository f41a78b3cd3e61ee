package deal

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Footprints are what sets of the squares of a floor are: of one and another, of one without another, of
// the first so many, and of so many that fit beside others, on 20 squares of which each is said as a count or a share.
func TestFootprintsAreSetsOfSquares(t *testing.T) {
	const squares = 20
	all := decimal.NewFromInt(squares)
	end := func(t *rapid.T, n int) toDo {
		if rapid.Bool().Draw(t, "counted") {
			return toDo{counted: decimal.NewFromInt(int64(n))}
		}
		return toDo{share: decimal.NewFromInt(int64(n)).Div(all)}
	}
	type set [squares]bool
	has := func(p footprint) (out set) {
		for _, s := range p.on {
			for i := s.from.of(all).IntPart(); i < s.to.of(all).IntPart(); i++ {
				require.False(t, out[i], "each once")
				out[i] = true
			}
		}
		return out
	}
	count := func(s set) (n int64) {
		for _, in := range s {
			if in {
				n++
			}
		}
		return n
	}
	drawn := func(t *rapid.T, name string) (p footprint) {
		for range rapid.IntRange(0, 3).Draw(t, name) {
			from := rapid.IntRange(0, squares-1).Draw(t, "from")
			to := rapid.IntRange(from, squares).Draw(t, "to")
			p = p.and(footprint{on: []stretch{{end(t, from), end(t, to)}}}, all)
		}
		return p
	}
	rapid.Check(t, func(rt *rapid.T) {
		p, q := drawn(rt, "p"), drawn(rt, "q")
		much := rapid.IntRange(0, squares).Draw(rt, "much")
		inP, inQ := has(p), has(q)
		require.Equal(t, count(inP), p.length().of(all).IntPart())

		var either, without, first set
		left := much
		for i := range squares {
			either[i], without[i] = inP[i] || inQ[i], inP[i] && !inQ[i]
			if inP[i] && left > 0 {
				first[i], left = true, left-1
			}
		}
		require.Equal(t, either, has(p.and(q, all)))
		require.Equal(t, without, has(p.but(q, all)))
		got, short := p.first(end(rt, much), all)
		require.Equal(t, first, has(got))
		require.Equal(t, int64(left), short.of(all).IntPart())

		fits := has(fit(end(rt, much), all, everywhere().but(p, all), everywhere()))
		require.Equal(t, int64(much), count(fits))
		for i := range squares { // nothing over what is taken as long as there is room
			if fits[i] && inP[i] {
				require.Equal(t, int64(squares), count(has(p.and(fit(end(rt, much), all, everywhere().but(p, all), everywhere()), all))))
			}
		}
	})
}
