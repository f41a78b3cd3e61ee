package deal

import (
	"slices"
	"strconv"
	"strings"
)

// A target is a place that a set may name.
type target struct {
	path  []string // evened-out keys and numbers of items
	field *Field
	there bool // the file has it
	whole bool // as a single value, which has no parts
	fresh bool // it would stand in an entry that its list does not have
	alone bool // only its full path names it, for its name is another's
	value *node
}

func (t target) name() string { return strings.Join(t.path, ".") }

// fits tells how well a path names the target: 1 in full, 2 by its last parts, 3 by
// another name of the last, 4 as a detail of a charge, a room or work; 0 not at all.
func (t target) fits(path string) int {
	names := []string{t.path[len(t.path)-1]}
	if t.field != nil {
		names = append(names, t.field.names()...)
	}
	for i, n := range names {
		whole := strings.Join(append(slices.Clone(t.path[:len(t.path)-1]), n), ".")
		switch {
		case whole == path:
			return 1
		case t.alone || !strings.HasSuffix(whole, "."+path):
		case t.field != nil && (strings.HasPrefix(t.field.Path, "<") || strings.HasPrefix(t.field.Path, "outside.")):
			return 4 // a key of a room, or of outside, which has the same ones
		case i > 1:
			return 3
		default:
			return 2
		}
	}
	return 0
}

// within finds the single value of the file that a path goes beyond.
func within(all []target, path string) (target, bool) {
	for i := strings.LastIndexByte(path, '.'); i > 0; i = strings.LastIndexByte(path[:i], '.') {
		if slices.ContainsFunc(all, func(t target) bool { return !t.whole && t.name() == path[:i] }) {
			break // a group or list named in full
		}
		for _, t := range all {
			if t.whole && t.there && (t.name() == path[:i] || strings.HasSuffix(t.name(), "."+path[:i])) {
				return t, true
			}
		}
	}
	return target{}, false
}

// newNames are the charges and deposits that a path would add: a known group with
// a new name in it.
func newNames(all []target, path string) []target {
	group, name, found := cutLast(path)
	if !found || name == "" {
		return nil
	}
	var out []target
	for _, t := range all {
		named := t.field != nil && slices.Contains([]Kind{Fees, Deposits, Prorations, Named, Works, Scope}, t.field.Kind)
		if named && (t.name() == group || strings.HasSuffix(t.name(), "."+group)) {
			out = append(out, target{path: append(slices.Clone(t.path), name)})
		}
	}
	return out
}

func cutLast(path string) (string, string, bool) {
	i := strings.LastIndexByte(path, '.')
	if i < 0 {
		return "", "", false
	}
	return path[:i], path[i+1:], true
}

// targets lists every key that the group has or may have.
func targets(n *node, path []string, group string) []target {
	var out []target
	for _, f := range fields()[group] {
		t := target{path: append(slices.Clone(path), plainKey(f.Key())), field: f}
		var v *node
		for _, name := range f.names() {
			if e := n.entryOf(name); e != nil {
				t.path[len(path)], t.there, v = name, true, e.value
				t.whole, t.value = v.shape == scalar, v
				break
			}
		}
		out = append(out, t)
		switch {
		case v != nil && v.shape == scalar:
		case f.Kind == Group:
			out = append(out, targets(v, t.path, f.Path)...)
		case f.Kind == List || f.Kind == Tables || f.Kind == Ties:
			inner := f.Path + "[]"
			for i := 0; i < max(1, v.length()); i++ {
				within := targets(v.item(i), append(slices.Clone(t.path), strconv.Itoa(i+1)), inner)
				for j := range within {
					within[j].fresh = i >= v.length()
				}
				out = append(out, within...)
			}
		case v != nil && slices.Contains([]Kind{Brackets, Slabs, Conditions}, f.Kind):
			for _, e := range v.entries {
				out = append(out, target{path: append(slices.Clone(t.path), e.name), there: true, whole: true})
			}
		case f.Kind == Fees || f.Kind == Deposits || f.Kind == Prorations:
			out = append(out, v.named(t.path, f)...)
		case f.Kind == Named || f.Kind == Works || f.Kind == Scope:
			out = append(out, v.groups(t.path, f)...)
		case v != nil && v.shape == list:
			for i := range len(v.items) + 1 {
				part := target{path: append(slices.Clone(t.path), strconv.Itoa(i+1)), there: i < len(v.items), whole: true}
				if item := v.item(i); f.Kind == Roof && item != nil && item.shape == mapping {
					part.whole = false
					out = append(out, targets(item, part.path, "<plane>")...)
				}
				out = append(out, part)
			}
		}
	}
	return out
}

// named lists the charges of a group and the details of those that have any.
func (n *node) named(path []string, f *Field) []target {
	if n == nil {
		return nil
	}
	var out []target
	for _, e := range n.entries {
		t := target{path: append(slices.Clone(path), e.name), there: true, whole: e.value.shape == scalar}
		out = append(out, t)
		if f.Kind == Fees && e.value.shape == mapping {
			out = append(out, targets(e.value, t.path, "<fee>")...)
		}
	}
	return out
}

// groups lists the groups by name, and what stands in each: rooms, options, work.
func (n *node) groups(path []string, f *Field) []target {
	if n == nil {
		return nil
	}
	of := f.Of
	if f.Kind == Works {
		of = "<work>"
	}
	var out []target
	for _, e := range n.entries {
		t := target{path: append(slices.Clone(path), e.name), there: true, alone: of == "<range>"}
		out = append(out, t)
		if e.value.shape == mapping {
			out = append(out, targets(e.value, t.path, of)...)
		}
	}
	return out
}

func (n *node) entryOf(name string) *entry {
	if n == nil {
		return nil
	}
	return n.find(name)
}

func (n *node) length() int {
	if n == nil {
		return 0
	}
	return len(n.items)
}

func (n *node) item(i int) *node {
	if i >= n.length() {
		return nil
	}
	return n.items[i]
}
