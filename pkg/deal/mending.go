package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/pricebook"
)

// How people tell a mend: before the name of a part, as in new wiring, or after it, as in
// sewer line replaced; and of a piece alone.
const (
	mendBefore  = `new|renew|replac\w+|rebuild\w*|relin\w+|remov\w+|treat|install|upgrade|encapsulate`
	mendAfter   = `replaced|replacement|replacing|rebuilt|rebuild|rebuilding|relin\w+|removed|removal|treated|treatment|installed|installation|upgraded|upgrade|put right|abate\w+|encapsulat\w+|remediat\w+|made safe|renewed|renewal|new$`
	pieceBefore = `|repair\w*|fix|mend|patch|brace|jack`
	pieceAfter  = `|repair\w*|fixed|mended|patched|braced|bracing|jacked`
)

// Between a mend and a part these tell that it is not the part that is mended.
var otherThing = pattern(`\b(?:for|on|onto|at|in|into|around|near|over|under|to|from|beside|inside|behind|inspect|look|check|test|clean|flush|sweep|camera|service|paint|cover|wrap)\b`)

// With one of these behind its name a part is still what is mended; with another, as in
// chimney flashing, it is not.
var stillIt = pattern(`^$|^\W*(?:[,;(&+/\d]|(?:and|with|in|at|to|from|of|by|under|behind|for|on|system|unit|throughout|complete|whole|everything|(?:the )?(?:house|home)|the whole|incl\w*|all)\b|(?:` + mendAfter + pieceAfter + `)\b)`)

// With one of these in its name an item of the price book goes over a part, looks at it or
// takes it out, and does not mend it.
var onlyTouches = pattern(`\b(?:paint\w*|stain(?:ed|ing)?|wash\w*|clean\w*|seal\w*|sweep|swept|look(?:ed)?|test\w*|inspect\w*|mask\w*|tear out|torn out|take out|off and on|protect\w*|cover(?:ed)?|rental)\b`)

// A paper about a mend is none.
var paper = pattern(`^\W*(?:permits?|quotes?|estimates?|bids?|reports?|inspection|look|tests?|surveys?|plans?|drawings?|clearance)\b`)

// pattern is compiled when it is first needed, which most deals do without.
func pattern(form string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(form) })
}

// mending is the work that mends a part of the house: items of the price book by their
// names, and how a line or an item of an own book tells of it.
type mending struct {
	items, names, said []string // names of the part; items and other words for them
	pieces             bool     // whether what mends a piece counts
}

// mendingOf is what mends a part of the house, with or without what mends a piece of it.
func mendingOf(c *pricebook.Check, pieces bool) mending {
	m := mending{names: slices.Concat([]string{c.Name}, c.Called), items: c.Mends(), pieces: pieces}
	if pieces {
		m.items = slices.Concat(m.items, c.Pieces)
	}
	m.said = slices.Concat(m.items, c.Said)
	return m
}

// toldIn reports whether a label tells of the mend. A name alone is money for the part.
func (m mending) toldIn(label string) bool {
	label = plainKey(label)
	plain := strings.ReplaceAll(label, ":", "")
	if !slices.ContainsFunc(slices.Concat(m.names, m.said), func(name string) bool { return strings.Contains(plain, plainKey(name)) }) {
		return false
	}
	_, work, _ := strings.Cut(label, ": ") // behind the trade
	if slices.Contains(m.names, label) || slices.Contains(m.names, work) {
		return true
	}
	before, after, names := mendBefore, mendAfter, anyOf(m.names)
	if m.pieces {
		before, after = before+pieceBefore, after+pieceAfter
	}
	for _, x := range regexp.MustCompile(`\b`+names+`(?:[\s,:]+(?:system|unit|line|damage|fully|all|is|to be))*[\s,:]+(?:`+after+`)\b(.*)`).FindAllStringSubmatch(label, -1) {
		if !paper().MatchString(x[1]) {
			return true
		}
	}
	forms := []string{`\b(?:` + before + `)\b([^,:;]*?)\b` + names}
	if len(m.said) > 0 {
		forms = append(forms, `([^,:;]*)\b`+anyOf(m.said))
	}
	for _, form := range forms {
		for _, x := range regexp.MustCompile(form+`\b(.*)`).FindAllStringSubmatch(label, -1) {
			if !otherThing().MatchString(x[1]) && stillIt().MatchString(x[2]) && !paper().MatchString(x[2]) {
				return true
			}
		}
	}
	return false
}

// anyOf matches any of some names, the longest there is, in the plural too, and across the colon behind
// a trade.
func anyOf(names []string) string {
	names = slices.SortedStableFunc(slices.Values(names), func(a, b string) int { return len(b) - len(a) })
	var out []string
	for _, name := range names {
		out = append(out, strings.ReplaceAll(regexp.QuoteMeta(plainKey(name)), " ", `[\s:]+`)+"s?")
	}
	return "(?:" + strings.Join(out, "|") + ")"
}
