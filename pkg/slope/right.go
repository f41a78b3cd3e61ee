package slope

import (
	"math"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// right writes the slopes for one axis to the right: where it has moved a hair upward,
// every turn that it stands at is taken.
func right(q *flat.Question, axis int, out [][]float64) error {
	months := q.Last
	if q.Months != nil {
		h := newHair(q.Months, axis)
		if months = flat.Whole(h.values[q.Months.Out[0]]); months < 0 {
			return flat.ErrTooLong
		}
	}
	l, err := q.List(months)
	if err != nil {
		return err
	}
	h := newHair(l, axis)
	for k, at := range l.Out {
		out[k][axis] = h.speeds[at]
	}
	return nil
}

// A hair is a list worked out where one axis has just begun to move, at a speed of 1.
type hair struct {
	pass
	speeds []float64
}

func newHair(l *flat.List, axis int) *hair {
	h := &hair{pass{l, make([]float64, len(l.Values))}, make([]float64, len(l.Values))}
	for i := range l.Values {
		v := &l.Values[i]
		switch {
		case v.Code == flat.Number:
			h.values[i] = v.Number
		case v.Code == flat.Axis:
			if int(v.Args[0]) == axis {
				h.speeds[i] = 1
			}
		default:
			var speed [3]float64
			for k, a := range v.Args[:v.Takes()] {
				speed[k] = h.speeds[a]
			}
			h.values[i], h.speeds[i] = move(v.Code, v.Takes(), h.args(v), speed)
		}
	}
	return h
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
