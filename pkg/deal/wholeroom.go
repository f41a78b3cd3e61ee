package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/pricebook"
)

// Words of a line that say how a place is done over, beside those for all of the work; and words of
// what rooms are called that tell of none by themselves.
var (
	doneOver   = []string{"facelift", "finish", "it", "makeover", "new", "redo", "redone", "refit", "refresh", "revamp", "update", "updated", "upgrade"}
	saysNoRoom = []string{"and", "back", "big", "first", "floor", "front", "large", "level", "lower", "main", "one", "other", "rear", "second", "small", "spare", "three", "two", "upper", "upstairs", "downstairs"}
)

// placesOf are trades that are called by the place that they make.
var placesOf = []string{"deck"}

// placeWords are the words of a label, each as rooms are called.
func placeWords(label string) []string {
	words := strings.FieldsFunc(plainKey(label), func(c rune) bool { return strings.ContainsRune(" :,&+/()-", c) })
	for i, word := range words {
		word = roomWord(word)
		if one, many := strings.CutSuffix(word, "s"); many && len(one) >= 4 && !strings.HasSuffix(one, "s") {
			word = one
		}
		words[i] = word
	}
	return words
}

// ofAPlace is the chosen work of rooms that a line names as a whole, by nothing but words of what they
// are called and of all the work there, or that of a deck; nothing where it names a smaller thing. A
// whole place is said where that is much of it whatever the line comes to.
func (r *reader) ofAPlace(label string, works []*work) (out []*work, whole bool) {
	words := slices.DeleteFunc(placeWords(label), func(word string) bool {
		as := func(of string) bool { return of == word || of == word+"s" }
		return slices.ContainsFunc(slices.Concat(besideWhole, doneOver), as) || slices.ContainsFunc(wholeWords, func(x wholeOf) bool { return slices.ContainsFunc(x.words, as) && word != "room" })
	})
	if !slices.ContainsFunc(words, func(word string) bool { return word != "room" && !slices.Contains(saysNoRoom, word) }) {
		return nil, false
	}
	var called []*plan
	exact := false // a hall, where there is a hall bath too
	for _, p := range r.chosenPlans() {
		label := placeWords(p.room.Label)
		in := func(word string) bool { return word == "room" || slices.Contains(label, word) }
		if slices.ContainsFunc(words, func(word string) bool { return !in(word) }) {
			continue
		}
		switch same := slices.Equal(words, label); {
		case same && !exact:
			called, exact = []*plan{p}, true
		case same == exact:
			called = append(called, p)
		}
	}
	for _, p := range called {
		out = append(out, p.works...)
	}
	if len(out) == 0 && len(words) == 1 && slices.ContainsFunc(placesOf, func(place string) bool { return pricebook.OfTrade(words[0], place) }) {
		for _, w := range works {
			if slices.Contains(placesOf, w.item.Trade) {
				out = append(out, w)
			}
		}
		return out, !r.tradePrice(out...).LessThan(smallWork)
	}
	return out, false
}
