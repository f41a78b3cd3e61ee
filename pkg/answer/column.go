package answer

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// A Column is one of the deals that are set side by side.
type Column struct {
	Name string
	*Answer
}

// Named returns the member of a set of the deal with that label, or nil.
func (a *Answer) Named(set, label string) *model.Member {
	for _, m := range a.Model.Root.In(set) {
		if m.Label == label {
			return m
		}
	}
	return nil
}

// OfNamed returns the value of a line of the member of a set with that label; 0 if there
// is none.
func (a *Answer) OfNamed(set, label, line string) decimal.Decimal {
	if m := a.Named(set, label); m != nil {
		return a.Of(m, line)
	}
	return decimal.Decimal{}
}
