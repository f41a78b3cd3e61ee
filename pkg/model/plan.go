package model

import (
	"iter"
	"slices"
)

// Needed returns the steps that the wanted cells need, in order. Without any it
// returns all of them.
func (m *Model) Needed(want ...int) []Step {
	if len(want) == 0 {
		return m.Steps
	}
	return m.needed(nil, append(slices.Clone(want), m.Horizon))
}

// EachNeeded yields the steps that Needed returns, without a list of them.
func (m *Model) EachNeeded(want ...int) iter.Seq[Step] {
	if len(want) == 0 {
		return slices.Values(m.Steps)
	}
	keep, _ := m.marked(nil, append(slices.Clone(want), m.Horizon))
	return func(yield func(Step) bool) {
		for i, s := range m.Steps {
			if keep[i] && !yield(s) {
				return
			}
		}
	}
}

func (m *Model) needed(given, want []int) []Step {
	keep, n := m.marked(given, want)
	out := make([]Step, 0, n)
	for i, s := range m.Steps {
		if keep[i] {
			out = append(out, s)
		}
	}
	return out
}

// marked marks the steps that are needed, and counts them.
func (m *Model) marked(given, want []int) (keep []bool, n int) {
	need, stop := make([]bool, len(m.Cells)), make([]bool, len(m.Cells))
	for _, w := range want {
		need[w] = true
	}
	for _, g := range given {
		stop[g] = true
	}
	keep = make([]bool, len(m.Steps))
	for i, s := range slices.Backward(m.Steps) {
		if !s.any(need) {
			continue
		}
		keep[i], n = true, n+1
		if s.any(stop) {
			continue
		}
		for _, c := range s.Cells {
			cell := m.Cells[c]
			for _, n := range cell.needs() {
				need[n.way.from(cell.Member)] = true
			}
		}
	}
	return keep, n
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

// Moved marks the cells that a change of some can change.
func (m *Model) Moved(changed []int) []bool {
	moved := make([]bool, len(m.Cells))
	for _, c := range changed {
		moved[c] = true
	}
	for _, s := range m.Steps {
		m.spreads(s, moved)
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
		cell := m.Cells[c]
		if moved[c] || slices.ContainsFunc(cell.needs(), func(n need) bool { return moved[n.way.from(cell.Member)] }) {
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
