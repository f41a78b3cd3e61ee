package exact

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A Scratch works a prepared question out in place, again and again, where copying a
// large model each time would take longer than the work. From one evaluation to the
// next it works out only what has moved. It answers one question at a time.
type Scratch struct {
	prepared *walk.Prepared
	last     int
	walker   walker
	moved    []bool // by cell, in this evaluation
	known    bool   // all steps hold what the axes came to last
}

// NewScratch makes a scratch of a prepared question, which no other reader may use
// after it.
func NewScratch(p *walk.Prepared) *Scratch {
	w := walker{Values: p.Fixed, Changed: map[int]decimal.Decimal{}}
	return &Scratch{prepared: p, last: p.Fixed.Last, walker: w, moved: make([]bool, len(p.Model.Cells))}
}

// Evaluate works the question out with axes at the given values. An axis that is not
// named keeps the value that it was given last.
func (s *Scratch) Evaluate(axes ...Change) error {
	clear(s.moved)
	for _, c := range axes {
		old, was := s.walker.Changed[c.Cell.Index]
		s.moved[c.Cell.Index] = !was || !same(old, c.Value)
		s.walker.Changed[c.Cell.Index] = c.Value
	}
	known := s.known
	if s.known = false; !known {
		s.walker.Last = s.last
	}
	for i, step := range s.prepared.Varying {
		if known && !s.prepared.Model.Touched(step, s.moved) {
			continue
		}
		first, months := step.Cells[0], s.walker.Last
		old := s.walker.Scalar[first]
		if err := s.walker.Steps(s.prepared.Varying[i : i+1]); err != nil {
			return err
		}
		known = known && s.walker.Last == months // what runs by month has other months
		for _, c := range step.Cells {
			s.moved[c] = s.prepared.Model.Cells[c].Line.Monthly || !same(old, s.walker.Scalar[first])
		}
	}
	s.known = true
	return nil
}

// same reports whether two numbers are the same to the last digit written.
func same(x, y decimal.Decimal) bool { return x.Exponent() == y.Exponent() && x.Equal(y) }

// Of returns the value of a cell of the question after the last evaluation.
func (s *Scratch) Of(c *model.Cell) decimal.Decimal { return s.walker.Scalar[c.Index] }
