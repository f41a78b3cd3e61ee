package cli

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/quantity"
)

// untaken are the mistakes in options that the scope does not take, which compare and best
// would refuse; not that a scope leaves no value, which is no slip of the file.
func (c *common) untaken(l *loaded, path string, sets []deal.Set) (diag.List, error) {
	if len(l.deal.Options) == 0 {
		return nil, nil
	}
	every := *c
	every.how.AllOptions = true
	all, err := every.load(path, sets)
	if err != nil {
		return nil, err
	}
	return slices.DeleteFunc(all.found.Errors(), func(d diag.Diag) bool { return d.Code == "value-used-up" }), nil
}

// untakenDoubts are the doubts that the file brings only with another scope, each once with
// the option that brings it; told are those of its own scope.
func (c *common) untakenDoubts(d *deal.Deal, told diag.List, path string) (out diag.List, _ error) {
	for _, name := range d.Options {
		other := c.scoped(name)
		sets, err := other.replacements()
		if err != nil {
			return nil, err
		}
		l, err := other.load(path, sets)
		if err != nil {
			return nil, err
		}
		if l.deal != nil {
			out = append(out, fresh(slices.Concat(told, out), l.found, name)...)
		}
	}
	return out, nil
}

// ofTheScope are doubts about what a scope as a whole does or leaves; no spot of the file is
// amiss before that scope is taken.
var ofTheScope = []string{"option-missing", "not-seen-replaced", "bad-not-planned"}

// fresh are the doubts of a scope that were not told yet: with other figures or not, a doubt
// of the same spot is the same.
func fresh(told, found diag.List, name string) (out diag.List) {
	for _, d := range found.Warnings() {
		same := func(o diag.Diag) bool { return o.Code == d.Code && o.Pos == d.Pos }
		spot := d.Pos.Line > 0 && !deal.InSet(d.Pos) && !slices.Contains(ofTheScope, d.Code)
		if spot && !slices.ContainsFunc(told, same) {
			d.Message = fmt.Sprintf("with scope %s: %s", name, d.Message)
			out = append(out, d)
		}
	}
	return out
}

// pointToCheck says how much is amiss in options that the scope does not take, of which only check tells.
func (c *common) pointToCheck(path string, found diag.List) {
	var counts []string
	if n := len(found.Errors()); n > 0 {
		counts = append(counts, quantity.Counted(n, "mistake"))
	}
	if n := len(found.Warnings()); n > 0 {
		counts = append(counts, quantity.Counted(n, "doubtful spot"))
	}
	if len(counts) > 0 {
		tell(c.Err, "warning: %s in options that the scope does not take; told by   ledgerboard check %s", strings.Join(counts, " and "), c.askedOf(path))
	}
}

// inUntaken is what is amiss in options that the scope does not take: mistakes, and then doubts.
func (c *common) inUntaken(l *loaded, path string, sets []deal.Set) (diag.List, error) {
	wrong, err := c.untaken(l, path, sets)
	if err != nil {
		return nil, err
	}
	doubts, err := c.untakenDoubts(l.deal, l.found, path)
	return slices.Concat(wrong, doubts), err
}

// told reads a deal for a page and works it out, and says on Err how much is amiss in what the page does
// not show. That is looked for meanwhile.
func (c *common) told(path string, work func(*deal.Deal, diag.List) (*answer.Answer, error)) (a *answer.Answer, _ error) {
	l, sets, err := c.readWith(path)
	if err != nil {
		return nil, err
	}
	var amiss diag.List
	err = together.Run(
		func() (err error) { a, err = work(l.deal, slices.Clone(l.found)); return err },
		func() (err error) { amiss, err = c.inUntaken(l, path, sets); return err })
	if err != nil {
		return nil, err
	}
	c.pointToCheck(path, amiss)
	return a, nil
}
