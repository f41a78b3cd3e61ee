package deal

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// apply puts the sets into the tree, the last one last.
func (r *reader) apply(root *node, sets []Set) {
	text := Sources(r.name, nil, sets...)[setsSource]
	src := newSource(setsSource, text)
	for i, s := range sets {
		r.applyOne(root, src, i+1, s)
		root.listLoan()
	}
}

func (r *reader) applyOne(root *node, src *source, line int, s Set) {
	at := src.pos(line, 1, max(1, len([]rune(s.Path))))
	if oddNumber(s.Path) {
		r.say("unknown-set-path", at, "--set %s: there is no item of that number", diag.Quote(s.Path))("items count from 1")
		return
	}
	if whole := (span{s.Path + "=" + s.Value, at, true}); !(grower{src, &r.diags}).visible(whole) {
		return
	}
	path := setPath(s.Path)
	if strings.HasPrefix(path, "scope.") {
		root.byRoom()
	}
	t, ok := r.target(root, path, at, s.Path)
	if !ok {
		return
	}
	v := r.setValue(src, line, s)
	if v == nil {
		return
	}
	if r.optionForSize(root, t, v, s) {
		return
	}
	place := t.inside(root, v)
	r.doubtLoses(t, root.under(place), v, s)
	if why := root.put(place, v, span{text: s.Path, at: at}); why != "" {
		r.say("set-into-value", at, "--set %s: %s", s.Path, why)("set the whole of it, e.g. --set '%s={…}'", strings.Join(t.path[:len(t.path)-1], "."))
	}
}

// oddNumber reports whether a part of a path is a number, but no item's: -1, 0, 1-.
func oddNumber(path string) bool {
	for _, part := range strings.Split(itemNumber().ReplaceAllString(path, ".$1"), ".") {
		if n, err := strconv.Atoi(plainKey(part)); err == nil && (n < 1 || strings.TrimSpace(part) != strconv.Itoa(n)) {
			return true
		}
	}
	return strings.Contains(path, "[-")
}

