// Package diag holds what can be said about a user's file: a mistake or a doubt,
// its place, what was found there and what would do instead.
//
// Mistakes are values. A reader adds all it finds to a List, sorts it and hands
// it on; Render prints it with the line of the file and a caret under the word
// that is meant:
//
//	house.yaml:12:1: error: unknown key "prise"
//	  12 | prise: 285k
//	     | ^^^^^
//	  hint: did you mean "price"?
//
// The package reads no files, knows no kinds of mistakes and uses no colour.
package diag
