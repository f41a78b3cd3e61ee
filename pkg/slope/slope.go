package slope

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/flat"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// Of returns the slopes of wanted cells for inputs, while other cells are kept at what they
// come to as the deal is. All have one value. It fails where the deal cannot be worked out.
func Of(m *model.Model, inputs, wanted []*model.Cell, kept ...*model.Cell) ([][]float64, error) {
	q, err := ask(m.Uncut(), inputs, wanted, kept)
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

func ask(m *model.Model, inputs, wanted, kept []*model.Cell) (*question, error) {
	changes, err := keep(m, kept)
	if err != nil {
		return nil, err
	}
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

// keep is what keeps cells at what they come to.
func keep(m *model.Model, cells []*model.Cell) (out []model.Change, err error) {
	if len(cells) == 0 {
		return nil, nil
	}
	w := walk.Walker[decimal.Decimal, walk.Decimals]{Values: walk.New[decimal.Decimal](m)}
	if err := w.Steps(m.Needed(model.Indexes(cells)...)); err != nil {
		return nil, err
	}
	for _, c := range cells {
		out = append(out, model.Change{Cell: c, Value: w.Scalar[c.Index]})
	}
	return out, nil
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
