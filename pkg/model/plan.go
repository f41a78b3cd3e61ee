package model

import "slices"

// Needed returns the steps that the wanted cells need, in order. Without any it
// returns all of them.
func (m *Model) Needed(want ...int) []Step {
	if len(want) == 0 {
		return m.Steps
	}
	return m.needed(nil, append(slices.Clone(want), m.Horizon))
}

func (m *Model) needed(given, want []int) []Step {
	need, stop := make([]bool, len(m.Cells)), make([]bool, len(m.Cells))
	for _, w := range want {
		need[w] = true
	}
	for _, g := range given {
		stop[g] = true
	}
	var used []int // the last first
	for i, s := range slices.Backward(m.Steps) {
		if !s.any(need) {
			continue
		}
		used = append(used, i)
		if s.any(stop) {
			continue
		}
		for _, c := range s.Cells {
			for _, n := range m.Cells[c].needs {
				need[n.cell] = true
			}
		}
	}
	out := make([]Step, 0, len(used))
	for _, i := range slices.Backward(used) {
		out = append(out, m.Steps[i])
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
		if !kept[s.Cells[0]] && m.Touched(s, moved) {
			varying = append(varying, s)
			for _, c := range s.Cells {
				moved[c] = true
			}
		} else {
			fixed = append(fixed, s)
		}
	}
	return fixed, varying
}

// Touched reports whether a step works out, or reads, a cell that has moved.
func (m *Model) Touched(s Step, moved []bool) bool {
	for _, c := range s.Cells {
		if moved[c] || slices.ContainsFunc(m.Cells[c].needs, func(n need) bool { return moved[n.cell] }) {
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
