package comps

import "strings"

// Flags are what makes a sale doubtful.
type Flags uint8

// The doubts. A sale with any is set aside or passed over unless it is asked for.
const (
	Duplicate Flags = 1 << iota // the same sale stands in the list before
	Future                      // dated after today
	NotOpen                     // its terms speak against an open sale
	Token                       // a price so low that it is hardly one
	Outlier                     // far from what its like sold for
)

var flagWords = []struct {
	flag Flags
	word string
}{
	{Duplicate, "the same sale stands in the list already"},
	{Future, "dated in the future"},
	{NotOpen, "its terms speak against an open sale at arm's length"},
	{Token, "its price is hardly one"},
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

// against are words in the terms of a sale that speak against arm's length (common
// practice, no source).
var against = []string{
	"foreclos", "sheriff", "auction", "quit", "bank owned", "reo", "short sale", "family", "relative",
	"gift", "estate", "trust", "invalid", "unqualified", "not valid", "non-arm", "not arm", "distress",
	"partial", "related", "tax sale", "exempt",
}

// notOpen reports whether the terms of a sale speak against arm's length.
func notOpen(terms string) bool {
	if terms == "no" || terms == "u" {
		return true
	}
	for _, w := range against {
		if i := strings.Index(terms, w); i >= 0 && !(w == "reo" && strings.Contains(terms, "reor")) {
			return true
		}
	}
	return false
}
