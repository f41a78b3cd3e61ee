package fast

import (
	"math/bits"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A Program works one trial after the other out, anew only what has moved since.
type Program struct {
	list   *flat.List
	values []float64 // of the list
	moves  [][]int32 // by axis, the values that it moves, in order
	last   []float64 // where the axes were last
	due    []bool    // by value
	args   [3]float64
}

// New compiles what the wanted cells need of a prepared question while its axes vary.
// It fails if any of it runs by month.
func New(p *walk.Prepared, axes []*model.Cell, want ...*model.Cell) (*Program, error) {
	l, err := flat.Plain(p, axes, want)
	if err != nil {
		return nil, err
	}
	out := &Program{list: l, values: make([]float64, len(l.Values)), moves: make([][]int32, len(axes)), due: make([]bool, len(l.Values))}
	for i, v := range l.Values {
		if v.Code == flat.Number {
			out.values[i] = v.Number
		}
	}
	out.findMoves()
	return out, nil
}

// findMoves finds the values that each axis moves, for 64 axes at a time.
func (p *Program) findMoves() {
	for first := 0; first < len(p.moves); first += 64 {
		movers := make([]uint64, len(p.values)) // by value, a bit for each axis
		for a, at := range p.list.In[first:min(first+64, len(p.moves))] {
			if at >= 0 {
				movers[at] = 1 << a
			}
		}
		for i, v := range p.list.Values {
			var all uint64
			for _, a := range v.Args[:v.Takes()] {
				all |= movers[a]
			}
			if v.Code < 0 {
				continue
			}
			for movers[i] = all; all != 0; all &= all - 1 {
				a := first + bits.TrailingZeros64(all)
				p.moves[a] = append(p.moves[a], int32(i))
			}
		}
	}
}

// carryOut works a value out.
func (p *Program) carryOut(v *flat.Value) float64 {
	x, y := p.values[v.Args[0]], p.values[v.Args[1]]
	switch v.Code {
	case formula.Add:
		return x + y
	case formula.Mul:
		return x * y
	}
	p.args = [...]float64{x, y, p.values[v.Args[2]]}
	return formula.Table[v.Code].Float(p.args[:v.Takes()])
}
