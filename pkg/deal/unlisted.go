package deal

import (
	"math"

	"ledgerboard/pkg/quantity"
)

// noteUnlisted notes of which rooms the house is said to have more than the file lists, where it
// lists any: one that needs no work is left out with good reason, one forgotten is not.
func (r *reader) noteUnlisted() {
	house := r.entry("house.").Sold().House
	for _, of := range []struct {
		kind string
		has  float64
	}{{"bedroom", house.Bedrooms.Value}, {"bath", math.Ceil(house.FullBaths.Value) + house.HalfBaths.Value}} {
		listed := 0
		for _, kind := range r.roomKinds {
			if kind == of.kind {
				listed++
			}
		}
		if has := int(of.has); listed > 0 && has > listed {
			r.deal.Unlisted = append(r.deal.Unlisted, quantity.Counted(has-listed, of.kind))
		}
	}
}
