// Package flat writes out what a question needs of a deal as a plain list of float64
// operations, for readers that carry the same list out many times.
//
// The months are written out too: every line by month becomes one value for each month,
// and the list is made anew for each number of months that a deal may take. What is
// known in a month, such as whether it is the month of the sale, is then settled while
// the list is made, and what does not matter is left out. No operation of the list looks
// along the months or over a set.
package flat
