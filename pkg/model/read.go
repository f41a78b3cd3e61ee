package model

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/formula"
)

// Parse reads a document: sets, headings and rows. A row is
//
//	name | set [by month] | unit
//	  = formula
//	  meaning
//
// and every mistake in it is returned at once.
func Parse(sources ...Source) (*Document, error) {
	d := &Document{sets: map[string]*Set{}, lines: map[string]*Line{}}
	d.sets[Deal] = &Set{Name: Deal, Meaning: "the deal itself"}
	d.Sets = append(d.Sets, d.sets[Deal])
	var errs []error
	for _, s := range sources {
		r := reader{doc: d, file: s.Name}
		errs = append(errs, r.read(s.Text)...)
	}
	if len(errs) == 0 {
		errs = d.check()
	}
	return d, errors.Join(errs...)
}

type reader struct {
	doc     *Document
	file    string
	section string
	line    *Line
	errs    []error
}

func (r *reader) read(text string) []error {
	for i, raw := range strings.Split(text, "\n") {
		if err := r.row(strings.TrimRight(raw, " \r"), i+1); err != nil {
			r.errs = append(r.errs, fmt.Errorf("%s:%d: %w", r.file, i+1, err))
		}
	}
	return r.errs
}

func (r *reader) row(row string, no int) error {
	body := strings.TrimSpace(row)
	switch {
	case body == "" || strings.HasPrefix(body, "#"):
		return nil
	case strings.HasPrefix(row, "== "):
		r.section = strings.Trim(row, "= ")
		return nil
	case strings.HasPrefix(row, "set "):
		return r.set(strings.TrimPrefix(row, "set "))
	case row[0] != ' ':
		return r.head(row, no)
	case r.line == nil:
		return errors.New("an indented row belongs to no line")
	case strings.HasPrefix(body, "= "):
		return r.formula(strings.TrimPrefix(body, "= "))
	}
	r.line.Meaning = strings.TrimSpace(r.line.Meaning + " " + body)
	return nil
}

// set reads "loan of deal: kind, kind; meaning".
func (r *reader) set(row string) error {
	head, meaning, _ := strings.Cut(row, ";")
	head, kinds, _ := strings.Cut(head, ":")
	name, parents, ok := strings.Cut(head, " of ")
	if !ok {
		return fmt.Errorf("set %q says not what it belongs to", name)
	}
	s := &Set{Name: strings.TrimSpace(name), Meaning: strings.TrimSpace(meaning)}
	s.Parents, s.Kinds = listed(parents), listed(kinds)
	for _, n := range append([]string{s.Name}, s.Kinds...) {
		if r.doc.sets[n] != nil {
			return fmt.Errorf("set %q is there twice", n)
		}
		r.doc.sets[n] = s
	}
	r.doc.Sets = append(r.doc.Sets, s)
	return nil
}

func listed(text string) []string {
	var out []string
	for part := range strings.SplitSeq(text, ",") {
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, part)
		}
	}
	return out
}

func (r *reader) head(row string, no int) error {
	parts := strings.Split(row, "|")
	if len(parts) != 3 {
		return errors.New("a line starts with name | set | unit")
	}
	set, monthly := strings.CutSuffix(strings.TrimSpace(parts[1]), " by month")
	l := &Line{
		Name: strings.TrimSpace(parts[0]), Set: set, Monthly: monthly, Unit: strings.TrimSpace(parts[2]),
		Section: r.section, File: r.file, LineNo: no, position: len(r.doc.Lines),
	}
	r.line = l
	if r.doc.sets[set] == nil {
		return fmt.Errorf("unknown set %q", set)
	}
	if r.doc.lines[set+"."+l.Name] != nil {
		return fmt.Errorf("line %q is there twice", l.ID())
	}
	if err := goodName(l.Name); err != nil {
		return err
	}
	var err error
	l.dims, err = formula.ParseUnit(l.Unit)
	r.doc.lines[set+"."+l.Name] = l
	r.doc.Lines = append(r.doc.Lines, l)
	return err
}

// formula reads "expression", "input", "input, else expression", "input, assume
// expression, when condition", or "input of a, b; else "a"" for a choice of words.
func (r *reader) formula(text string) error {
	l := r.line
	rest, isInput := strings.CutPrefix(text, "input")
	if !isInput {
		l.Text = strings.TrimSpace(l.Text + " " + text)
	} else {
		l.Input = true
		if l.Unit == "choice" {
			var words string
			words, rest, _ = strings.Cut(strings.TrimPrefix(rest, " of "), ";")
			l.Choices = listed(words)
		}
		rest, when, _ := strings.Cut(rest, ", when ")
		if err := r.when(when); err != nil {
			return err
		}
		rest = strings.TrimSpace(strings.TrimPrefix(rest, ","))
		if word, expr, found := strings.Cut(rest, " "); found {
			if word != "else" && word != "assume" {
				return fmt.Errorf("after input comes else or assume, not %q", word)
			}
			l.Assumed, l.Text = word == "assume", expr
		}
	}
	if l.Text == "" {
		return nil
	}
	n, err := formula.Parse(l.Text)
	if err != nil {
		return err
	}
	l.Formula = n
	return nil
}

// when reads the condition under which an assumption matters.
func (r *reader) when(text string) (err error) {
	if text != "" {
		r.line.When, err = formula.Parse(text)
	}
	return err
}

// goodName refuses names that a spreadsheet would take for a cell, a row or a
// truth value, and those of the grammar.
func goodName(name string) error {
	letters := strings.IndexFunc(name, func(r rune) bool { return r < 'a' || r > 'z' })
	switch {
	case name == "" || strings.Trim(name, "abcdefghijklmnopqrstuvwxyz0123456789_") != "":
		return fmt.Errorf("%q is not a name: small letters, digits and _ only", name)
	case len(name) < 3:
		return fmt.Errorf("%q is too short a name", name)
	case slices.Contains([]string{"true", "false"}, name):
		return fmt.Errorf("%q means something else in a spreadsheet", name)
	case letters > 0 && letters <= 3 && strings.Trim(name[letters:], "0123456789") == "":
		return fmt.Errorf("%q reads as a cell in a spreadsheet", name)
	}
	for _, o := range formula.Table {
		if o.Name == name {
			return fmt.Errorf("%q is an operator", name)
		}
	}
	return nil
}
