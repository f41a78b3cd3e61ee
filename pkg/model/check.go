package model

import (
	"slices"

	"ledgerboard/pkg/formula"
)

// check finds names that lead nowhere, units that do not fit, choices that do
// not exist and months where there are none, in every line.
func (d *Document) check() []error {
	var errs []error
	for _, l := range d.Lines {
		if l.broken {
			continue
		}
		c := checker{doc: d, line: l, set: l.Set, monthly: l.Monthly, errs: &errs}
		c.whole()
	}
	return errs
}

// A checker looks at one line, from a set and in or out of a month.
type checker struct {
	doc     *Document
	line    *Line
	set     string
	monthly bool // inside something evaluated month by month
	errs    *[]error
}

// wrong notes a mistake. The unit it returns goes with every other, so that one
// mistake is said once.
func (c checker) wrong(format string, args ...any) formula.Unit {
	*c.errs = append(*c.errs, c.line.errorf(format, args...))
	return formula.AnyUnit
}

func (c checker) whole() {
	l := c.line
	if l.Meaning == "" {
		c.wrong("has no meaning in words")
	}
	if l.When != nil {
		if u := c.unit(l.When); !u.Fits(formula.Unit{}) {
			c.wrong("its condition is in %v, not a yes or no", u)
		}
	}
	switch {
	case l.Formula() == nil && !l.Input:
		c.wrong("has no formula")
	case l.Unit == "choice":
		c.words()
	case l.Formula() != nil:
		if u := c.unit(l.Formula()); !l.dims.Fits(u) {
			c.wrong("is in %v, its formula in %v", l.dims, u)
		}
	}
}

func (c checker) words() {
	l := c.line
	switch {
	case len(l.Choices) < 2:
		c.wrong("is a choice of nothing")
	case l.Formula() != nil && !slices.Contains(l.Choices, l.Formula().Text):
		c.wrong("%v is not one of its choices", l.Formula())
	}
}

// unit returns the unit of an expression.
func (c checker) unit(n *formula.Node) formula.Unit {
	switch {
	case n.Name != "":
		return c.name(n)
	case n.Text != "":
		return c.wrong("%q stands alone; compare it with a line of choice", n.Text)
	case n.Op == nil:
		return c.number(n)
	case isChoice(n):
		return c.choice(n.Args[0], n.Args[1].Text)
	}
	units := make([]formula.Unit, len(n.Args))
	inner := c.inside(n)
	for i, a := range n.Args {
		if n.Op.Code == formula.At && i == 1 {
			inner = c // which month it is, is asked out here
		}
		units[i] = inner.unit(a)
	}
	u, err := n.Op.Unit(units)
	if err != nil {
		return c.wrong("%v", err)
	}
	return u
}

// isChoice reports whether n compares a line of choice with a word.
func isChoice(n *formula.Node) bool {
	return n.Op != nil && (n.Op.Code == formula.Equal || n.Op.Code == formula.NotEqual) && n.Args[1].Text != ""
}

// inside is the checker of an operator's values.
func (c checker) inside(n *formula.Node) checker {
	switch n.Op.Code {
	case formula.Total, formula.Largest:
		switch s := c.doc.sets[n.Set]; {
		case s == nil:
			c.wrong("%s over %q, which is no set", n.Op.Name, n.Set)
		case !s.belongsTo(c.set) && !s.belongsTo(c.doc.sets[c.set].Name):
			c.wrong("%s over %s, which does not belong to %s", n.Op.Name, n.Set, c.set)
		default:
			c.set = n.Set
		}
	case formula.Previous:
		switch s := c.doc.sets[c.set]; {
		case s.Name != c.set:
			c.wrong("previous follows the order of %s; say it in a line of that set", s.Name)
		case n.Set != "" && !slices.Contains(s.Links, n.Set):
			c.wrong("previous of %s, to which %s does not point", n.Set, s.Name)
		}
	case formula.Sum, formula.Lowest, formula.FirstMonth, formula.At:
		c.monthly = true
	case formula.Month, formula.Prior, formula.Ago, formula.Running:
		if !c.monthly {
			c.wrong("%s has no month to stand in", n.Op.Name)
			c.monthly = true
		}
	}
	return c
}

func (c checker) name(n *formula.Node) formula.Unit {
	l := c.find(n.Name)
	switch {
	case l == nil:
		return formula.AnyUnit
	case l.Monthly && !c.monthly:
		return c.wrong("%s has a value for each month; say sum, lowest or at", n.Name)
	case l.Unit == "choice":
		return c.wrong("%s is a choice; compare it with one of its words", n.Name)
	}
	return l.dims
}

// find looks a name up. It returns nil where a mistake is said already: here, if
// the name leads nowhere or to lines that are not alike, or at the line itself.
func (c checker) find(name string) *Line {
	l := c.doc.Lookup(c.set, name)
	if l == nil {
		c.wrong("unknown line %q", name)
		return nil
	}
	for _, other := range c.doc.meanings(c.set, name) {
		switch {
		case other == nil:
			c.wrong("%s is no line for some members of %s", name, c.set)
			return nil
		case other.broken:
			return nil
		case other.dims != l.dims || other.Monthly != l.Monthly || !slices.Equal(other.Choices, l.Choices):
			c.wrong("%s means %s or %s, which are not alike", name, l.ID(), other.ID())
			return nil
		}
	}
	return l
}

func (c checker) number(n *formula.Node) formula.Unit {
	if n.Unit == "" && n.Num.IsZero() {
		return formula.AnyUnit
	}
	u, err := formula.ParseUnit(n.Unit)
	if err != nil {
		return c.wrong("%v", err)
	}
	return u
}

func (c checker) choice(n *formula.Node, word string) formula.Unit {
	if n.Name == "" {
		return c.wrong("only a line of choice is compared with a word")
	}
	switch l := c.find(n.Name); {
	case l == nil:
	case l.Unit != "choice":
		c.wrong("%s is no line of choice, to be compared with a word", l.Name)
	case !slices.Contains(l.Choices, word):
		c.wrong("%q is not a choice of %s", word, l.Name)
	}
	return formula.Unit{}
}
