// Package best finds the choice of options, room by room, with the most profit under
// limits on cash, weeks and own hours.
//
//	d, _ := deal.ReadWith(deal.Options{AllOptions: true}, name, text)
//	h, err := best.New(d)
//	found, err := h.Find(best.Limits{})
//
// Each choice that may be the answer is worked out exactly, by the lines of the model
// and with a cut list of its own, to the cent as if the file were read with that scope.
// What need not be is left out by bounds that enclose the model: the lines from a few
// totals of the work to profit and cash are enclosed by planes over all that a choice
// may come to (package bound), and these totals are at least what parts of packs, parts
// of sticks and part of the work on the whole house come to. Nothing is assumed of the
// shape of a deal, such as that dearer work cannot lower what a loan costs: it can.
package best
