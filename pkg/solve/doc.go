// Package solve answers questions by search: how high a bid may go, how low a
// sale, how far an overrun, how late a sale, and the rates of return. It asks
// readers and holds no arithmetic of the deal itself.
//
// A search never assumes that profit falls smoothly: it narrows by bounds that
// hold over whole ranges, and decides every close call exactly.
package solve
