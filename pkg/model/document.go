package model

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/formula"
)

//go:embed document/*.txt
var files embed.FS

// A Set is a kind of thing that the deal has some of, such as loans or fees.
type Set struct {
	Name    string
	Kinds   []string // the sub-kinds its members come in, or none
	Parents []string // the sets a member may belong to; Deal for the deal itself
	Links   []string // the sets it points to besides: a use of an item points to its product
	Still   bool     // no search moves what its members are worth: rooms, work, products
	Meaning string
}

// belongsTo reports whether members of the set stand below members of another, or
// point to them.
func (s *Set) belongsTo(other string) bool {
	return slices.Contains(s.Parents, other) || slices.Contains(s.Links, other)
}

// Deal is the name of the set whose one member is the deal.
const Deal = "deal"

// A Line is one row of the document.
type Line struct {
	Name     string
	Set      string
	Monthly  bool
	Unit     string
	Text     string        // the formula as written, "" for an input without a default
	Input    bool          // the deal may give the value
	Assumed  bool          // the default moves money: it is said when used
	When     *formula.Node // the condition under which it matters, or nil for always
	Choices  []string      // the words an input of choice takes
	Meaning  string
	Section  string
	File     string
	LineNo   int
	dims     formula.Unit
	broken   bool // a mistake was found while reading it; what follows from it is no news
	position int
	parse    sync.Once
	formula  *formula.Node
}

// Formula is the line's formula, nil for an input without a default. It is parsed when it
// is asked for: few deals have members of every set.
func (l *Line) Formula() *formula.Node {
	l.parse.Do(func() {
		if l.Text != "" {
			l.formula, _ = formula.Parse(l.Text) // known to be sound
		}
	})
	return l.formula
}

// ID is the line's full name: the name alone in the deal, set.name elsewhere.
func (l *Line) ID() string {
	if l.Set == Deal {
		return l.Name
	}
	return l.Set + "." + l.Name
}

// per is the line's unit in words, with "by month" where it has one for each.
func (l *Line) per() string {
	if l.Monthly {
		return l.Unit + " by month"
	}
	return l.Unit
}

// A Document is the whole list of lines with the sets they stand in.
type Document struct {
	Sets  []*Set
	Lines []*Line
	sets  map[string]*Set
	lines map[lineKey]*Line
}

// Standard returns the document of a deal, read once. That it is sound is for a test to
// see, not for every run.
var Standard = sync.OnceValues(func() (*Document, error) {
	d, errs := parse(standardSources(), true)
	return d, errors.Join(errs...)
})

// ReadFormulas reads the formulas of the standard document, which are otherwise read one
// by one when they are asked for.
func ReadFormulas() {
	d, err := Standard()
	if err != nil {
		return
	}
	for _, l := range d.Lines {
		l.Formula()
	}
}

func standardSources() []Source {
	var out []Source
	names, _ := fs.Glob(files, "document/*.txt") // the pattern is sound
	for _, n := range names {
		text, _ := files.ReadFile(n) // embedded, so always there
		out = append(out, Source{strings.TrimPrefix(n, "document/"), string(text)})
	}
	return out
}

type lineKey struct{ set, name string }

// A Source is a named text of rows.
type Source struct{ Name, Text string }

// Set returns the named set or nil; the name of a kind returns the set it is of.
func (d *Document) Set(name string) *Set { return d.sets[name] }

// Line returns the line of that name in the set, or nil.
func (d *Document) Line(set, name string) *Line { return d.lines[lineKey{set, name}] }

// ByID returns the line with that ID, or nil.
func (d *Document) ByID(id string) *Line {
	if set, name, found := strings.Cut(id, "."); found {
		return d.Line(set, name)
	}
	return d.Line(Deal, id)
}

// Lookup finds a name in a set, the sets it points to or the sets it belongs to,
// nearest first.
func (d *Document) Lookup(set, name string) *Line {
	if l := d.Line(set, name); l != nil {
		return l
	}
	if s := d.sets[set]; s != nil {
		if l := d.Line(s.Name, name); l != nil {
			return l
		}
		for _, linked := range s.Links {
			if l := d.Line(linked, name); l != nil {
				return l
			}
		}
		for _, p := range s.Parents {
			if l := d.Lookup(p, name); l != nil {
				return l
			}
		}
	}
	return nil
}

// meanings returns the lines that a name may mean in a set, one for each way up,
// nil where there is none that way.
func (d *Document) meanings(set, name string) []*Line {
	s := d.sets[set]
	for _, in := range append([]string{set, s.Name}, s.Links...) {
		if l := d.Line(in, name); l != nil {
			return []*Line{l}
		}
	}
	if len(s.Parents) == 0 {
		return []*Line{nil}
	}
	var out []*Line
	for _, p := range s.Parents {
		out = append(out, d.meanings(p, name)...)
	}
	return out
}

// measured is the unit of work: square feet for one item, doors for another. A line
// in it may take its value from a line of any measure.
const measured = "unit"

var measures = []string{"each", "ft", "sqft", "cuft", "month"}

// mayStandFor reports whether an input may take its value from l.
func (l *Line) mayStandFor(input *Line) bool {
	switch {
	case l.Unit == "choice" || input.Unit == "choice":
		return false
	case input.Unit == measured:
		return l.Unit == measured || slices.Contains(measures, l.Unit)
	}
	return l.dims == input.dims
}

func (l *Line) errorf(format string, args ...any) error {
	return fmt.Errorf("%s:%d: line %s: %s", l.File, l.LineNo, l.ID(), fmt.Sprintf(format, args...))
}

// Rule returns the line's rule as written in the document: its formula, or for
// an input what stands in when the deal does not give it.
func (l *Line) Rule() string {
	switch {
	case !l.Input:
		return l.Text
	case l.Text == "":
		return "given by the deal"
	case l.Assumed:
		return "given by the deal, or assumed: " + l.Text
	}
	return "given by the deal, or else: " + l.Text
}
