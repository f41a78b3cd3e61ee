// Package quantity reads what people write at a kitchen table ($285k, 7.5%,
// 2 1/2 months, May 14, 2026, 8'2", 12 x 14 ft) into exact values, and prints it back.
//
//	price, err := quantity.ParseMoney("$285k") // 285000
//
// A text that could be meant in two ways is refused, never guessed: "0.5" is no
// share (half a percent, or a half?), "285.000" is no price, "14/5/2026" no date,
// "12 x 14" no size.
// Every refusal is an *Error that says what was found, where, and what would do.
// Upper and lower case do not matter, nor do extra spaces between words; texts over
// 64 characters and numbers over 15 digits before the point are refused everywhere.
//
// Whether a value makes sense in its place (a negative price, a rate of 1200%) is
// for the caller to judge. Lengths of time, hours, and all that is measured with a
// tape are never negative, but may be zero.
package quantity
