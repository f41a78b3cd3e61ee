package comps

import (
	"slices"
	"strconv"
	"strings"
)

// storeyWords are the words for how many storeys there are, by how else lists say it.
var storeyWords = map[string]string{
	"1": "one", "1.5": "one and a half", "2": "two", "2.5": "two and a half", "3": "three",
	"one": "one", "two": "two", "three": "three", "one and a half": "one and a half", "two and a half": "two and a half",
	"one half": "one and a half", "onehalf": "one and a half", "two half": "two and a half", "twohalf": "two and a half",
	"1½": "one and a half", "2½": "two and a half", "1 1 2": "one and a half", "2 1 2": "two and a half", "1 and a half": "one and a half", "2 and a half": "two and a half", "single": "one",
}

// storeys reads how many there are, however that is said; other words count as they stand.
func (r *row) storeys(s string) error {
	r.Storeys = r.word(s)
	if w := storeyWords[r.Storeys]; w != "" {
		r.Storeys = w
		return nil
	}
	words := strings.FieldsFunc(r.Storeys, func(c rune) bool { return strings.ContainsRune(" -+/", c) })
	words = slices.DeleteFunc(words, func(w string) bool {
		return slices.Contains([]string{"story", "stories", "storey", "storeys", "level", "levels", "floor", "floors", "st", "sty"}, w)
	})
	said := strings.Join(words, " ")
	if n, err := strconv.ParseFloat(said, 64); err == nil {
		said = strconv.FormatFloat(n, 'f', -1, 64) // 2.0
		r.Storeys = said
	}
	if w := storeyWords[said]; w != "" {
		r.Storeys = w
	}
	return nil
}

// StoreysOf is how many storeys a house has by what it says of them; not known of a style, as ranch.
func StoreysOf(said string) Fact {
	for _, n := range []float64{1, 1.5, 2, 2.5, 3} {
		if storeyWords[strconv.FormatFloat(n, 'f', -1, 64)] == said {
			return Known(n)
		}
	}
	n, err := strconv.ParseFloat(said, 64)
	return Fact{n, err == nil}
}
