package model

import (
	"fmt"
	"slices"
)

// strangers are a member that stands where its set has no place, and values given
// for what is no input of it. Both would be lost without a word.
func strangers(d *Document, x *Member) []error {
	var errs []error
	if !d.hasPlace(x) {
		errs = append(errs, fmt.Errorf("%s has no place for %q of %s %s", where(x.Parent), x.Label, x.Set, x.Kind))
	}
	var strange []string
	for _, g := range x.Given {
		if name := g.Line; !d.isInput(x.Kind, name) && !d.isInput(x.Set, name) {
			strange = append(strange, name)
		}
	}
	slices.Sort(strange)
	for _, name := range strange {
		errs = append(errs, fmt.Errorf("%s is given and is no input of %s", name, x.Set))
	}
	return errs
}

func (d *Document) isInput(set, name string) bool {
	l := d.Line(set, name)
	return l != nil && l.Input
}

// hasPlace reports whether a member's set may stand below its parent's.
func (d *Document) hasPlace(x *Member) bool {
	s := d.sets[x.Set]
	switch {
	case s == nil || s.Name != x.Set || x.Kind != "" && !slices.Contains(s.Kinds, x.Kind):
		return false
	case x.Parent == nil:
		return x.Set == Deal
	}
	return slices.Contains(s.Parents, x.Parent.Set) || slices.Contains(s.Parents, x.Parent.Kind)
}

func where(x *Member) string {
	if x == nil {
		return "the document"
	}
	if p := x.Path(); p != "" {
		return p
	}
	return "the deal"
}
