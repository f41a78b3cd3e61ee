package slope

import (
	"math"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// right writes the slopes for one axis to the right: where it has moved a hair upward,
// every turn that it stands at is taken.
func (q *question) right(axis int, out [][]float64) error {
	months := q.flat.Last
	if q.months != nil {
		q.hair.move(q.months, axis)
		months = flat.Whole(q.hair.values[q.months.Out[0]])
	}
	p, err := q.pass(months)
	if err != nil {
		return err
	}
	q.hair.move(p, axis)
	for k, at := range p.Out {
		out[k][axis] = q.hair.speeds[at]
	}
	return nil
}

// A hair is where one axis has just begun to move, at a speed of 1.
type hair struct{ values, speeds []float64 }

// move works a list out there; what the axis does not move stays as it is.
func (h *hair) move(p *pass, axis int) {
	h.values = append(h.values[:0], p.values...)
	h.speeds = append(h.speeds[:0], make([]float64, len(p.values))...)
	for i := range p.Values {
		if !p.moves(axis, int32(i)) {
			continue
		}
		v := &p.Values[i]
		if v.Code == flat.Axis {
			h.speeds[i] = 1
			continue
		}
		h.values[i], h.speeds[i] = move(v.Code, v.Takes(), argsOf(v, h.values), argsOf(v, h.speeds))
	}
}

// move is what an operator's value is a hair further on, and how fast it moves there.
func move(code formula.Code, takes int, x, speed [3]float64) (value, moves float64) {
	op := formula.Table[code]
	if !atTurn(code, x) {
		var by [3]float64
		op.Slope(x[:takes], by[:takes])
		for k, s := range speed[:takes] {
			if s != 0 && by[k] != 0 {
				moves += s * by[k]
			}
		}
		return op.Float(x[:takes]), moves
	}
	switch apart := speed[0] - speed[1]; {
	case code == formula.Min:
		return op.Float(x[:2]), min(speed[0], speed[1])
	case code == formula.Max:
		return op.Float(x[:2]), max(speed[0], speed[1])
	case code == formula.Ceil && speed[0] > 0:
		return math.Round(x[0]) + 1, 0
	case code == formula.Floor && speed[0] < 0:
		return math.Round(x[0]) - 1, 0
	case code == formula.Div: // of nothing by nothing: as long as both grow evenly, it stays
		return speed[0] / speed[1], 0
	case takes == 2 && apart != 0: // compared, and no longer equal
		return op.Float([]float64{math.Copysign(1, apart), 0}), 0
	}
	return op.Float(x[:takes]), 0
}
