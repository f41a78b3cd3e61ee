package walk

import (
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Known are the exact values of a deal as far as they were asked for: a deal file is
// read with the help of some of its own lines, which are not worked out again later, and
// few commands print all.
type Known struct {
	Values *Values[decimal.Decimal]
	walker Walker[decimal.Decimal, Decimals]
	mutex  sync.Mutex
	done   []bool // by cell
	taken  int    // how many of the inputs given since the deal was bound are taken in
}

// NewKnown returns the values of a model of which none is worked out.
func NewKnown(m *model.Model) *Known {
	k := &Known{Values: New[decimal.Decimal](m), done: make([]bool, len(m.Cells))}
	k.walker.Values, k.walker.Ask, k.walker.done = k.Values, k.ask, k.done
	return k
}

// Copy returns the values known so far, which are worked out further beside these.
func (k *Known) Copy() *Known {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.forget()
	out := NewKnown(k.Values.Model)
	out.Values.Last, out.taken = k.Values.Last, k.taken
	copy(out.Values.Scalar, k.Values.Scalar)
	copy(out.Values.months, k.Values.months)
	copy(out.done, k.done)
	return out
}

// Work works out the wanted cells and what of others it takes. Where it fails, it keeps
// what came before.
func (k *Known) Work(want ...int) error {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.forget()
	k.walker.month = 0
	if err := k.ask(k.Values.Model.Horizon); err != nil { // the number of months
		return err
	}
	for _, c := range want {
		if err := k.ask(c); err != nil {
			return err
		}
	}
	return nil
}

// Value works out one expression of a member in a month.
func (k *Known) Value(x *model.Expr, of *model.Member, month int) (decimal.Decimal, error) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	return k.walker.ValueIn(x, of, month)
}

// ask works a cell out, unless it is known. That it needs itself is ruled out where the
// deal was bound.
func (k *Known) ask(cell int) error {
	if k.done[cell] {
		return nil
	}
	m, w := k.Values.Model, &k.walker
	c := m.Cells[cell]
	if c.Expr.IsNumber() && !c.Line.Monthly && cell != m.Horizon { // half are
		x := c.Expr.Number
		if c.Given == nil {
			x = w.Rules.Keep(x)
		}
		k.Values.Scalar[cell], k.done[cell] = x, true
		return nil
	}
	of, month := w.of, w.month
	defer func() { w.of, w.month = of, month }()
	if !c.Line.Monthly {
		err := w.one(c)
		k.done[cell] = err == nil
		return err
	}
	s := m.Together(cell)
	for _, c := range s.Cells { // which read each other
		k.done[c] = true
	}
	err := w.step(s, 0)
	for _, c := range s.Cells {
		k.done[c] = err == nil
	}
	return err
}

// forget drops what inputs given since can change.
func (k *Known) forget() {
	given := k.Values.Model.Later()[k.taken:]
	if len(given) == 0 {
		return
	}
	k.taken += len(given)
	for c, moved := range k.Values.Model.Moved(given, k.done) {
		k.done[c] = k.done[c] && !moved
	}
}
