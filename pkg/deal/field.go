package deal

import (
	"iter"
	"maps"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
)

// A Kind is what a field of the deal file takes.
type Kind string

// The kinds. The last ones have parts of their own.
const (
	Text         Kind = "text"
	Money        Kind = "dollars"
	Percent      Kind = "percentage"
	Duration     Kind = "length of time"
	WholeMonths  Kind = "whole months"
	YesNo        Kind = "yes or no"
	Date         Kind = "date"
	DayInForce   Kind = "date in force" // kept as days from the purchase
	WholeNumber  Kind = "whole number"
	Hours        Kind = "hours"
	HourRate     Kind = "dollars an hour"
	Choice       Kind = "choice"
	ShareOrMoney Kind = "percentage or dollars"
	Charge       Kind = "charge"   // an amount of a fee in any of its forms
	BaseLine     Kind = "base"     // the line that a share is of
	TotalRange   Kind = "totals"   // up to $350,000
	Spending     Kind = "spending" // a curve or a list of amounts
	Group        Kind = "group of keys"
	List         Kind = "list"
	Fees         Kind = "charges by name"
	Deposits     Kind = "deposits by name"
	Prorations   Kind = "prorations by name"
	Brackets     Kind = "brackets"
	Slabs        Kind = "slabs"
	Tables       Kind = "tables of rates"
	Named        Kind = "groups by name"
	Length       Kind = "length"
	Area         Kind = "area"
	Volume       Kind = "volume"
	Weight       Kind = "weight"
	Days         Kind = "days"
	Pace         Kind = "number"
	Pitch        Kind = "pitch"
	Quantity     Kind = "so much work"
	HoursOfWork  Kind = "hours, in all or for each unit"
	UnitPrice    Kind = "dollars for each unit"
	Words        Kind = "list of words"
	Sizes        Kind = "size or list of sizes"
	Walk         Kind = "walls in order"
	Ceiling      Kind = "height of a ceiling"
	Openings     Kind = "count, size or list of sizes"
	Roof         Kind = "area or list of parts"
	Works        Kind = "work by name"
	Scope        Kind = "option, or options by room"
	Record       Kind = "as a record says it" // of a house, sold or not, read by package comps
	Pasted       Kind = "table"
	Headers      Kind = "headers of columns"
	Extras       Kind = "dollars by name"
	Conditions   Kind = "conditions by option"
	OfInput      Kind = "what its input takes"
	Cases        Kind = "values with their weights"
	Ties         Kind = "list of ties"
	Correlation  Kind = "number between -1 and 1"
	BadDays      Kind = "changes by name"
)

// A Field is a row of the table: one key of the deal file.
type Field struct {
	Path      string   // keys joined by dots; [] marks the items of a list, <fee> the details of any charge
	Kind      Kind     //
	Line      string   // the lines of the model it feeds, or the kind of member; "" for none
	Range     string   // what is accepted, as in "more than $0, at most $1m"; "" for the kind's own
	Doubt     string   // what is usual; beyond it a warning
	DoubtCode string   // and its code
	Default   string   // what happens without it
	Example   string   //
	Meaning   string   // "" for the meaning of the model's line
	Choices   []string // the words a choice takes
	Other     []string // other names of the key
	Short     string   // the part that a single value instead of a group means
	Set       string   // of a list or of groups by name: the set of the model its items belong to
	Of        string   // of groups by name: the rows of each
	Only      string   // of a charge's details: the kinds of charge that may have it; "" for all
	Required  bool     //
	item      bool     // of a list of values, which have no key
	said      string   // the key in the file, where a single value stands for a group
	want      string   // what would do, where the words of its kind say too little
}

// title is the key as messages say it.
func (f *Field) title() string {
	if f.said != "" {
		return f.said
	}
	return f.Key()
}

// Key is the last part of the path.
func (f *Field) Key() string { return f.Path[strings.LastIndexByte(f.Path, '.')+1:] }

// group is the path of the group that the field stands in.
func (f *Field) group() string { return f.Path[:max(0, strings.LastIndexByte(f.Path, '.'))] }

// names are all evened-out names of the key, the main one first.
func (f *Field) names() []string {
	out := []string{plainKey(f.Key())}
	for _, o := range f.Other {
		out = append(out, plainKey(o))
	}
	return out
}

// isNamed reports whether an evened-out name is one of the key's.
func (f *Field) isNamed(name string) bool {
	return plainKey(f.Key()) == name || slices.ContainsFunc(f.Other, func(o string) bool { return plainKey(o) == name })
}

// feeds are the model lines by name.
func (f *Field) feeds() []string { return strings.Fields(f.Line) }

// table is all rows, in the order of the docs. A list's items, like the details of a
// charge, are groups of their own. Never written to.
var table = [...][]Field{houseRows, subjectRows, compRows, timeRows, renovationRows, roomRows, loanRows, chargeRows, resultRows, rangeRows, badDayRows}

// rows are the fields of the table.
func rows() iter.Seq[*Field] {
	return func(yield func(*Field) bool) {
		for _, part := range table {
			for i := range part {
				if !yield(&part[i]) {
					return
				}
			}
		}
	}
}

// fields is the table by group. Never written to after this.
var fields = sync.OnceValue(func() map[string][]*Field {
	all := map[string][]*Field{}
	for f := range rows() {
		all[f.group()] = append(all[f.group()], f)
	}
	return all
})

// fieldNamed returns the field of a group by an evened-out name, or nil.
func fieldNamed(group, name string) *Field {
	for _, f := range fields()[group] {
		if f.isNamed(name) {
			return f
		}
	}
	return nil
}

// nearestKey is the key of a group that an evened-out name was probably meant for.
func nearestKey(group, name string) (string, bool) {
	written := map[string]string{} // by evened-out name
	for _, f := range fields()[group] {
		for _, n := range f.names() {
			written[n] = n
		}
		written[plainKey(f.Key())] = f.Key()
	}
	if near, ok := diag.Nearest(name, slices.Collect(maps.Keys(written))); ok {
		return written[near], true
	}
	return partOf(written, name)
}

// partOf is the only key that holds a name as some of its words, as year built holds
// built, or that is some of the words of the name.
func partOf(written map[string]string, name string) (string, bool) {
	within := func(whole, part string) bool {
		return len(part) > 2 && strings.Contains(" "+whole+" ", " "+part+" ")
	}
	found := ""
	for n, key := range written {
		if !within(n, name) && !within(name, n) || found == key {
			continue
		}
		if found != "" {
			return "", false
		}
		found = key
	}
	return found, found != ""
}
