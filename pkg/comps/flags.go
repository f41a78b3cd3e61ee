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
	NotSold                     // its terms say that it is offered, and not sold yet
)

var flagWords = []struct {
	flag Flags
	word string
}{
	{Duplicate, "the same sale stands in the list already"},
	{Future, "dated in the future"},
	{NotSold, "its terms say that it is offered, not sold"},
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
	"foreclos", "sheriff", "auction", "quit", "qcd ", "qc ", "q c ", "in lieu", "bank", "reo ", "hud ", "short sale", "distress",
	"family", "relative", "related", "spous", "interspous", "divorc", "parent", "gift", "love and affection", "love affection", "inherit", "heir",
	"mother", "father", "son ", "daughter", "brother", "sister", "wife", "husband", "grandson", "granddaughter", "grandpar", "uncle", "aunt ", "nephew", "niece", "cousin",
	"half interest", "1 2 interest", "undivided", "fractional", "parcels", "multi parcel", "multiparcel", "package", "bulk", "portfolio",
	"transfer on death", "fiduciary", "estate", "probate", "executor", "administrator", "trust",
	"invalid", "unqualified", "not qualified", "not valid", "non arm", "not arm", "not at arm", "partial", "tax sale", "tax deed", "exempt",
}

// harmless are words that hold one of those and do not speak against it.
var harmless = strings.NewReplacer(
	" real estate owned", " reo", " real estate", " ", " single family", " ", " multi family", " ", " one family", " ", " two family", " ", " 1 family", " ", " 2 family", " ", " not related", " ",
	" estates of ", " estate of ", " estates ", " ", // of a street or a quarter
	" husband and wife", " ", " husband wife", " ", // how they hold it
)

// denied takes out of terms what they say that the sale was not: "not a foreclosure".
func denied(words []string) (out []string) {
	begins := func(w string) bool {
		return slices.ContainsFunc(against, func(a string) bool { return strings.HasPrefix(w+" ", a) })
	}
	for i := 0; i < len(words); i++ {
		next := i + 1
		if next < len(words) && slices.Contains([]string{"a", "an", "the"}, words[next]) {
			next++
		}
		if slices.Contains([]string{"not", "non", "no"}, words[i]) && next < len(words) && begins(words[next]) {
			i = next
			continue
		}
		out = append(out, words[i])
	}
	return out
}

// offered are words of what is not sold yet, unless the terms say sold or closed as well.
var offered = []string{"pending ", "active ", "listing ", "listed ", "asking ", "under contract ", "contingent ", "expired ", "withdrawn ", "cancelled ", "canceled ", "for sale "}

// termsFlag is what the terms of a sale, in lower case, make doubtful about it, or nothing.
func termsFlag(terms string) Flags {
	holds := func(said string, words []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(said, " "+w) })
	}
	said := " "
	for _, part := range strings.FieldsFunc(terms, func(r rune) bool { return r == ';' || r == ',' }) {
		words := strings.FieldsFunc(part, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		for _, w := range denied(words) {
			said += w + " "
		}
	}
	switch {
	case terms == "no" || terms == "u" || holds(harmless.Replace(said), against):
		return NotOpen
	case holds(said, offered) && !holds(said, []string{"sold ", "closed "}):
		return NotSold
	}
	return 0
}
