package deal

import (
	"math"

	"ledgerboard/pkg/quantity"
)

// noteUnlisted notes of which rooms the house is said to have more than the file lists, where it
// lists any: one that needs no work is left out with good reason, one forgotten is not.
func (r *reader) noteUnlisted() {
	for _, of := range []string{"bedroom", "bath"} {
		listed := 0
		for _, kind := range r.roomKinds {
			if kind == of {
				listed++
			}
		}
		if has, _ := r.houseHas(of); listed > 0 && has > listed {
			r.deal.Unlisted = append(r.deal.Unlisted, quantity.Counted(has-listed, of))
		}
	}
}

// houseHas is how many rooms of a kind the file says of the house when the work is done, and whether it
// does; a half bath is one too.
func (r *reader) houseHas(kind string) (n int, said bool) {
	house := r.entry("house.").Sold().House
	switch kind {
	case "bedroom":
		return int(house.Bedrooms.Value), house.Bedrooms.Known
	case "bath":
		return int(math.Ceil(house.FullBaths.Value) + house.HalfBaths.Value), house.FullBaths.Known
	}
	return 0, false
}
