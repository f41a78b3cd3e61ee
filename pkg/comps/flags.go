package comps

import (
	"slices"
	"strings"
	"unicode"

	"ledgerboard/pkg/diag"
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
	NotSold                     // its terms or its address say that it is offered, and not sold yet
	Again                       // the house stands in the list at the same price some days off
)

var flagWords = []struct {
	flag Flags
	word string
}{
	{Duplicate, "the same sale stands in the list already"},
	{Again, "the same house at the same price stands in the list within 30 days: likely one sale, recorded twice"},
	{Future, "dated in the future"},
	{NotSold, "it is said to be offered, not sold"},
	{NotOpen, "its terms speak against an open sale at arm's length"},
	{Token, "its price is hardly one"},
	{NoNet, "its concessions take up its price"},
	{Outlier, "its price is far from what its like sold for"},
}

// Has reports whether any of the flags given is set.
func (f Flags) Has(any Flags) bool { return f&any != 0 }

// String says the doubts in words.
func (f Flags) String() string { return f.words("") }

// words says the doubts, and of how it was sold what its list says.
func (f Flags) words(said string) string {
	var out []string
	for _, w := range flagWords {
		switch {
		case !f.Has(w.flag):
		case said != "" && w.flag.Has(NotOpen|NotSold):
			out = append(out, w.word+" ("+diag.Quote(said)+")")
		default:
			out = append(out, w.word)
		}
	}
	return strings.Join(out, "; ")
}

// Doubts says in words what makes the sale doubtful, with what its list says of how it was sold
// where that does; "" where nothing does.
func (s *Sold) Doubts() string {
	if s.Terms == "" || termsFlag(s.Terms) == 0 {
		return s.Flags.String()
	}
	return s.Flags.words(strings.TrimSuffix(s.Terms, saidNotSold))
}

// against are beginnings of words in the terms of a sale that speak against arm's length,
// those with a blank behind them whole words (common practice, no source).
var against = []string{
	"foreclos", "preforeclos", "pre foreclos", "lender owned", "repo ", "reposs", "sheriff", "auction", "quit", "td ", "qcd ", "qc ", "q c ", "in lieu", "bank", "reo ", "hud ", "short sale", "distress",
	"family", "relative", "related", "spous", "interspous", "divorc", "parent", "gift", "love and affection", "love affection", "inherit", "heir",
	"mother", "father", "son ", "daughter", "brother", "sister", "wife", "husband", "grandson", "granddaughter", "grandpar", "uncle", "aunt ", "nephew", "niece", "cousin", "sibling", "in law", "stepson", "stepdaughter", "stepmother", "stepfather", "stepbrother", "stepsister", "grandma", "grandpa", "executrix", "intrafamily", "guardian", "conservator", "land only", "vacant land", "vacant lot", "tear down", "teardown", "fire damage", "fire damaged", "assignment of contract", "wholesale",
	"half interest", "1 2 int", "contract for deed", "land contract", "lease option", "undivided", "fractional", "parcels", "multi parcel", "multiparcel", "package", "bulk", "portfolio",
	"transfer on death", "fiduciary", "estate", "probate", "executor", "administrator", "trust",
	"invalid", "unqualified", "disqualif", "nonqualif", "non qualif", "not qualif", "not a qualif", "not valid", "not a valid", "nonarm", "nal ", "non arm", "not arm", "not an arm", "not at arm", "partial", "nominal", "tax sale", "tax deed", "exempt",
}

// harmless are words that hold one of those and do not speak against it.
var harmless = strings.NewReplacer(
	" real estate owned", " reo", " real estate", " ", " single family", " ", " multi family", " ", " one family", " ", " two family", " ", " 1 family", " ", " 2 family", " ", " three family", " ", " 3 family", " ", " four family", " ", " 4 family", " ", " not related", " ",
	" estates of ", " estate of ", " estates ", " ", // of a street or a quarter
	" bank financing", " ", " bank financed", " ", " bank loan", " ", " bank mortgage", " ", // how the buyer paid
	" husband and wife", " ", " husband wife", " ", // how they hold it
)

// Words of what terms say that a sale was not, before it, between two such things, and
// behind it: "not a foreclosure or short sale", "REO: no".
var (
	deniers = []string{"not", "non", "no", "never", "neither", "nor", "without"}
	joiners = []string{"or", "nor", "and"}
	between = []string{"a", "an", "the", "any", "in", "of"}
	behind  = []string{"no", "n", "none", "false"}
)

