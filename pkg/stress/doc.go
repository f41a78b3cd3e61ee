// Package stress says how bad a deal can get, and what matters most: a grid of two things
// that go wrong, bad days side by side, and a ranking of what may come out otherwise.
//
// Loans stay sized as planned once they are closed; only what is known before the closing,
// such as the price or the lender's value, sizes them anew. A maximum offer always does.
//
//	p, err := stress.NewPlan(d, values)
//	grid, err := p.Grid(across, down)
package stress
