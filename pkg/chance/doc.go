// Package chance says how a deal may come out: which of its inputs vary and how far, what
// comes of it in thousands of trials, and the offer that holds in most of them.
//
// The ranges are those of the deal file; what it does not say of the usual causes of
// trouble, which are the sale, the works and the time both take, is common practice without
// a source, and marked as assumed.
//
//	ranges, err := chance.Ranges(d)
package chance
