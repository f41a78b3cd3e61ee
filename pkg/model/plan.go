package model

import "slices"

// Needed returns the steps that the wanted cells need, in order. Without any it
// returns all of them.
func (m *Model) Needed(want ...int) []Step {
	if len(want) == 0 {
		return m.Steps
	}
	need := make([]bool, len(m.Cells))
	need[m.Horizon] = true
	for _, w := range want {
		need[w] = true
	}
	var out []Step
	for _, s := range slices.Backward(m.Steps) {
		if !s.any(need) {
			continue
		}
		out = append(out, s)
		for _, c := range s.Cells {
			for _, n := range m.Cells[c].needs {
				need[n.cell] = true
			}
		}
	}
	slices.Reverse(out)
	return out
}

// Reached splits steps by whether a change of the given cell can change them.
// Cells that are held keep their value whatever happens.
func (m *Model) Reached(steps []Step, changed int, held ...int) (fixed, varying []Step) {
	moved := make([]bool, len(m.Cells))
	moved[changed] = true
	for _, s := range steps {
		if !slices.Contains(held, s.Cells[0]) && (s.any(moved) || m.reads(s, moved)) {
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

func (m *Model) reads(s Step, moved []bool) bool {
	for _, c := range s.Cells {
		for _, n := range m.Cells[c].needs {
			if moved[n.cell] {
				return true
			}
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
	_, varying := m.Reached(m.Needed(seen.Index), changed.Index)
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
