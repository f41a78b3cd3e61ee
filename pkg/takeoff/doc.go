// Package takeoff turns what was measured in a house into what is bought. It
// holds the cut list: which sticks of trim to buy, and which pieces to cut from
// each, so that the sticks cost least.
//
//	pieces := []takeoff.Piece{{Length: 90 * in, ID: "hall"}, {Length: 48 * in, ID: "bath"}}
//	stock := []takeoff.Stock{{Length: 96 * in, Price: 850}, {Length: 144 * in, Price: 1290}}
//	plan, err := takeoff.CutList(pieces, stock, in/8)
//
// Every length is a whole number of units of 1/[PerInch] inch, every price of
// cents. The saw takes its kerf of each piece; a stick counts one kerf longer, so
// that pieces which fill a stick need none after the last.
//
// A [Plan] says what no plan could cost less than, and why. Jobs of up to some 25
// pieces are nearly always proved cheapest; larger ones are proved or say by how
// many cents they may miss. Work is limited by a count of steps, not by a clock,
// and the order of pieces and stock plays no part, so equal jobs give equal plans
// on every machine.
//
// It refuses to guess: a piece longer than the longest stick is an error, since
// where to join is the carpenter's choice; [Split] makes the usual one. Mitres,
// grain and defects are not known to it.
package takeoff
