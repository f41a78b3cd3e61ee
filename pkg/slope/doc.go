// Package slope says by how much wanted lines of a deal change for each unit that an
// input changes, for all inputs at once, in one pass back over the deal's operations.
//
//	slopes, err := slope.Of(m, inputs, wanted) // by wanted line and input
//
// The slopes are those of the deal without rounding to the cent, in which what comes to the
// same but for cents, such as a hold's interest and a least interest of as many months, is
// the same. What counts whole things, such as extensions begun, has no slope between its
// steps. Just at a kink or a step, a slope is that to the right: the deal with the input a
// hair higher, with one month more where that starts one. An input for which 0 means that
// there is none, such as a cap, then has the slope that it has once it is there. What begins
// there so slowly that its own slope is 0, as the last draw of works that fade out, counts as
// not begun.
//
// Where a quotient has nothing to divide by, as a return on no cash, there is no slope: it
// is no number.
//
// An input that the deal does not give moves from its default, which stays tied to what
// it follows from. Slopes are float64 and inform; they decide nothing.
package slope
