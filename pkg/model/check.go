package model

import (
	"errors"
	"fmt"
	"slices"

	"ledgerboard/pkg/formula"
)

// check finds names that lead nowhere, units that do not fit, choices that do
// not exist and months where there are none, in every line.
func (d *Document) check() []error {
	var errs []error
	for _, l := range d.Lines {
		if err := d.checkLine(l); err != nil {
			errs = append(errs, err)
		}
	}
	return errs
}

func (d *Document) checkLine(l *Line) error {
	switch {
	case l.Meaning == "":
		return l.errorf("has no meaning in words")
	case l.Formula == nil && !l.Input:
		return l.errorf("has no formula")
	case l.Unit == "choice" && len(l.Choices) < 2:
		return l.errorf("is a choice of nothing")
	case l.Formula == nil:
		return nil
	}
	c := checker{doc: d, line: l, set: l.Set, monthly: l.Monthly}
	if l.When != nil {
		if u, err := c.unit(l.When); err != nil || !u.Fits(formula.Unit{}) {
			return l.errorf("its condition is %v, not a yes or no: %v", u, err)
		}
	}
	if l.Unit == "choice" {
		if !slices.Contains(l.Choices, l.Formula.Text) {
			return l.errorf("%v is not one of its choices", l.Formula)
		}
		return nil
	}
	u, err := c.unit(l.Formula)
	if err != nil {
		return l.errorf("%v", err)
	}
	if !l.dims.Fits(u) {
		return l.errorf("is in %v, its formula in %v", l.dims, u)
	}
	return nil
}

type checker struct {
	doc     *Document
	line    *Line
	set     string
	monthly bool // inside something evaluated month by month
}

func (c checker) unit(n *formula.Node) (formula.Unit, error) {
	switch {
	case n.Name != "":
		return c.name(n)
	case n.Text != "":
		return formula.Unit{}, fmt.Errorf("%q stands alone; compare it with a line of choice", n.Text)
	case n.Op == nil:
		return c.number(n)
	case n.Op.Code == formula.Equal || n.Op.Code == formula.NotEqual:
		if n.Args[1].Text != "" {
			return formula.Unit{}, c.choice(n.Args[0], n.Args[1].Text)
		}
	}
	inner := c
	switch n.Op.Code {
	case formula.Total:
		s := c.doc.sets[n.Set]
		if s == nil {
			return formula.Unit{}, fmt.Errorf("total over %q, which is no set", n.Set)
		}
		if !slices.Contains(s.Parents, c.set) {
			return formula.Unit{}, fmt.Errorf("total over %s, which does not belong to %s", n.Set, c.set)
		}
		inner.set = n.Set
	case formula.Sum, formula.Lowest, formula.FirstMonth, formula.At:
		inner.monthly = true
	case formula.Month, formula.Prior, formula.Ago, formula.Running:
		if !c.monthly {
			return formula.Unit{}, fmt.Errorf("%s has no month to stand in", n.Op.Name)
		}
	}
	units := make([]formula.Unit, len(n.Args))
	for i, a := range n.Args {
		var err error
		if units[i], err = inner.unit(a); err != nil {
			return formula.Unit{}, err
		}
	}
	return n.Op.Unit(units)
}

func (c checker) name(n *formula.Node) (formula.Unit, error) {
	l := c.doc.Lookup(c.set, n.Name)
	if l == nil {
		return formula.Unit{}, fmt.Errorf("unknown line %q", n.Name)
	}
	if l.Monthly && !c.monthly {
		return formula.Unit{}, fmt.Errorf("%s has a value for each month; say sum, lowest or at", n.Name)
	}
	if l.Unit == "choice" {
		return formula.Unit{}, fmt.Errorf("%s is a choice; compare it with one of its words", n.Name)
	}
	return l.dims, nil
}

func (c checker) number(n *formula.Node) (formula.Unit, error) {
	if n.Unit != "" {
		return formula.ParseUnit(n.Unit)
	}
	if n.Num.IsZero() {
		return formula.AnyUnit, nil
	}
	return formula.Unit{}, nil
}

func (c checker) choice(n *formula.Node, word string) error {
	l := c.doc.Lookup(c.set, n.Name)
	if n.Name == "" || l == nil || l.Unit != "choice" {
		return errors.New("only a line of choice is compared with a word")
	}
	if !slices.Contains(l.Choices, word) {
		return fmt.Errorf("%q is not a choice of %s", word, l.Name)
	}
	return nil
}
