package slope

import (
	"fmt"
	"math"

	"ledgerboard/pkg/internal/flat"
	"ledgerboard/pkg/model"
)

// A Change gives a cell another value.
type Change = model.Change

// Of returns the slopes of wanted cells for inputs, all of one value, with changes to the
// deal. It fails where the deal cannot be worked out.
func Of(m *model.Model, inputs, wanted []*model.Cell, changes ...Change) ([][]float64, error) {
	q, err := ask(m, inputs, wanted, changes)
	if err != nil {
		return nil, err
	}
	months, turns := q.flat.Last, make([]bool, len(inputs))
	if q.months != nil {
		months = flat.Whole(q.months.values[q.months.Out[0]])
		q.months.markTurns(turns)
	}
	p, err := q.pass(months)
	if err != nil {
		return nil, err
	}
	p.markTurns(turns)
	out := make([][]float64, len(wanted))
	for k, at := range p.Out {
		if x := p.values[at]; math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("%s cannot be worked out", wanted[k].Name())
		}
		out[k] = p.back(at, len(inputs))
	}
	for i, turn := range turns {
		if !turn {
			continue
		}
		if err := q.right(i, out); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// A question asks for slopes; it keeps what is worked out for each number of months.
type question struct {
	flat   *flat.Question
	axes   int
	months *pass // for the number of months, or nil
	passes map[int]*pass
	hair   hair
}

func ask(m *model.Model, inputs, wanted []*model.Cell, changes []Change) (*question, error) {
	along := make([]flat.Along, len(inputs))
	for i, c := range inputs {
		along[i] = flat.Along{Cell: c, Least: math.Inf(-1), Most: math.Inf(1), Shift: true}
	}
	f, err := flat.Ask(m, along, wanted, changes)
	if err != nil {
		return nil, err
	}
	q := &question{flat: f, axes: len(inputs), passes: map[int]*pass{}}
	if f.Months != nil {
		q.months = newPass(f.Months, q.axes)
	}
	return q, nil
}

// pass is the deal of so many months worked out where no axis has moved.
func (q *question) pass(months int) (*pass, error) {
	if p := q.passes[months]; p != nil {
		return p, nil
	}
	l, err := q.flat.List(months)
	if err != nil {
		return nil, err
	}
	q.passes[months] = newPass(l, q.axes)
	return q.passes[months], nil
}
