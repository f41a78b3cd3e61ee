// Package choose picks one option for each room of a house so that the whole is
// worth most within limits on cash, hours or time. It knows nothing of rooms but
// their options, nor of money but whole cents.
//
// Where worths and uses add up, [Best] is enough:
//
//	rooms := [][]choose.Option{
//		{{}, {Value: 350000, Uses: []int64{180000}}},
//		{{}, {Value: 1550000, Uses: []int64{950000}}},
//	}
//	choice, value, ok := choose.Best(rooms, []int64{1000000})
//
// Where they do not, since products are bought in packs, a loan is capped or the
// work takes longer, [Search] takes a [Problem]: the truth about a whole choice, and
// a bound on what a partial one can still reach. The truth is dear and the bound is
// cheap, so the search works out as few whole choices as the bound allows. Its
// answer equals trying every choice if the bound is valid; one that is not is
// reported where it shows. [Additive] is a bound that many problems can use.
//
// The work is limited by counts, not by a clock; a [Result] says what was proved.
// It does not weigh risks, and it does not guess: no choice within the limits is an
// answer like any other.
package choose