// speaks is how many words from here on say one thing against arm's length, 0 for none.
func speaks(words []string) int {
	said := strings.Join(words[:min(3, len(words))], " ") + " "
	most := 0
	for _, a := range against {
		if strings.HasPrefix(said, a) {
			most = max(most, len(strings.Fields(a)))
		}
	}
	return most
}

// denied takes out of terms what they say that the sale was not; answered, if a sign stands
// in them as before an answer.
func denied(words []string, answered bool) (out []string) {
	if n := len(words); answered && n > 1 && slices.Contains(behind, words[n-1]) {
		for i := n - 2; i >= 0; i-- {
			if speaks(words[i:]) > 0 {
				return denied(words[:i], false)
			}
		}
		if strings.HasPrefix(words[0], "arm") || strings.HasPrefix(words[0], "qualif") || words[0] == "valid" {
			return append(slices.Clone(words), "not", "valid")
		}
	}
	for i := 0; i < len(words); i++ {
		n := 0
		if slices.Contains(deniers, words[i]) {
			n = deniedFrom(words[i+1:])
		}
		if n == 0 {
			out = append(out, words[i])
		}
		i += n
	}
	return out
}

// deniedFrom is how many words behind a denial it takes in: what speaks against the sale,
// and more of it behind "or".
func deniedFrom(words []string) int {
	at := 0
	for {
		next := at
		if at > 0 {
			if next >= len(words) || !slices.Contains(joiners, words[next]) {
				return at
			}
			next++
		}
		for next < len(words) && slices.Contains(between, words[next]) && speaks(words[next:]) == 0 {
			next++
		}
		if next >= len(words) {
			return at
		}
		n := speaks(words[next:])
		if n == 0 {
			return at
		}
		at = next + n
	}
}

// Words of what is offered and not sold yet, and what may stand beside them where nothing
// else is said: "active listing", but not "never listed" or "listed 14 days".
var (
	offered       = []string{"pending", "active", "listing", "listed", "list", "asking", "estimate", "estimated", "contingent", "expired", "withdrawn", "cancelled", "canceled"}
	besideOffered = []string{"under", "contract", "for", "sale", "price", "still", "now", "currently", "only", "is", "on", "the", "market", "in", "escrow", "offer", "status", "online", "value"}
)

// onOffer reports whether words say that the house is offered, and nothing else.
func onOffer(words []string) bool {
	said := strings.Join(words, " ")
	status := func(w string) bool { return slices.Contains(offered, w) }
	return (slices.ContainsFunc(words, status) || strings.Contains(said, "under contract") || strings.Contains(said, "for sale") || strings.Contains(said, "on the market")) &&
		!slices.ContainsFunc(words, func(w string) bool { return !status(w) && !slices.Contains(besideOffered, w) })
}

// unclosed reports whether words say that the sale is still to be closed.
func unclosed(words []string) bool {
	said := " " + strings.Join(words, " ") + " "
	return strings.Contains(said, " not closed ") || strings.Contains(said, " not yet closed ") || strings.Contains(said, " not yet sold ") || strings.Contains(said, " not sold yet ") ||
		strings.HasSuffix(said, " not sold ")
}

// labelFlag is what stands in brackets behind an address and says that the house is only offered:
// 12 Elm St (active).
func labelFlag(label string) Flags {
	at := strings.LastIndexByte(label, '(')
	if at < 0 || !strings.HasSuffix(label, ")") {
		return 0
	}
	return termsFlag(strings.ToLower(label[at+1:len(label)-1])) & NotSold
}

// termsFlag is what the terms of a sale, in lower case, make doubtful about it, or nothing.
func termsFlag(terms string) Flags {
	holds := func(said string, words []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(said, " "+w) })
	}
	said, open, listed := " ", false, false
	for _, part := range strings.FieldsFunc(terms, func(r rune) bool { return r == ';' || r == ',' }) {
		words := strings.FieldsFunc(part, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		for _, w := range denied(words, strings.ContainsAny(part, ":?=-")) {
			said += w + " "
		}
		open = open || strings.Contains(part, "not ") && unclosed(words) || slices.Contains(words, "unsold")
		listed = listed || onOffer(words)
	}
	switch {
	case slices.Contains([]string{"no", "n", "u"}, terms) || holds(harmless.Replace(said), against):
		return NotOpen
	case open, shortlyOffered(terms), listed && !holds(said, []string{"sold ", "closed "}):
		return NotSold
	}
	return 0
}
