package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/model"
)

// Table returns the table of fields, in the order of the docs, with meanings and
// defaults filled in from the model's lines where the row leaves them to it.
func Table() []Field {
	doc, err := model.Standard()
	all := slices.Concat(table[:]...)
	if err != nil {
		return all // the document is embedded and tested, so this does not happen
	}
	for i := range all {
		f := &all[i]
		f.Range = f.accepts()
		lines := f.lines(doc)
		if len(lines) == 0 {
			continue
		}
		if f.Meaning == "" {
			f.Meaning = lines[0].Meaning
			if f.refusesNothing() { // in the file one leaves it out
				f.Meaning, _, _ = strings.Cut(f.Meaning, ", or 0")
			}
		}
		if f.Default == "" && lines[0].Formula() != nil {
			f.Default = inWords(lines[0], f.Kind)
		}
	}
	return all
}

// refusesNothing reports whether 0 is out of the field's range.
func (f *Field) refusesNothing() bool {
	return strings.HasPrefix(f.Range, "more than ") || strings.HasPrefix(f.Range, "at least 1 ")
}

// KeyOf is the key of the deal file that gives an input line, or "".
func KeyOf(l *model.Line) string {
	doc, err := model.Standard()
	if err != nil {
		return ""
	}
	for f := range rows() {
		if strings.Contains(f.Line, l.Name) && slices.Contains(f.lines(doc), l) { // of few keys more need be asked
			return f.Key()
		}
	}
	return ""
}

// LinesOf are the names of the input lines that a key of the deal file gives, or of what
// the charges under it come to: of the key at that path or, where it begins with no group of
// keys, of all that end in the same word.
func LinesOf(path string) []string {
	path = setPath(path)
	group, key, found := cutLast(path)
	if !found {
		key = path
	}
	var out []string
	for f := range rows() {
		if !f.isNamed(key) {
			continue
		}
		lines := f.feeds()
		if f.Kind == Fees {
			lines = []string{placeOf(f.Line).total}
		}
		if found && plainKey(f.group()) == group {
			return lines
		}
		out = append(out, lines...)
	}
	if found && IsGroup(group) { // which has no such key
		return nil
	}
	return out
}

// IsGroup reports whether the deal file has a group of keys at a path, one that is no item
// of a list.
func IsGroup(path string) bool { return len(fields()[setPath(path)]) > 0 }

// lines are the model's rows that the field feeds; none for kinds of member.
func (f *Field) lines(doc *model.Document) []*model.Line {
	var out []*model.Line
	for _, name := range f.feeds() {
		for _, set := range f.sets() {
			if l := doc.Line(set, name); l != nil {
				out = append(out, l)
				break
			}
		}
	}
	return out
}

// roomSets are the model's sets of the groups around rooms, by the beginning of the path.
var roomSets = map[string][]string{
	"<room>": {"inside", "room"}, "<fixed>": {"fitting"}, "<option>": {"option"}, "<work>": {"item"}, "<plane>": {"plane"},
	"<trade>": {"trade"}, "<check>": {"check"}, "<comp>": {"comp"}, "outside": {"outside", "room"}, "whole house": {model.Deal},
}

// sets are the model's sets that the field's lines may stand in.
func (f *Field) sets() []string {
	for prefix, sets := range roomSets {
		if strings.HasPrefix(f.Path, prefix) {
			return sets
		}
	}
	switch {
	case strings.HasPrefix(f.Path, "<fee>.tables[]"):
		return []string{"table"}
	case strings.HasPrefix(f.Path, "<fee>"):
		return []string{"fee", "holding_fee", "loan_fee"}
	case strings.HasPrefix(f.Path, "loans[]"):
		return []string{"loan"}
	case strings.HasPrefix(f.Path, "renovation.lines[]"):
		return []string{"cost"}
	}
	return []string{model.Deal}
}
