package caution

import "slices"

// row is one caution of the table: when it applies, what it says and what it
// rests on. A word in braces is filled from the facts of the house.
type row struct {
	id      string
	title   string // the same in a few words, for lists
	applies func(House) bool
	text    string
	cites   []string
}

// rows is the whole table in order of importance: what can hurt people, what
// can stop the work, what can cost the deal, what to ask.
func rows() []row {
	return slices.Concat(hazardRows(), ownRows(), workRows(), moneyRows(), resaleRows(), closingRows())
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
