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

// WithoutWork says in words why a room has no cost in a deal; "" where it has one.
func (a *Answer) WithoutWork(label string) string {
	switch room := a.Named("room", label); {
	case room == nil:
		return "not in it"
	case len(room.In("option")) == 0:
		return "as it is"
	}
	return ""
}

// OfRooms is what to know of the cost of rooms in deals side by side.
const OfRooms = "What stays as it is has no such option, and nothing is done to it. A room's cost is its part of whole packs, so the same option may cost a little more or less beside other work."
