package model

import "slices"

// Givens are what a deal says of a member, a few inputs: as a list they take a tenth of
// the room of a map and are found as soon.
type Givens []Given

// A Given is an input of a member with its value.
type Given struct {
	Line string
	*Value
}

// Look returns the value of a line and whether it is given.
func (g Givens) Look(line string) (Value, bool) {
	if v := g.find(line); v != nil {
		return *v, true
	}
	return Value{}, false
}

// Of returns the value of a line, that of nothing if it is not given.
func (g Givens) Of(line string) Value {
	v, _ := g.Look(line)
	return v
}

// find is the value of a line, or nil. It is never written to, so it may be kept.
func (g Givens) find(line string) *Value {
	for _, x := range g {
		if x.Line == line {
			return x.Value
		}
	}
	return nil
}

// Give sets an input of m.
func (m *Member) Give(line string, v Value) {
	for i, x := range m.Given {
		if x.Line == line {
			m.Given[i].Value = &v
			return
		}
	}
	m.Given = append(m.Given, Given{line, &v})
}

// Withdraw takes an input of m back.
func (m *Member) Withdraw(line string) {
	m.Given = slices.DeleteFunc(m.Given, func(x Given) bool { return x.Line == line })
}
