package deal

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/diag"
)

// A target is a place that a set may name.
type target struct {
	path  []string // evened-out keys and numbers of items
	field *Field
	there bool // the file has it
}

func (t target) name() string { return strings.Join(t.path, ".") }

// fits tells how well a path names the target: 1 in full, 2 by its last parts, 3 by
// another name of the last, 4 as a detail of a charge; 0 not at all.
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
		case !strings.HasSuffix(whole, "."+path):
		case t.field != nil && strings.HasPrefix(t.field.Path, "<fee>"):
			return 4
		case i > 1:
			return 3
		default:
			return 2
		}
	}
	return 0
}

// apply puts the sets into the tree, the last one last.
func (r *reader) apply(root *node, sets []Set) {
	text := Sources(r.name, nil, sets...)[setsSource]
	src := newSource(setsSource, text)
	for i, s := range sets {
		r.applyOne(root, src, i+1, s)
	}
}

func (r *reader) applyOne(root *node, src *source, line int, s Set) {
	at := src.pos(line, 1, max(1, len([]rune(s.Path))))
	path := setPath(s.Path)
	t, ok := r.target(root, path, at, s.Path)
	if !ok {
		return
	}
	v := r.setValue(src, line, s)
	if v == nil {
		return
	}
	if why := root.put(t.path, v, span{text: s.Path, at: at}); why != "" {
		r.say("set-into-value", at, "--set %s: %s", s.Path, why)("set the whole of it, e.g. --set '%s={…}'", strings.Join(t.path[:len(t.path)-1], "."))
	}
}

var itemNumber = regexp.MustCompile(`\s*\[\s*(\d+)\s*\]`)

// setPath evens a path out: loans[1].rate is loans.1.rate.
func setPath(s string) string {
	parts := strings.Split(itemNumber.ReplaceAllString(s, ".$1"), ".")
	for i := range parts {
		parts[i] = plainKey(parts[i])
	}
	return strings.Join(parts, ".")
}

// target finds the one place that a path names in full or by its last parts.
func (r *reader) target(root *node, path string, at diag.Pos, written string) (target, bool) {
	all := targets(root, nil, "")
	var fit []target
	best := 5
	for _, t := range all {
		n := t.fits(path)
		if n == 0 || n > best {
			continue
		}
		if n < best {
			best, fit = n, nil
		}
		fit = append(fit, t)
	}
	if len(fit) == 0 {
		fit = newNames(all, path)
	}
	if there := slices.DeleteFunc(slices.Clone(fit), func(t target) bool { return !t.there }); len(there) == 1 && len(fit) > 1 {
		if !slices.ContainsFunc(fit, func(t target) bool { return t.field == there[0].field && !t.there }) {
			fit = there
		}
	}
	if inside, ok := within(all, path); ok && len(fit) == 0 {
		r.say("set-into-value", at, "--set %s: %s is a single value, which has no parts", diag.Quote(written), inside.name())("set the whole of it, e.g. --set '%s={…}'", inside.name())
		return target{}, false
	}
	names := func(of []target) (out []string) {
		for _, t := range of {
			out = append(out, t.name())
		}
		return out
	}
	switch len(fit) {
	case 1:
		return fit[0], true
	case 0:
		d := finding("unknown-set-path", at, "--set %s: there is no key of that name", diag.Quote(written))
		known := names(all)
		for _, t := range all {
			known = append(known, t.path[len(t.path)-1])
		}
		if near, ok := diag.Nearest(path, known); ok {
			d = d.WithHint("did you mean %q?", near)
		} else {
			d = d.WithHint("write the keys joined by dots, e.g. --set 'purchase.price=$205k' or --set 'loans.1.rate=11%%'")
		}
		r.diags.Add(d)
	default:
		r.say("ambiguous-set-path", at, "--set %s: there is more than one: %s", diag.Quote(written), strings.Join(names(fit), ", "))("write it in full")
	}
	return target{}, false
}

// within finds the key of the file that a path goes beyond.
func within(all []target, path string) (target, bool) {
	for i := strings.LastIndexByte(path, '.'); i > 0; i = strings.LastIndexByte(path[:i], '.') {
		for _, t := range all {
			if t.there && (t.name() == path[:i] || strings.HasSuffix(t.name(), "."+path[:i])) {
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
		named := t.field != nil && slices.Contains([]Kind{Fees, Deposits, Prorations}, t.field.Kind)
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
	for _, f := range fields[group] {
		t := target{path: append(slices.Clone(path), plainKey(f.Key())), field: f}
		var v *node
		for _, name := range f.names() {
			if e := n.entryOf(name); e != nil {
				t.path[len(path)], t.there, v = name, true, e.value
				break
			}
		}
		out = append(out, t)
		switch {
		case v != nil && v.shape == scalar:
		case f.Kind == Group:
			out = append(out, targets(v, t.path, f.Path)...)
		case f.Kind == List || f.Kind == Tables:
			inner := f.Path + "[]"
			for i := 0; i < max(1, v.length()); i++ {
				out = append(out, targets(v.item(i), append(slices.Clone(t.path), strconv.Itoa(i+1)), inner)...)
			}
		case f.Kind == Fees || f.Kind == Deposits || f.Kind == Prorations:
			out = append(out, v.named(t.path, f)...)
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
		t := target{path: append(slices.Clone(path), e.name), there: true}
		out = append(out, t)
		if f.Kind == Fees && e.value.shape == mapping {
			out = append(out, targets(e.value, t.path, "<fee>")...)
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

// setValue reads a set's text as the file would: brackets are YAML, all else is
// taken as it stands.
func (r *reader) setValue(src *source, line int, s Set) *node {
	text := src.lines[line-1]
	value := strings.TrimSpace(text[len(s.Path)+1:])
	start := strings.Index(text[len(s.Path)+1:], value) + len(s.Path) + 1
	v := span{value, src.pos(line, len([]rune(text[:start]))+1, max(1, len([]rune(value)))), true}
	switch {
	case value == "" || value == "null" || value == "~":
		return &node{shape: nothing, span: v}
	case strings.HasPrefix(value, "{") || strings.HasPrefix(value, "["):
		padded := strings.Repeat("\n", line-1) + strings.Repeat(" ", v.at.Col-1) + value
		return grow(newSource(setsSource, padded), &r.diags)
	}
	return &node{shape: scalar, span: v}
}

// put sets the value at a path, making the groups on the way; it says why it cannot.
func (n *node) put(path []string, v *node, key span) string {
	for i, part := range path {
		if n.shape == nothing {
			n.shape = mapping
			if number, err := strconv.Atoi(part); err == nil && number == 1 {
				n.shape = list
			}
		}
		last := i == len(path)-1
		switch n.shape {
		case mapping:
			e := n.find(part)
			if e == nil {
				n.entries = append(n.entries, entry{part, span{text: part, at: key.at}, &node{span: span{at: key.at}}})
				e = &n.entries[len(n.entries)-1]
			}
			if last {
				e.value, e.key.at = v, key.at
				return ""
			}
			n = e.value
		case list:
			number, err := strconv.Atoi(part)
			if err != nil || number < 1 || number > len(n.items)+1 || last {
				return fmt.Sprintf("%s is no item of the list", part)
			}
			if number > len(n.items) {
				n.items = append(n.items, &node{span: span{at: key.at}})
			}
			n = n.items[number-1]
		default:
			return "it lies inside a single value"
		}
	}
	return ""
}
