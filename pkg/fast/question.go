package fast

import (
	"math"
	"slices"
	"sync"

	"ledgerboard/pkg/internal/flat"
	"ledgerboard/pkg/model"
)

// A Change gives a cell another value for good.
type Change = model.Change

// An Axis is a cell that has another value in each trial, and the ends that it never
// passes. Near ends make for less work; Free has none.
type Axis struct {
	Cell        *model.Cell
	Least, Most float64
}

// Free is an axis that may have any value.
func Free(c *model.Cell) Axis { return Axis{c, math.Inf(-1), math.Inf(1)} }

// A Question asks for some cells of a deal over many trials, in each of which the axes
// have other values. It may be asked by several workers at once.
type Question struct {
	flat   *flat.Question
	months *code // works the number of months out, or nil
	axes   []Axis
	sought int // the axis that a Seeker moves, or -1

	mutex sync.Mutex
	codes []*code // by number of months
}

// Ask prepares a question: what does not vary is worked out, exactly. Axes and wanted
// cells have one value, not one for each month.
func Ask(m *model.Model, axes []Axis, want []*model.Cell, changes ...Change) (*Question, error) {
	along := make([]flat.Along, len(axes))
	for i, a := range axes {
		along[i] = flat.Along{Cell: a.Cell, Least: a.Least, Most: a.Most}
	}
	f, err := flat.Ask(m, along, want, changes)
	if err != nil {
		return nil, err
	}
	q := &Question{flat: f, axes: slices.Clone(axes), sought: -1}
	if f.Months != nil {
		q.months = newCode(f.Months, -1)
	}
	return q, nil
}

// code is the code for a number of months.
func (q *Question) code(months int) (*code, error) {
	q.mutex.Lock()
	defer q.mutex.Unlock()
	for len(q.codes) <= months {
		q.codes = append(q.codes, nil)
	}
	if q.codes[months] == nil {
		l, err := q.flat.List(months)
		if err != nil {
			return nil, err
		}
		q.codes[months] = newCode(l, q.sought)
	}
	return q.codes[months], nil
}

// Size is how many operations a trial of so many months takes.
func (q *Question) Size(months int) (int, error) {
	c, err := q.code(months)
	if err != nil {
		return 0, err
	}
	return len(c.steps) + len(c.again) - 2, nil
}
