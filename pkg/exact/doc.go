// Package exact works out the lines of a deal in decimals: cents at every named
// money line, at least 34 significant digits elsewhere. It is the truth that
// every other reader is tested against.
//
//	values, err := exact.Evaluate(m)
//	profit := values.Of(m.Find(m.Root, "profit"))
package exact
