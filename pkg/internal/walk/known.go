package walk

import (
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Known are the exact values of a deal as far as they were asked for: a deal file is
// read with the help of some of its own lines, which are not worked out again later.
type Known struct {
	Values *Values[decimal.Decimal]
	mutex  sync.Mutex
	done   []bool // by cell
	taken  int    // how many of the inputs given since the deal was bound are taken in
}

// NewKnown returns the values of a model of which none is worked out.
func NewKnown(m *model.Model) *Known {
	return &Known{Values: New[decimal.Decimal](m), done: make([]bool, len(m.Cells))}
}

// Work works out what the wanted cells need and is not known; without any, all. Where it
// fails, it keeps what came before.
func (k *Known) Work(want ...int) error {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.forget()
	w := Walker[decimal.Decimal, Decimals]{Values: k.Values}
	for s := range k.Values.Model.EachNeeded(want...) {
		if k.done[s.Cells[0]] {
			continue
		}
		if err := w.step(s, 0); err != nil {
			return err
		}
		for _, c := range s.Cells {
			k.done[c] = true
		}
	}
	return nil
}

// forget drops what inputs given since can change.
func (k *Known) forget() {
	given := k.Values.Model.Later()[k.taken:]
	if len(given) == 0 {
		return
	}
	k.taken += len(given)
	for c, moved := range k.Values.Model.Moved(given) {
		k.done[c] = k.done[c] && !moved
	}
}
