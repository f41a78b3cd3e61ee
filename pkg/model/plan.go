package model

import (
	"iter"
	"slices"
)

// steps yields all steps, in an order in which each needs only what came before.
func (m *Model) steps() iter.Seq[Step] {
	return func(yield func(Step) bool) {
		for at := 0; at < len(m.inOrder); {
			n := m.togetherWith(m.inOrder[at])
			if !yield(Step{m.inOrder[at : at+n : at+n]}) {
				return
			}
			at += n
		}
	}
}

// backward yields all steps, last first.
func (m *Model) backward() iter.Seq[Step] {
	return func(yield func(Step) bool) {
		for end := len(m.inOrder); end > 0; {
			n := m.togetherWith(m.inOrder[end-1])
			if !yield(Step{m.inOrder[end-n : end : end]}) {
				return
			}
			end -= n
		}
	}
}

// togetherWith is how many cells are in the step of a cell.
func (m *Model) togetherWith(cell int) int {
	if m.rows[cell] >= 0 { // others stand alone
		return max(1, len(m.together[cell].Cells))
	}
	return 1
}

// Together is the step of a cell.
func (m *Model) Together(cell int) Step {
	if s, several := m.together[cell]; several {
		return s
	}
	return Step{[]int{cell}}
}

// Needed returns the steps that the wanted cells need, in order. Without any it
// returns all of them.
func (m *Model) Needed(want ...int) []Step {
	if len(want) == 0 {
		return slices.AppendSeq(make([]Step, 0, len(m.Cells)), m.steps())
	}
	return m.needed(nil, append(slices.Clone(want), m.Horizon))
}

func (m *Model) needed(given, want []int) []Step {
	wanted, stop := make([]bool, len(m.Cells)), make([]bool, len(m.Cells))
	for _, w := range want {
		wanted[w] = true
	}
	for _, g := range given {
		stop[g] = true
	}
	n := 0
	mark := func(to int, _ need) bool {
		wanted[to] = true
		return true
	}
	for s := range m.backward() {
		if !s.any(wanted) {
			continue
		}
		wanted[s.Cells[0]], n = true, n+1
		if s.any(stop) {
			continue
		}
		for _, c := range s.Cells {
			m.needs(c, mark)
		}
	}
	out := make([]Step, 0, n)
	for s := range m.steps() {
		if wanted[s.Cells[0]] {
			out = append(out, s)
		}
	}
	return out
}

// NeededBeyond returns the steps that the wanted cells need, and they alone, where the
// given cells keep what they are given: not what these need themselves.
func (m *Model) NeededBeyond(given []int, want ...int) []Step {
	return m.needed(given, want)
}

// Reached splits steps by whether a change of the given cells can change them.
// Cells that are held keep their value whatever happens.
func (m *Model) Reached(steps []Step, changed []int, held ...int) (fixed, varying []Step) {
	moved, kept := make([]bool, len(m.Cells)), make([]bool, len(m.Cells))
	for _, c := range changed {
		moved[c] = true
	}
	for _, c := range held {
		kept[c] = true
	}
	fixed = make([]Step, 0, len(steps))
	for _, s := range steps {
		if !kept[s.Cells[0]] && m.spreads(s, moved) {
			varying = append(varying, s)
		} else {
			fixed = append(fixed, s)
		}
	}
	return fixed, varying
}

// Moved marks those of the known cells that a change of some can change. A known cell
// was worked out from known ones alone, so the change reaches it through them.
func (m *Model) Moved(changed []int, known []bool) []bool {
	moved := make([]bool, len(m.Cells))
	for _, c := range changed {
		moved[c] = true
	}
	for s := range m.steps() {
		if s.any(known) {
			m.spreads(s, moved)
		}
	}
	return moved
}

// spreads reports whether a step holds or reads something moved; then it is all moved.
func (m *Model) spreads(s Step, moved []bool) bool {
	if !m.Touched(s, moved) {
		return false
	}
	for _, c := range s.Cells {
		moved[c] = true
	}
	return true
}

// Touched reports whether a step works out, or reads, a cell that has moved.
func (m *Model) Touched(s Step, moved []bool) bool {
	for _, c := range s.Cells {
		if moved[c] || m.reads(c, func(to int) bool { return moved[to] }) {
			return true
		}
	}
	return false
}

func (s Step) any(marked []bool) bool {
	for _, c := range s.Cells {
		if marked[c] {
			return true
		}
	}
	return false
}

// Moves reports whether a change of one cell can change another.
func (m *Model) Moves(changed, seen *Cell) bool {
	_, varying := m.Reached(m.Needed(seen.Index), []int{changed.Index})
	return slices.ContainsFunc(varying, func(s Step) bool { return slices.Contains(s.Cells, seen.Index) })
}

// Indexes returns the places of cells in their model.
func Indexes(cells []*Cell) []int {
	out := make([]int, len(cells))
	for i, c := range cells {
		out[i] = c.Index
	}
	return out
}
