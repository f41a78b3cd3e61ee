package exact

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A Scratch works a prepared question out in place, again and again, where copying a
// large model each time would take longer than the work. It answers one question at a
// time.
type Scratch struct {
	prepared *walk.Prepared
	last     int
	walker   walker
}

// NewScratch makes a scratch of a prepared question, which no other reader may use
// after it.
func NewScratch(p *walk.Prepared) *Scratch {
	return &Scratch{p, p.Fixed.Last, walker{Values: p.Fixed}}
}

// Evaluate works the question out with its axes at the given values.
func (s *Scratch) Evaluate(axes ...Change) error {
	s.walker.Values.Last = s.last
	s.walker.Changed = make(map[int]decimal.Decimal, len(axes))
	for _, c := range axes {
		s.walker.Changed[c.Cell.Index] = c.Value
	}
	return s.walker.Steps(s.prepared.Varying)
}

// Of returns the value of a cell of the question after the last evaluation.
func (s *Scratch) Of(c *model.Cell) decimal.Decimal { return s.walker.Scalar[c.Index] }
