// Package report arranges an answer for people and programs: the page of a bid,
// the months of cash, and the same as JSON. It does no arithmetic beyond turning
// a sign round; every figure is a line of the model or a result of a search.
package report
