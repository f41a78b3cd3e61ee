package comps

import (
	"slices"
	"strings"
	"unicode"
)

// Flags are what makes a sale doubtful.
type Flags uint8

// The doubts. A sale with any is set aside or passed over unless it is asked for.
const (
	Duplicate Flags = 1 << iota // the same sale stands in the list before
	Future                      // dated after today
	NotOpen                     // its terms speak against an open sale
	Token                       // a price so low that it is hardly one
	Outlier                     // far from what its like sold for
	NoNet                       // what its seller gave back takes up its price
)

var flagWords = []struct {
	flag Flags
	word string
}{
	{Duplicate, "the same sale stands in the list already"},
	{Future, "dated in the future"},
	{NotOpen, "its terms speak against an open sale at arm's length"},
	{Token, "its price is hardly one"},
	{NoNet, "its concessions take up its price"},
	{Outlier, "its price is far from what its like sold for"},
}

// Has reports whether any of the flags given is set.
func (f Flags) Has(any Flags) bool { return f&any != 0 }

// String says the doubts in words.
func (f Flags) String() string {
	var out []string
	for _, w := range flagWords {
		if f.Has(w.flag) {
			out = append(out, w.word)
		}
	}
	return strings.Join(out, "; ")
}

// against are beginnings of words in the terms of a sale that speak against arm's length,
// those with a blank behind them whole words (common practice, no source).
var against = []string{
	"foreclos", "sheriff", "auction", "quit", "qcd ", "q c ", "in lieu", "bank", "reo ", "hud ", "short sale", "distress",
	"family", "relative", "related", "spous", "interspous", "divorc", "parent", "gift", "love and affection", "inherit", "estate", "probate", "executor", "administrator", "trust",
	"invalid", "unqualified", "not qualified", "not valid", "non arm", "not arm", "not at arm", "partial", "tax sale", "tax deed", "exempt",
}

// harmless are words that hold one of those and do not speak against it.
var harmless = strings.NewReplacer(
	" real estate owned", " reo", " real estate", " ", " single family", " ", " multi family", " ", " one family", " ", " two family", " ", " 1 family", " ", " 2 family", " ", " not related", " ",
)

// notOpen reports whether the terms of a sale, in lower case, speak against arm's length.
func notOpen(terms string) bool {
	if terms == "no" || terms == "u" {
		return true
	}
	words := strings.FieldsFunc(terms, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	said := harmless.Replace(" " + strings.Join(words, " ") + " ")
	return slices.ContainsFunc(against, func(w string) bool { return strings.Contains(said, " "+w) })
}
