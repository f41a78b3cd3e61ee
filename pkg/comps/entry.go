package comps

import (
	"errors"
	"slices"

	"ledgerboard/pkg/quantity"
)

// An Entry is a sale, or a house, put together word by word, each read as a cell of a
// list would be.
type Entry struct{ row row }

// Set reads a text as what it says of a field, such as "living area" or "sold". The
// error is a *quantity.Error, or says that there is no such field.
func (e *Entry) Set(field, text string) error {
	name, unit := plain(field)
	i := fieldOf(name)
	if i < 0 {
		return errors.New("there is no field " + field)
	}
	if e.row.words == nil {
		e.row.words = map[string]string{}
	}
	if e.row.unit = fields[i].unit; unit != "" {
		e.row.unit = unit
	}
	e.row.doubt = nil
	err := fields[i].read(&e.row, text)
	if err == nil {
		return nil
	}
	if _, ok := errors.AsType[*quantity.Error](err); ok {
		return err
	}
	why, want := wanted(err)
	return &quantity.Error{Found: text, Why: why, Want: want, At: -1}
}

// ShowsMiles reports whether its distance shows that others are in miles: an "m" that was
// taken for them, or the word.
func (e *Entry) ShowsMiles() bool { return e.row.doubt == &milesDoubt || e.row.miles }

// InMetres reports whether the "m" of its distance was taken for so few metres as there may be
// miles.
func (e *Entry) InMetres() bool { return e.row.metres }

// Settle takes such an "m" for miles, where others beside it are, and returns what is doubtful
// about it and what to write, as Doubt does.
func (e *Entry) Settle(miles bool, text string) (says, want string) {
	if !miles {
		return metresDoubt.says(text), metresDoubt.want
	}
	e.row.Stated.Value, e.row.metres = e.row.Stated.Value*Mile, false
	return asMilesDoubt.says(text), asMilesDoubt.want
}

// Sold is the sale so far.
func (e *Entry) Sold() Sold {
	r := &reader{row: e.row}
	r.finish()
	return r.row.Sold
}

// Conditions are the words for condition, the worst first; each is a step.
func Conditions() []string { return slices.Clone(conditions) }

// ConditionOf reads a condition: a word, or a number from 1 to 5.
func ConditionOf(text string) (Fact, error) { return condition(text) }

// Sales are all sales of the list, earliest first, doubtful ones included.
func (l *List) Sales() []Sold { return slices.Clone(l.sales) }

// FieldNamed is the name, as in Options.Columns, of the field that is called so; "" for
// none.
func FieldNamed(name string) string {
	n, _ := plain(name)
	if i := fieldOf(n); i >= 0 {
		return fields[i].name
	}
	return ""
}
