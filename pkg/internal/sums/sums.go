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
	all := wordsOf(name)
	known := func(w string) bool { return slices.Contains(words, w) }
	return slices.ContainsFunc(all, known) && !slices.ContainsFunc(all, func(w string) bool {
		return !number(w) && !known(w) && !slices.Contains(beside, w)
	})
}

// streets are those of the words that are also names of streets.
var streets = []string{"grand", "high", "low", "max", "min", "count", "sum", "mode"}

// MayBeOne reports whether such a name may yet be that of one thing, which other cells of its
// row then tell: a house by its number and street, 412 Grand, or the high and the low of
// three sales.
func MayBeOne(name string) bool {
	all := wordsOf(name)
	switch {
	case len(all) == 1:
		return all[0] == "high" || all[0] == "low"
	case len(all) == 0 || !number(all[0]):
		return false
	}
	return !slices.ContainsFunc(all, func(w string) bool { return !number(w) && !slices.Contains(streets, w) })
}

func wordsOf(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

func number(w string) bool {
	_, err := strconv.Atoi(w)
	return err == nil
}

// Begins reports whether a name begins as that of a row which sums up others: Subtotal paint.
func Begins(name string) bool {
	first, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(name)), " ")
	return slices.Contains(words, strings.TrimRight(first, ":.,"))
}
