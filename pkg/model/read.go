package model

import (
	"errors"
	"fmt"
	"strings"

	"ledgerboard/pkg/formula"
)

// Parse reads a document: sets, headings and rows. A row is
//
//	name | set [by month] | unit
//	  = formula
//	  meaning
//
// where the formula is an expression, "input", "input, else expression", "input,
// assume expression, when condition" or, for a choice, "input of a, b; else "a"".
// Every mistake in it is returned at once, with its file and row.
func Parse(sources ...Source) (*Document, error) {
	d, errs := parse(sources, false)
	return d, errors.Join(append(errs, d.check()...)...)
}

// parse reads a document without the checks that take all of it; nor are names checked
// of one that is sound.
func parse(sources []Source, sound bool) (*Document, []error) {
	d := &Document{sets: map[string]*Set{}, lines: map[lineKey]*Line{}}
	d.sets[Deal] = &Set{Name: Deal, Meaning: "the deal itself"}
	d.Sets = append(d.Sets, d.sets[Deal])
	var errs []error
	for _, s := range sources {
		r := reader{doc: d, file: s.Name, sound: sound}
		errs = append(errs, r.read(s.Text)...)
	}
	return d, errs
}

type reader struct {
	doc     *Document
	file    string
	section string
	sound   bool
	line    *Line
	errs    []error
}

func (r *reader) read(text string) []error {
	for i, raw := range strings.Split(text, "\n") {
		if err := r.row(strings.TrimRight(raw, " \r"), i+1); err != nil {
			if r.line != nil {
				r.line.broken = true
			}
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
	case strings.HasPrefix(row, "set "), strings.HasPrefix(row, "still set "):
		r.line = nil
		rest, still := strings.CutPrefix(row, "still ")
		return r.set(strings.TrimPrefix(rest, "set "), still)
	case row[0] != ' ':
		return r.head(row, no)
	case r.line == nil:
		return errors.New("an indented row belongs to no line")
	case strings.HasPrefix(body, "= "):
		return r.right(strings.TrimPrefix(body, "= "))
	}
	r.line.Meaning = strings.TrimSpace(r.line.Meaning + " " + body)
	return nil
}

// set reads "loan of deal: kind, kind; meaning", or "use of item and product" where
// each use points to a product besides; "still set" where no search moves what its
// members are worth. What a set belongs or points to stands before
// it, so sets never go round in a circle.
func (r *reader) set(row string, still bool) error {
	head, meaning, _ := strings.Cut(row, ";")
	head, kinds, _ := strings.Cut(head, ":")
	name, parents, ok := strings.Cut(head, " of ")
	if !ok {
		return fmt.Errorf("set %q says not what it belongs to", name)
	}
	s := &Set{Name: strings.TrimSpace(name), Still: still, Meaning: strings.TrimSpace(meaning)}
	parents, links, _ := strings.Cut(parents, " and ")
	s.Parents, s.Links, s.Kinds = listed(parents), listed(links), listed(kinds)
	for _, p := range append(s.Parents, s.Links...) {
		if r.doc.sets[p] == nil {
			return fmt.Errorf("set %q belongs to %q, which is no set above it", s.Name, p)
		}
	}
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
		r.line = &Line{} // so that its rows do not fall to the line above
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
	if r.doc.Line(set, l.Name) != nil {
		return fmt.Errorf("line %q is there twice", l.ID())
	}
	r.doc.lines[lineKey{set, l.Name}] = l
	r.doc.Lines = append(r.doc.Lines, l)
	if !r.sound {
		if err := goodName(l.Name); err != nil {
			return err
		}
	}
	var err error
	l.dims, err = formula.ParseUnit(l.Unit)
	return err
}
