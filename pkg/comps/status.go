package comps

import (
	"slices"
	"strings"
	"unicode"

	"ledgerboard/pkg/diag"
)

// What lists write for where a sale stands, in full and in short, words parted by a blank;
// common practice, no source.
var (
	closedWords = []string{"sold", "sld", "s", "closed", "clsd", "cld", "close", "settled", "recorded", "transferred", "completed", "final",
		"valid", "qualified", "q", "verified", "confirmed", "arms length", "arm s length", "yes", "y"}
	offeredWords = []string{"act", "pnd", "pend", "uc", "u c", "under agreement", "ctg", "cont", "contg", "exp", "wth", "wd", "wdn", "withdrn", "can", "canc", "cncl", "bom", "back on market", "coming soon", "cs",
		"new", "new listing", "price change", "price reduced", "off market", "temp off market", "temporarily off market", "tom", "hold", "on hold", "accepted offer", "accepting backups", "option pending",
		"sale pending", "pending sale", "pending sold", "available", "avail", "open", "delisted", "not sold", "unsold", "leased", "rented", "lease", "rental"}
)

// saidNotSold is added to a status in short, whose word may mean another thing in terms.
const saidNotSold = "; not sold"

var statusDoubt = cellDoubt{func(text string) string {
	return diag.Quote(text) + " says neither that it sold nor that it did not, so it counts as sold"
}, "Sold, or Pending or the like for what did not close; strike a sale that did not"}

// otherwise are those that say something else where no status stands: a county's WD is a warranty
// deed, its CS a sale for cash.
var otherwise = []string{"open", "new", "hold", "wd", "cs"}

// shortlyOffered reports whether words are those that agents write in short for what is offered.
func shortlyOffered(said string) bool {
	said = evenedOut(said)
	return slices.Contains(offeredWords, said) && !slices.Contains(otherwise, said)
}

// evenedOut is what is said by its letters and digits alone, in lower case.
func evenedOut(said string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(said), func(x rune) bool { return !unicode.IsLetter(x) && !unicode.IsDigit(x) }), " ")
}

// status reads where a sale stands: one that is only offered is told by its words, or by what
// agents write in short.
func (r *row) status(s string) error {
	w := r.word(s)
	said := evenedOut(w)
	switch {
	case slices.Contains(offeredWords, said):
		w += saidNotSold
	case termsFlag(w) != 0: // what it says in full
	case slices.ContainsFunc(closedWords, func(c string) bool { return said == c || strings.HasPrefix(said, c+" ") }):
	default:
		r.doubt = &statusDoubt
	}
	r.alsoTerms(w)
	return nil
}
