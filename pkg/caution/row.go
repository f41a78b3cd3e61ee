package caution

import (
	"slices"
	"strings"
)

// row is one caution of the table: when it applies, what it says and what it
// rests on. A word in braces is filled from the facts of the house.
type row struct {
	id      string
	title   string // the same in a few words, for lists
	applies func(House) bool
	text    string
	ask     string // the end of the text, which tells the owner alone what to do
	cites   []string
}

// rows is the whole table in order of importance: what can hurt people, what
// can stop the work, what can cost the deal, what to ask.
func rows() []row {
	return slices.Concat(hazardRows(), ownRows(), workRows(), moneyRows(), resaleRows(), closingRows())
}

// caution is a row with its words filled in.
func (r row) caution(fill func(string) string) Caution {
	told := fill(r.text)
	return Caution{ID: r.id, Title: r.title, Text: strings.TrimRight(told+" "+r.ask, " "), Told: told, Source: sourceOf(r.cites)}
}

// all joins conditions that must hold together.
func all(conditions ...func(House) bool) func(House) bool {
	return func(h House) bool {
		return !slices.ContainsFunc(conditions, func(c func(House) bool) bool { return !c(h) })
	}
}

func not(c func(House) bool) func(House) bool { return func(h House) bool { return !c(h) } }

func has(kinds ...kind) func(House) bool {
	return func(h House) bool { return plans(h, kinds...) }
}

func always(House) bool { return true }