var itemNumber = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\s*\[\s*(\d+)\s*\]`)
})

// setPath evens a path out: loans[1].rate is loans.1.rate.
func setPath(s string) string {
	parts := strings.Split(itemNumber().ReplaceAllString(s, ".$1"), ".")
	for i := range parts {
		parts[i] = plainKey(parts[i])
	}
	return strings.Join(parts, ".")
}

// target finds the one place that a path names in full or by its last parts.
func (r *reader) target(root *node, path string, at diag.Pos, written string) (target, bool) {
	all := targets(root, nil, "")
	fit := fitting(all, path)
	if len(fit) == 0 {
		for _, p := range byEntryName(all, path) {
			fit = append(fit, fitting(all, p)...)
		}
	}
	if len(fit) == 0 {
		fit = fitting(all, asTheFileSays(root, path))
	}
	if len(fit) == 1 && fit[0].there && !strings.Contains(path, ".") {
		fit = append(fit, details(all, path, fit[0])...)
	}
	fit = slices.DeleteFunc(fit, func(t target) bool { return t.fresh && t.fits(path) != 1 }) // an entry is added by its full path alone
	if there := only(fit, isThere); len(there) == 1 && len(fit) > 1 {
		if !slices.ContainsFunc(fit, func(t target) bool { return t.field == there[0].field && !t.there }) {
			fit = there
		}
	}
	if inside, ok := within(all, path); ok && len(fit) == 0 {
		r.say("set-into-value", at, "--set %s: %s is a single value, which has no parts", diag.Quote(written), inside.name())("set the whole of it, e.g. --set '%s={…}'", inside.name())
		return target{}, false
	}
	if key := keyOfEntry(all, path); key != "" && !slices.ContainsFunc(fit, isThere) {
		what := "is the name of an entry, which has several keys"
		if len(fit) > 0 {
			what = "could be " + fit[0].name() + ", or the entry of that name"
		}
		r.say("ambiguous-set-path", at, "--set %s: that %s", diag.Quote(written), what)("for the entry write which of its keys, e.g. --set '%s.%s=…'", path, key)
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
		r.doubtAdded(all, fit[0], at)
		return fit[0], true
	case 0:
		if strings.HasPrefix(path, "bad days.") {
			r.say("unknown-set-path", at, "--set %s: what is on a bad day is changed in the file", diag.Quote(written))("or set the bad days whole:   --set 'bad days={…}'")
			return target{}, false
		}
		r.say("unknown-set-path", at, "--set %s: there is no key of that name", diag.Quote(written))("%s", meantPath(all, path))
	default:
		r.say("ambiguous-set-path", at, "--set %s: there is more than one: %s", diag.Quote(written), strings.Join(names(fit), ", "))("write it in full")
	}
	return target{}, false
}

// asTheFileSays puts the name that the file has for a group in place of another of its names
// in front of a path, and the number of an entry where a list has but one: loans.rate is
// loan.1.rate.
func asTheFileSays(root *node, path string) string {
	parts := strings.Split(path, ".")
	for _, f := range fields()[""] {
		if !f.isNamed(parts[0]) {
			continue
		}
		for _, name := range f.names() {
			e := root.entryOf(name)
			if e == nil {
				continue
			}
			parts[0] = name
			if f.Kind == List && e.value.length() == 1 && len(parts) > 1 && strings.Trim(parts[1], "0123456789") != "" {
				parts = slices.Insert(parts, 1, "1")
			}
		}
	}
	return strings.Join(parts, ".")
}

// keyOfEntry is the key that is most asked for of the entry of a list that has a name, or "".
func keyOfEntry(all []target, name string) string {
	for _, t := range all {
		for _, item := range t.entriesOfList() {
			if slices.Contains(item.calledInSets(), name) {
				if t.field.Path == "loans" {
					return "rate"
				}
				for _, key := range []string{"amount", "materials", "labour"} {
					if item.entryOf(key) != nil {
						return key
					}
				}
				return "amount"
			}
		}
	}
	return ""
}

func isThere(t target) bool { return t.there }

// only are those of some places of which it holds.
func only(of []target, is func(target) bool) []target {
	return slices.DeleteFunc(slices.Clone(of), func(t target) bool { return !is(t) })
}

// details are the details of charges in the file that a single word names as well as
// another place.
func details(all []target, word string, beside target) (out []target) {
	for _, t := range all {
		if t.there && t.whole && t.field != nil && strings.HasPrefix(t.field.Path, "<fee>.") && t.path[len(t.path)-1] == word && t.name() != beside.name() {
			out = append(out, t)
		}
	}
	return out
}

// doubtAdded doubts a charge that a set adds beside one of nearly that name.
func (r *reader) doubtAdded(all []target, t target, at diag.Pos) {
	group, name, _ := cutLast(t.name())
	if t.there || t.field != nil {
		return
	}
	var there []string
	for _, x := range all {
		if x.there && x.field == nil && len(x.path) == len(t.path) && strings.HasPrefix(x.name(), group+".") {
			there = append(there, x.path[len(x.path)-1])
		}
	}
	if near, ok := diag.Nearest(name, there); ok {
		r.say("set-adds-near", at, "--set adds %s to %s, where %s stands already", diag.Quote(name), group, diag.Quote(near))("if that is meant, write   --set '%s.%s=…'", group, near)
	}
}

// fitting are the places that a path fits best, those of the file before those that it
// would add.
func fitting(all []target, path string) []target {
	var fits [5][]target // by how well; 0 for not at all
	for _, t := range all {
		n := t.fits(path)
		fits[n] = append(fits[n], t)
	}
	if slices.ContainsFunc(fits[1], func(t target) bool { return !t.fresh }) {
		return fits[1] // written in full
	}
	for _, fit := range fits[1:] {
		if slices.ContainsFunc(fit, func(t target) bool { return t.there }) {
			return fit
		}
	}
	for _, fit := range fits[1:] {
		if len(fit) > 0 {
			return fit
		}
	}
	return newNames(all, path)
}

// meantPath is the way out of a path that names nothing: the nearest of all names,
// or of the keys of the group that it names, or those keys.
func meantPath(all []target, path string) string {
	all = slices.DeleteFunc(slices.Clone(all), func(t target) bool { return t.fresh })
	if f := besides(path); f != nil {
		return fmt.Sprintf("a plan has no %[1]s; see what it does with   ledgerboard stress FILE --down '%[1]s=%[2]s'   , or give it a range or a bad day", f.Path, besideFigures[f.Path])
	}
	if few := tooFew(all, path); few != "" {
		return few
	}
	if group, line, _ := cutLast(path); strings.HasSuffix("."+group, ".own lines") {
		return fmt.Sprintf("own lines are set all at once, e.g. --set 'comps.own lines={%s: $12,000}'", line)
	}
	if slices.ContainsFunc(pricebook.Checks(), func(c *pricebook.Check) bool { return plainKey(c.Name) == path }) {
		return fmt.Sprintf("a part of the house stands under seen:   --set 'seen.%s=good'", path)
	}
	if numbered := byEntryName(all, path); len(numbered) > 0 {
		path = numbered[0]
	}
	group, last, _ := cutLast(path)
	var known, here []string
	for _, t := range all {
		if _, err := strconv.Atoi(t.path[len(t.path)-1]); err == nil && !t.there {
			continue // one more of a list
		}
		known = append(known, t.name(), t.path[len(t.path)-1])
		if n := len(t.path) - 1; group != "" && strings.HasSuffix("."+strings.Join(t.path[:n], "."), "."+group) && !slices.Contains(here, t.path[n]) {
			here = append(here, t.path[n])
		}
	}
	if near, ok := diag.Nearest(last, here); ok {
		return fmt.Sprintf("did you mean %q?", group+"."+near)
	}
	if len(here) > 0 {
		return fmt.Sprintf("in %s stand: %s", group, strings.Join(here, ", "))
	}
	if near, ok := diag.Nearest(path, known); ok {
		return fmt.Sprintf("did you mean %q?", near)
	}
	if near, ok := diag.Nearest(group, entryNames(all)); ok {
		return fmt.Sprintf("did you mean %q?", near+"."+last)
	}
	if meant := shortFor(all, path); len(meant) > 0 {
		return `did you mean "` + strings.Join(meant, `" or "`) + `"?`
	}
	return "write the keys joined by dots, e.g. --set 'purchase.price=$205k' or --set 'loans.1.rate=11%'"
}

// tooFew says how many entries a list has, where a path asks for one beyond.
func tooFew(all []target, path string) string {
	for _, t := range all {
		rest, in := strings.CutPrefix(path, t.name()+".")
		if !in && t.field != nil && t.field.Kind == Roof {
			rest, in = strings.CutPrefix(path, t.field.Key()+".")
		}
		number, _, _ := strings.Cut(rest, ".")
		n, err := strconv.Atoi(number)
		if have := t.value.length(); in && err == nil && t.field != nil && (t.field.Kind == List || t.field.Kind == Roof) && have > 0 && n > have {
			return fmt.Sprintf("the last of %s in the file is %s.%d; write one more into the file", t.name(), t.name(), have)
		}
	}
	return ""
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

// byRoom turns a scope that is one option for all rooms into one by room, so that a
// set can change a single room.
func (n *node) byRoom() {
	e := n.find("scope")
	if e == nil || e.value.shape != scalar {
		return
	}
	all := entry{"all rooms", e.key, e.value}
	e.value = &node{shape: mapping, span: span{at: e.value.at}, entries: []entry{all}}
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
			if err != nil || number < 1 || number > len(n.items)+1 {
				return fmt.Sprintf("%s is no item of the list", part)
			}
			if number > len(n.items) {
				n.items = append(n.items, &node{span: span{at: key.at}})
			}
			if last {
				n.items[number-1] = v
				return ""
			}
			n = n.items[number-1]
		default:
			return "it lies inside a single value"
		}
	}
	return ""
}
