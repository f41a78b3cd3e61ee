package flat

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// longest is the longest hold that lists are made for, in months, as in the other readers.
const longest = 1200

// An Along is a cell that varies, and the ends that the axis never passes; they may be
// infinite. The nearer they are, the more is settled while lists are made.
type Along struct {
	Cell        *model.Cell
	Least, Most float64
	Shift       bool // the axis is not the cell's value but is added to what that comes to
}

// A Question asks for wanted cells while some cells, the axes, vary.
type Question struct {
	Months *List // works the number of months out; nil where it does not vary
	Last   int   // the month of the sale where it does not vary

	model    *model.Model
	axes     []int
	along    []Along
	want     []int
	held     map[int]decimal.Decimal
	steps    []model.Step
	prepared *walk.Prepared
	hold     int // the cell that is rounded up to the number of months, or -1

	mutex sync.Mutex
	room  int     // what is prepared reaches as far as this month
	lists []*List // by number of months
}

// Ask prepares a question. Changed cells keep the values given. Axes, changed and wanted
// cells have one value.
func Ask(m *model.Model, axes []Along, want []*model.Cell, changes []model.Change) (*Question, error) {
	held := map[int]decimal.Decimal{}
	for _, c := range changes {
		held[c.Cell.Index] = c.Value
	}
	q := &Question{model: m, along: slices.Clone(axes), want: model.Indexes(want), held: held, hold: -1}
	cells, given := slices.Clone(want), slices.Collect(maps.Keys(held))
	for _, a := range axes {
		q.axes, cells = append(q.axes, a.Cell.Index), append(cells, a.Cell)
		if !a.Shift {
			given = append(given, a.Cell.Index)
		}
	}
	for _, c := range cells {
		if c.Line.Monthly {
			return nil, fmt.Errorf("%s has a value for each month", c.Name())
		}
	}
	q.steps = m.NeededBeyond(given, append(slices.Clone(q.want), m.Horizon)...)
	if err := q.prepare(usual); err != nil {
		return nil, err
	}
	if !varies(q.prepared)[m.Horizon] {
		q.Last = int(q.prepared.Fixed.Scalar[m.Horizon].IntPart())
		return q, nil
	}
	if x := q.prepared.Model.Cells[m.Horizon]; !slices.Contains(q.axes, m.Horizon) && x.Expr.Op != nil && x.Expr.Op.Code == formula.Ceil {
		if a := x.Expr.Args[0]; a.Op == nil {
			q.hold = a.Reads(x.Member)
		}
	}
	var err error
	q.Months, err = q.list(-1, m.Horizon)
	return q, err
}

// usual is how many months are prepared at first.
const usual = 24

// prepare works out what does not vary, as far as a month.
func (q *Question) prepare(room int) error {
	p, err := walk.Prepare(q.model, q.steps, q.axes, q.held, room)
	if err != nil {
		return err
	}
	q.prepared, q.room = p, room
	return nil
}

// ErrTooLong is what a hold comes to that no reader works out.
var ErrTooLong = fmt.Errorf("a hold of under 0 or over %d months", longest)

// List is the list for a number of months. Several may ask at once.
func (q *Question) List(months int) (*List, error) {
	if months < 0 || months > longest {
		return nil, ErrTooLong
	}
	q.mutex.Lock()
	defer q.mutex.Unlock()
	if months < len(q.lists) && q.lists[months] != nil {
		return q.lists[months], nil
	}
	if months > q.room {
		if err := q.prepare(min(longest, max(months, 2*q.room))); err != nil {
			return nil, err
		}
	}
	l, err := q.list(months, q.want...)
	if err != nil {
		return nil, err
	}
	for len(q.lists) <= months {
		q.lists = append(q.lists, nil)
	}
	q.lists[months] = l
	return l, nil
}

func (q *Question) list(last int, want ...int) (*List, error) {
	return newBuilder(q.prepared, q.along, last, q.hold).made(want)
}

// Plain is the list of a prepared question. It fails if any of it runs by month.
func Plain(p *walk.Prepared, axes, want []*model.Cell) (*List, error) {
	along := make([]Along, len(axes))
	for i, c := range axes {
		along[i] = Along{Cell: c, Least: math.Inf(-1), Most: math.Inf(1)}
	}
	return newBuilder(p, along, -1, -1).made(model.Indexes(want))
}

// Whole is the number of months that a value of the horizon stands for, or -1 for one
// that no reader works out.
func Whole(x float64) int {
	if x > -0.5 && x < longest+0.5 {
		return int(x + 0.5)
	}
	return -1
}
