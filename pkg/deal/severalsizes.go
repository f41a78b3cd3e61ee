package deal

import (
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// severalInOne refuses an entry that holds several sizes, or what another entry shares alone: each
// stands by itself.
func (r *reader) severalInOne(s scope, f *Field, all []*node, i int) bool {
	text := all[i].span
	if joint := strings.TrimSpace(text.text); i > 0 && strings.HasPrefix(strings.ToLower(joint), "sharing ") {
		r.say("bad-size", text.at, "%s has no size before %s", f.title(), diag.Quote(joint))("write what a rectangle shares behind it, without a comma, e.g.   size: [18' x 13', 9' x 7' sharing 9']")
		return true
	}
	if f.Key() == "closets" && isNone(text.text) {
		r.say("bad-size", text.at, "%s is %s", f.title(), diag.Quote(text.text))("leave the key out if there is none; else write it like   %s", f.example())
		return true
	}
	sizes := severalSizes(text.text)
	if n, err := quantity.ParseCount(text.text); f.Key() == "closets" && err == nil && n.IsPositive() {
		r.say("bad-size", text.at, "%s is %s, and no size", f.title(), diag.Quote(text.text))("write the size of each:   closets: [5' x 2', 4' x 2']")
		return true
	}
	if len(sizes) < 2 {
		return false
	}
	tell := r.say("bad-size", text.at, "%s: %s is %d sizes in one", f.title(), diag.Quote(text.text), len(sizes))
	listed := strings.Join(sizes, ", ")
	switch {
	case s.member.Set != "room":
		tell("write each by itself, named apart, e.g.   %s: %s   and   second %[1]s: %[3]s", s.member.Label, plainSize(sizes[0]), plainSize(sizes[1]))
	case len(all) > 1:
		tell("write each by itself:   %s", listed)
	case f.Key() == "size":
		tell("write a list in brackets, and what a later one shares with another behind it, as   9' x 7' sharing 7'   :   size: [%s]", listed)
	default:
		tell("write a list in brackets:   %s: [%s]", f.Key(), listed)
	}
	return true
}

// severalOf is a count before a size: 2 of 5' x 2', 2 x 5' x 2'.
var severalOf = pattern(`^\s*(\d) ?(?:of|[x×*]) ?(.+)$`)

// andBetween is what parts several sizes in one text.
var andBetween = pattern(`\s*[,;&+]\s*|\s+and\s+`)

// severalSizes are the sizes that a text holds, each with what it shares; none where some of it is no
// size.
func severalSizes(text string) (sizes []string) {
	if m := severalOf().FindStringSubmatch(text); m != nil && isSize(m[2]) {
		n, _ := strconv.Atoi(m[1])
		return slices.Repeat([]string{m[2]}, n)
	}
	for _, part := range andBetween().Split(text, -1) {
		switch {
		case isSize(part):
			sizes = append(sizes, part)
		case strings.HasPrefix(part, "sharing ") && len(sizes) > 1:
			sizes[len(sizes)-1] += " " + part
		default:
			return nil
		}
	}
	return sizes
}

// isSize reports whether a text is two lengths, with what may stand behind them.
func isSize(text string) bool {
	size, _, _ := strings.Cut(text, " ceiling ")
	_, err := quantity.ParseSize(plainSize(size))
	return err == nil
}

// severalAreas refuses several areas where one is taken, and says what they come to.
func (r *reader) severalAreas(f *Field, g *reading) bool {
	texts := andBetween().Split(g.node.text, -1)
	if g.node.shape == list {
		texts = nil
		for _, s := range g.words() {
			texts = append(texts, s.text)
		}
	}
	var sum decimal.Decimal
	for _, text := range texts {
		x, err := quantity.ParseArea(text)
		if err != nil {
			return false
		}
		sum = sum.Add(x.SquareFeet())
	}
	if len(texts) < 2 {
		return false
	}
	r.say("want-value", g.key.at, "%s is %d areas, and takes one", f.title(), len(texts))("write what they come to:   %s: %s sq ft", f.Key(), sum.Round(2))
	return true
}
