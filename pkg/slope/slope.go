package slope

import (
	"fmt"
	"math"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
	"ledgerboard/pkg/model"
)

// Of returns the slopes of wanted cells for inputs, all of one value. It fails where the
// deal cannot be worked out.
func Of(m *model.Model, inputs, wanted []*model.Cell) ([][]float64, error) {
	along := make([]flat.Along, len(inputs))
	for i, c := range inputs {
		along[i] = flat.Along{Cell: c, Least: math.Inf(-1), Most: math.Inf(1), Shift: true}
	}
	q, err := flat.Ask(m, along, wanted, nil)
	if err != nil {
		return nil, err
	}
	months := q.Last
	var turns []bool // by input, whether it meets a kink or a step
	if q.Months != nil {
		p := newPass(q.Months)
		if months = flat.Whole(p.values[q.Months.Out[0]]); months < 0 {
			return nil, flat.ErrTooLong
		}
		turns = p.turns(len(inputs))
	}
	l, err := q.List(months)
	if err != nil {
		return nil, err
	}
	p := newPass(l)
	for i, turn := range p.turns(len(inputs)) {
		if turns == nil {
			turns = make([]bool, len(inputs))
		}
		turns[i] = turns[i] || turn
	}
	out := make([][]float64, len(wanted))
	for k, at := range l.Out {
		if x := p.values[at]; math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("%s cannot be worked out", wanted[k].Name())
		}
		out[k] = p.back(at, len(inputs))
	}
	for i, turn := range turns {
		if !turn {
			continue
		}
		if err := right(q, i, out); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// A pass is a list worked out where no axis has moved.
type pass struct {
	*flat.List
	values []float64
}

func newPass(l *flat.List) *pass {
	p := &pass{l, make([]float64, len(l.Values))}
	for i := range l.Values {
		v := &l.Values[i]
		switch {
		case v.Code == flat.Number:
			p.values[i] = v.Number
		case v.Code >= 0:
			args := p.args(v)
			p.values[i] = formula.Table[v.Code].Float(args[:v.Takes()])
		}
	}
	return p
}

func (p *pass) args(v *flat.Value) (args [3]float64) {
	for k, a := range v.Args[:v.Takes()] {
		args[k] = p.values[a]
	}
	return args
}

// back is the slope of one value for each axis: what each value passes on to those that
// it is made of, from the last to the first.
func (p *pass) back(from int32, axes int) []float64 {
	owed, out := make([]float64, len(p.Values)), make([]float64, axes)
	owed[from] = 1
	for i := from; i >= 0; i-- {
		v := &p.Values[i]
		switch {
		case owed[i] == 0 || v.Code == flat.Number:
		case v.Code == flat.Axis:
			out[v.Args[0]] = owed[i]
		default:
			var by [3]float64
			args := p.args(v)
			formula.Table[v.Code].Slope(args[:v.Takes()], by[:v.Takes()])
			for k, a := range v.Args[:v.Takes()] {
				if by[k] != 0 {
					owed[a] += owed[i] * by[k]
				}
			}
		}
	}
	return out
}
