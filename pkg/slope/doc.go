// Package slope says by how much wanted lines of a deal change for each unit that an
// input changes, for all inputs at once, in one pass back over the deal's operations.
//
//	slopes, err := slope.Of(m, inputs, wanted) // by wanted line and input
//
// Rounding to the cent has the slope of what it rounds. What counts whole things, such as
// extensions begun, has none between its steps. Just at a kink or a step, a slope is that
// to the right: the deal with the input a hair higher, with one month more where that
// starts one. An input for which 0 means that there is none, such as a cap, then has the
// slope that it has once it is there.
//
// Where a quotient has nothing to divide by, as a return on no cash, there is no slope: it
// is no number.
//
// An input that the deal does not give moves from its default, which stays tied to what
// it follows from. Slopes are float64 and inform; they decide nothing.
package slope
