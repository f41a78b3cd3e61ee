// Package answer puts together what a bid needs to know: the deal worked out,
// the maximum offer, the break-evens, the mishaps most likely to break it, what was
// assumed and what to be careful about. It arranges what the readers and solvers
// give, and holds no arithmetic of the deal.
//
//	a, err := answer.Of(d)
//	fmt.Println(a.Verdict, a.Offer.Price)
package answer
