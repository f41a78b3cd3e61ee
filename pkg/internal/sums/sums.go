// Package sums tells the rows of a table that sum up the others from those that stand for
// something.
package sums

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// Words that such a row begins with, and what may stand beside them.
var (
	words  = []string{"average", "averages", "avg", "mean", "median", "total", "totals", "subtotal", "sum", "grand", "minimum", "maximum", "min", "max", "count", "high", "low", "highest", "lowest"}
	beside = []string{"of", "the", "all", "and", "price", "sale", "sales", "sold", "comps", "homes", "houses", "bid", "job", "amount", "labour", "labor", "materials", "due"}
)

// Named reports whether a row sums up the others by its name: it has such words alone, and
// numbers. An address has others: 12 High Street, Grand Avenue 4.
func Named(name string) bool {
	all := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return len(all) > 0 && slices.Contains(words, all[0]) && !slices.ContainsFunc(all[1:], func(w string) bool {
		_, err := strconv.Atoi(w)
		return err != nil && !slices.Contains(words, w) && !slices.Contains(beside, w)
	})
}
