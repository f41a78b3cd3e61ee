// Package sums tells the rows of a table that sum up the others from those that stand for
// something.
package sums

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// Words of which such a row has one, and what may stand beside them.
var (
	words  = []string{"average", "averages", "avg", "mean", "median", "total", "totals", "subtotal", "sum", "grand", "minimum", "maximum", "min", "max", "count", "high", "low", "highest", "lowest", "std", "stdev", "deviation", "mode"}
	beside = []string{"of", "the", "all", "and", "price", "sale", "sales", "sold", "comps", "homes", "houses", "bid", "job", "amount", "labour", "labor", "materials", "due", "weighted", "adjusted", "standard", "dev", "wtd", "trimmed"}
)

// Named reports whether a row sums up the others by its name: it has such words alone, and
// numbers. An address has others: 12 High Street, Grand Avenue 4.
func Named(name string) bool {
	all := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	known := func(w string) bool { return slices.Contains(words, w) }
	return slices.ContainsFunc(all, known) && !slices.ContainsFunc(all, func(w string) bool {
		_, err := strconv.Atoi(w)
		return err != nil && !known(w) && !slices.Contains(beside, w)
	})
}

// Begins reports whether a name begins as that of a row which sums up others: Subtotal paint.
func Begins(name string) bool {
	first, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(name)), " ")
	return slices.Contains(words, strings.TrimRight(first, ":.,"))
}
