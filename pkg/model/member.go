package model

import (
	"fmt"
	"iter"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

// A Member is one thing of a set: the deal, a loan, a fee of that loan.
type Member struct {
	Set      string
	Kind     string // its sub-kind, or ""
	Label    string // what the owner calls it
	Parent   *Member
	Children []*Member
	Links    []*Member // the members it points to besides its parent
	Given    Givens
	Pos      diag.Pos  // where the deal file names it
	linked   []*Member // the members that point to it
	shape    *shape    // while it is bound
	first    int       // the index of its first cell
}

// A Value is what a deal gives for an input: a number, a word of choice, or
// another line to take the value from.
type Value struct {
	Number decimal.Decimal
	Choice string
	Refers string // name of the line, looked up from the member outward
	Text   string // as written
	Key    string // the key that it stands behind in the deal file, or ""
	Pos    diag.Pos
	Unsaid bool // the deal does not say it: it goes with the place at Pos
}

// NewDeal returns the deal itself, without anything in it.
func NewDeal(label string) *Member {
	return &Member{Set: Deal, Label: label}
}

// Add puts a new member below m and returns it.
func (m *Member) Add(set, kind, label string) *Member {
	c := &Member{Set: set, Kind: kind, Label: label, Parent: m}
	m.Children = append(m.Children, c)
	return c
}

// CopyTo puts a copy of m below another member, with what is below m as far as it is kept,
// without links, and returns it.
func (m *Member) CopyTo(to *Member, keep func(*Member) bool) *Member {
	out := to.Add(m.Set, m.Kind, m.Label)
	out.Given, out.Pos = slices.Clone(m.Given), m.Pos
	for _, c := range m.Children {
		if keep(c) {
			c.CopyTo(out, keep)
		}
	}
	return out
}

// Link lets m point to another member, whose lines it then reads by name and which
// counts m among the members of m's set.
func (m *Member) Link(to *Member) {
	m.Links = append(m.Links, to)
	to.linked = append(to.linked, m)
}

// Remove takes a member away from below m, so that it and what is below it count no more
// where they point to.
func (m *Member) Remove(c *Member) {
	m.Children = slices.DeleteFunc(m.Children, func(x *Member) bool { return x == c })
	c.walk(func(x *Member) {
		for _, to := range x.Links {
			to.linked = slices.DeleteFunc(to.linked, func(y *Member) bool { return y == x })
		}
	})
}

// GiveNumber sets an input of m to a number without a place in a file.
func (m *Member) GiveNumber(line string, n decimal.Decimal) {
	m.Give(line, Value{Number: n, Text: n.String()})
}

// In returns the members below m, and then those that point to it, of a set or of
// one of its kinds, in order.
func (m *Member) In(set string) []*Member { return slices.Collect(m.Each(set)) }

// Each yields the members that In returns.
func (m *Member) Each(set string) iter.Seq[*Member] {
	return func(yield func(*Member) bool) {
		for _, all := range [...][]*Member{m.Children, m.linked} {
			for _, c := range all {
				if (c.Set == set || c.Kind == set) && !yield(c) {
					return
				}
			}
		}
	}
}

// Before returns the member of the same set in front of m, or nil: among those below
// m's parent or, where a set is named, among those that point to the same member of
// that set.
func (m *Member) Before(set string) *Member {
	beside := m.Parent
	if set != "" {
		beside = m.link(set)
	}
	if beside == nil {
		return nil
	}
	var before *Member
	for x := range beside.Each(m.Set) {
		if x == m {
			return before
		}
		before = x
	}
	return nil
}

// link is the member of a set that m points to, or nil.
func (m *Member) link(set string) *Member {
	for _, l := range m.Links {
		if l.Set == set {
			return l
		}
	}
	return nil
}

// Path names m for people: "" for the deal, "first loan", "first loan, broker fee".
func (m *Member) Path() string {
	if m.Parent == nil {
		return ""
	}
	if p := m.Parent.Path(); p != "" {
		return fmt.Sprintf("%s, %s", p, m.Label)
	}
	return m.Label
}

func (m *Member) walk(visit func(*Member)) {
	visit(m)
	for _, c := range m.Children {
		c.walk(visit)
	}
}
