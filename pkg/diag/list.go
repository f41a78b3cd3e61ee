package diag

import (
	"cmp"
	"slices"
	"strings"
)

// List is what was found so far, in the order it was found until Sort is called.
// The zero value is empty and ready to use.
type List []Diag

// Add appends mistakes and doubts.
func (l *List) Add(d ...Diag) { *l = append(*l, d...) }

// Errorf adds a mistake without a hint; for one with a hint, Add(Errorf(…).WithHint(…)).
func (l *List) Errorf(p Pos, code, format string, args ...any) {
	l.Add(Errorf(p, code, format, args...))
}

// Warnf adds a doubt without a hint.
func (l *List) Warnf(p Pos, code, format string, args ...any) {
	l.Add(Warnf(p, code, format, args...))
}

// Sort orders by file, line, column and code; equal ones keep their order.
// Diags without a line come before the others of their file.
func (l List) Sort() {
	slices.SortStableFunc(l, func(a, b Diag) int {
		return cmp.Or(
			cmp.Compare(a.Pos.File, b.Pos.File),
			cmp.Compare(a.Pos.Line, b.Pos.Line),
			cmp.Compare(a.Pos.Col, b.Pos.Col),
			cmp.Compare(a.Code, b.Code),
		)
	})
}

// HasErrors reports whether any of the list is a mistake rather than a doubt.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(d Diag) bool { return d.Severity == Error })
}

// Errors returns the mistakes, in order, in a new list.
func (l List) Errors() List { return l.only(Error) }

// Warnings returns the doubts, in order, in a new list.
func (l List) Warnings() List { return l.only(Warning) }

func (l List) only(s Severity) List {
	var out List
	for _, d := range l {
		if d.Severity == s {
			out = append(out, d)
		}
	}
	return out
}

// Err returns the whole list as an error if it holds a mistake, and nil otherwise.
// Return this, not the list itself: an empty List in an error variable is not nil.
func (l List) Err() error {
	if !l.HasErrors() {
		return nil
	}
	return l
}

// Error returns the one-line form of each, a line apiece.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, d := range l {
		lines[i] = d.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets errors.As find the single Diags.
func (l List) Unwrap() []error {
	errs := make([]error, len(l))
	for i, d := range l {
		errs[i] = d
	}
	return errs
}
