// Package formula is the small language in which the lines of the deal are
// written: numbers with units, names, + - * /, comparisons, and, or, and the
// words of the operator table such as min, cents, prior and total.
//
// It parses text into a tree, prints a tree back as text, and holds the one
// table of operators: what each is called, how many values it takes, its exact
// rule, its rule over a range, its unit and its words. It knows nothing of
// deals: names are looked up by package model.
//
//	tree, err := formula.Parse(`cents(max(0, share * price - credit))`)
package formula
