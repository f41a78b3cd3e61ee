package model

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"
)

// order puts the cells in order: line by line where lines do not need each other, cell by
// cell where they do. Cells in a circle must all be monthly and at least one of them must
// look only at the month before.
func (m *Model) order() error {
	m.inOrder, m.together = make([]int, 0, len(m.Cells)), map[int]Step{}
	o := &orderer{model: m, next: m.linesNeeded()}
	c := newComponents(len(m.Doc.Lines), func(line int, visit func(int)) {
		for _, l := range o.next[line] {
			visit(l.position)
		}
	}, o.lines)
	c.visit(m.Cells[m.Horizon].Line.position) // first, for monthly cells need the number of months
	for _, l := range m.Doc.Lines {
		c.visit(l.position)
	}
	return errors.Join(o.circles...)
}

type orderer struct {
	model   *Model
	next    [][]*Line // by line, those that any of its cells needs
	place   []int32   // by cell, its place + 1 among those looked at
	circles []error
}

// linesNeeded are the lines that each line needs.
func (m *Model) linesNeeded() [][]*Line {
	next := make([][]*Line, len(m.Doc.Lines))
	for _, s := range m.shapes.all {
		for i, r := range s.rules {
			if r != nil {
				at := s.lines[i].position
				next[at] = r.lines(m, s, next[at])
			}
		}
	}
	for _, c := range m.Cells {
		if c.Given != nil && c.rule != nil {
			m.needs(c.Index, func(to int, _ need) bool {
				next[c.Line.position] = append(next[c.Line.position], m.Cells[to].Line)
				return true
			})
		}
	}
	return next
}

// lines adds the lines that a rule needs of members of a shape.
func (r *rule) lines(m *Model, s *shape, out []*Line) []*Line {
	for _, n := range r.needs {
		if n.over == nil {
			out = append(out, m.Cells[n.way.from(s.members[0])].Line)
			continue
		}
		for _, x := range n.over.others {
			out = x.rule.lines(m, x.of, out)
		}
	}
	return out
}

// lines takes lines that need each other, or one.
func (o *orderer) lines(set []int) {
	m := o.model
	if l := m.Doc.Lines[set[0]]; len(set) == 1 && !slices.Contains(o.next[set[0]], l) {
		m.inOrder = slices.AppendSeq(m.inOrder, m.cellsOf(l))
		return
	}
	var cells []int
	for _, l := range set {
		cells = slices.AppendSeq(cells, m.cellsOf(m.Doc.Lines[l]))
	}
	slices.Sort(cells)
	if o.place == nil {
		o.place = make([]int32, len(m.Cells))
	}
	for i, c := range cells {
		o.place[c] = int32(i + 1)
	}
	c := newComponents(len(cells), func(i int, visit func(int)) {
		m.needs(cells[i], func(to int, _ need) bool {
			if at := o.place[to]; at > 0 {
				visit(int(at - 1))
			}
			return true
		})
	}, func(set []int) {
		step := make([]int, len(set))
		for i, at := range set {
			step[i] = cells[at]
		}
		o.step(step)
	})
	for i := range cells {
		c.visit(i)
	}
	for _, c := range cells {
		o.place[c] = 0
	}
}

// cellsOf yields the cells of a line.
func (m *Model) cellsOf(l *Line) iter.Seq[int] {
	return func(yield func(int) bool) {
		for _, s := range m.shapes.all {
			at := int(s.place[l.position]) - 1
			if at < 0 {
				continue
			}
			for _, x := range s.members {
				if !yield(x.first + at) {
					return
				}
			}
		}
	}
}

// step takes cells that need each other, or one.
func (o *orderer) step(group []int) {
	m := o.model
	if len(group) == 1 && !m.reads(group[0], func(to int) bool { return to == group[0] }) {
		m.inOrder = append(m.inOrder, group[0])
		return
	}
	in := map[int]bool{}
	for _, c := range group {
		in[c] = true
	}
	slices.Sort(group)
	sorted, done := []int{}, map[int]bool{}
	for len(sorted) < len(group) {
		before := len(sorted)
		for _, c := range group {
			if !done[c] && o.ready(c, in, done) {
				done[c] = true
				sorted = append(sorted, c)
			}
		}
		if len(sorted) == before {
			o.circle(group, done)
			return
		}
	}
	m.inOrder = append(m.inOrder, sorted...)
	for _, c := range sorted {
		m.together[c] = Step{sorted}
	}
}

func (o *orderer) ready(c int, in, done map[int]bool) bool {
	ready := o.model.Cells[c].Line.Monthly
	o.model.needs(c, func(to int, n need) bool {
		ready = ready && !(in[to] && (n.whole || !n.prior && !done[to]))
		return ready
	})
	return ready
}

// A CircleError names cells that each need the other.
type CircleError struct{ Cells []*Cell }

func (e *CircleError) Error() string {
	names := make([]string, len(e.Cells))
	for i, c := range e.Cells {
		names[i] = c.Name()
	}
	return fmt.Sprintf("these need each other: %s", strings.Join(names, ", "))
}

func (o *orderer) circle(group []int, done map[int]bool) {
	e := &CircleError{}
	for _, c := range group {
		if !done[c] {
			e.Cells = append(e.Cells, o.model.Cells[c])
		}
	}
	o.circles = append(o.circles, e)
}
