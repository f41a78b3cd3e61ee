// Package odds draws what is uncertain, many times, and says what comes of it: how likely,
// how bad, and how sure that is. It knows nothing of deals.
//
// A Spread is how far a figure may come out from what is likely. Spreads are drawn
// together, tied by rank correlations, in blocks of trials; a block depends on the seed
// and its number alone, so that the same seed gives the same estimates to the last bit
// whatever the number of workers. Memory does not grow with the number of trials.
//
//	value, err := odds.PERT(odds.OneInTen, 338_000, 359_000, 372_000)
//	ties, err := odds.Tie(2, []odds.Rank{{A: 0, B: 1, Rho: -0.3}})
//	found, err := odds.Run(ctx, odds.Plan{Spreads: []odds.Spread{value, delay}, Ties: ties, ...})
package odds
