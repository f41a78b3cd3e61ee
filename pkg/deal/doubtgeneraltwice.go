package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// doubtGeneralTwice doubts general lines that name a trade, a piece of work or a room, and nothing else,
// that rooms price too. What goes by the month is a rent or a bill; permits and containers have doubts of
// their own.
func (r *reader) doubtGeneralTwice(works []*work) {
	for _, m := range r.deal.Root.In("general_fee") {
		name := plainKey(m.Label)
		line, known := r.worked(m, "amount")
		if v, once := m.Given.Look("fixed"); !once || v.Number.IsZero() || !known || !line.IsPositive() || pricebook.IsPermit(name) || ofTheWhole(name) != "" || container().MatchString(m.Label) {
			continue
		}
		same, whole := r.ofAPlace(m.Label, works)
		if len(same) == 0 {
			same = namedBy(m.Label, works)
		}
		if sum := r.tradePrice(same...); !sum.IsPositive() || !whole && sum.LessThan(line.Mul(smallBeside)) {
			continue
		}
		r.say("trade-twice", m.Pos, "%s, a general line, is of what rooms price too: %s", diag.Quote(m.Label), r.largest(same))("take out of one what the other holds; if it is other work, write it under   lines   with   apart: yes")
	}
}

// namedBy is the work that the words of a line name: that of a trade, or of what it makes, by a single
// word, or else of an item that has all of them but for those that it is new.
func namedBy(label string, works []*work) (out []*work) {
	words := slices.DeleteFunc(strings.Fields(strings.ReplaceAll(plainKey(label), "-", " ")), func(word string) bool { return slices.Contains(doneOver, word) })
	for _, w := range works {
		theirs := strings.Fields(strings.ReplaceAll(plainKey(w.item.Name), "-", " "))
		foreign := func(word string) bool {
			return !slices.Contains(theirs, word) && !slices.Contains(theirs, strings.TrimSuffix(word, "s"))
		}
		switch {
		case len(words) == 1 && (pricebook.OfTrade(words[0], w.item.Trade) || pricebook.IsMade(words[0], w.item)),
			len(words) > 1 && !slices.ContainsFunc(words, foreign):
			out = append(out, w)
		}
	}
	return out
}
