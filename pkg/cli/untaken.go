package cli

import (
	"fmt"
	"slices"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
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
			out = append(out, c.fresh(slices.Concat(told, out), l.found, d, name)...)
		}
	}
	return out, nil
}

// ofTheScope is a doubt about what a scope as a whole leaves; no spot of the file is amiss
// before that scope is taken.
const ofTheScope = "option-missing"

// fresh are the doubts of a scope that were not told yet, of the file and of what is set in it: with other
// figures or not, a doubt of the same spot is the same. That an option does not say what it adds is so with
// the file's own scope too, where that takes it. A scope that leaves most rooms as they are, for want of the
// option, is no plan, and what hangs on all of the work is not asked of it.
func (c *common) fresh(told, found diag.List, own *deal.Deal, name string) (out diag.List) {
	lacking := 0
	for _, d := range found {
		if d.Code == ofTheScope {
			lacking++
		}
	}
	partly := 2*lacking > len(own.Root.In("room"))
	for _, d := range found.Warnings() {
		if partly && deal.OfTheWhole(d.Code) {
			continue
		}
		same := func(o diag.Diag) bool { return o.Code == d.Code && o.Pos == d.Pos }
		scope := deal.InSet(d.Pos) && d.Pos.Line > len(c.sets) // which is set after what was asked for
		spot := d.Pos.Line > 0 && !scope && d.Code != ofTheScope
		if spot && !slices.ContainsFunc(told, same) {
			if d.Code != "adds-missing" || !takes(own, d.Pos) {
				d.Message = fmt.Sprintf("with scope %s: %s", name, d.Message)
			}
			out = append(out, d)
		}
	}
	return out
}

// takes reports whether the scope of a deal takes the option that stands at a place of the file.
func takes(d *deal.Deal, at diag.Pos) bool {
	return slices.ContainsFunc(d.Root.In("room"), func(room *model.Member) bool {
		return slices.ContainsFunc(room.In("option"), func(o *model.Member) bool { return o.Pos == at && !deal.LeftOut(o) })
	})
}

// pointToCheck says of how many doubts in options that the scope does not take only check tells.
func (c *common) pointToCheck(path string, doubts diag.List) {
	if n := len(doubts); n > 0 {
		tell(c.Err, "warning: %s in options that the scope does not take; told by   ledgerboard check %s", quantity.Counted(n, "doubtful spot"), c.askedOf(path))
	}
}
