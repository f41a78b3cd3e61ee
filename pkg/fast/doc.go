// Package fast works some lines of a deal out in float64, again and again while a few
// cells vary, without allocating. It is for trials by the million and for searches that
// need to know nearly what is worth a closer look; the exact reader decides.
//
// A Question is asked over many trials at once. It is written out for each number of
// months that a trial comes to, with what is known there settled, and carried out a block
// of trials at a time. Several workers may share one; a trial comes out the same, to the
// last bit, whatever trials stand beside it and whoever works it out.
//
//	q, err := fast.Ask(m, axes, wanted)
//	err = q.Worker().Run(in, out) // in by axis and trial, out by wanted cell and trial
//
// Money is rounded to the cent as in the exact reader. A trial lies within 1e-9 of the
// exact value: of 1 in its unit, of the value, or for dollars of the largest sum of the
// deal. That does not hold where a comparison or a rounding turns on less than float64
// can tell: values up to 1e-9 apart count as equal, and half a cent less 5e-10 dollars, as
// a whole number with as much, may be rounded either way. There a trial may part from the
// exact one by a step of the deal, as it would if an input were that much different.
//
// A Program works a few lines without months out for a search, anew only what has moved.
package fast
