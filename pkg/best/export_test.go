package best

import (
	"fmt"
	"math"
)

// Bounds are those of a search without limits, before it has found anything.
type Bounds struct {
	*problem
	coarse [][ways]span
}

// Bounds are nil where none are had, so that every choice is tried.
func (h *House) Bounds() *Bounds {
	p := h.problem(Limits{})
	p.floor = math.MinInt64
	b := &Bounds{p, p.coarse()}
	for _, spans := range b.coarse {
		if err := p.live(spans); err != nil {
			return nil
		}
	}
	if err := p.lighten(); err != nil {
		return nil
	}
	return b
}

// Exceeded tells of a total of a choice that lies outside of all boxes that are searched, or
// of a bound that it is worth more than, its first rooms decided; or nothing.
func (b *Bounds) Exceeded(choice []int) (string, error) {
	h := b.House
	c, err := h.At(choice)
	if err != nil {
		return "", err
	}
	if err := h.work.Evaluate(h.taking(choice)...); err != nil {
		return "", err
	}
	cuts, err := h.cuts(choice)
	if err != nil {
		return "", err
	}
	if err := h.work.Evaluate(cuts...); err != nil {
		return "", err
	}
	of := func(i int) float64 { return h.work.Of(h.totals[i]).InexactFloat64() }
	z := [ways]float64{of(cost), of(atTrade) - of(cost), of(shared), of(added), of(time)}
	in := false
	for _, spans := range b.coarse {
		in = in || (&slice{spans: spans}).holds(&z, b.moves)
	}
	if !in {
		return fmt.Sprintf("totals %v lie in none of %v", z, b.coarse), nil
	}
	partial := append([]int{}, choice...)
	for i := len(partial); ; i-- {
		if most, can := b.Bound(partial); !can || most < cents(c.Profit) {
			return fmt.Sprintf("it is worth %s, but %v is bound by %d cents (%v)", c.Profit, partial, most, can), nil
		}
		if i == 0 {
			return "", nil
		}
		partial[i-1] = -1
	}
}
