package deal

import (
	"fmt"
	"slices"

	"ledgerboard/pkg/diag"
)

// blameSets moves mistakes that are told in the file, but are none without some set, to
// that set.
func blameSets(how Options, name string, text []byte, sets []Set, found diag.List) {
	same := func(d diag.Diag) func(diag.Diag) bool {
		return func(x diag.Diag) bool { return x.Code == d.Code && x.Pos == d.Pos && x.Message == d.Message }
	}
	_, alone := readOnce(how, name, text, nil)
	without := map[int]diag.List{} // what is found without a set, once one is asked for
	src := newSource(setsSource, Sources(name, nil, sets...)[setsSource])
	for i, d := range found {
		if d.Severity != diag.Error || InSet(d.Pos) || slices.ContainsFunc(alone, same(d)) {
			continue
		}
		for n := len(sets) - 1; n >= 0; n-- {
			if plainKey(sets[n].Path) == "scope" {
				continue // compare takes each option in turn; what it comes to is the file's
			}
			if _, read := without[n]; !read {
				_, without[n] = readOnce(how, name, text, slices.Delete(slices.Clone(sets), n, n+1))
			}
			if slices.ContainsFunc(without[n], same(d)) {
				continue
			}
			if d.Pos.File == name && d.Pos.Line > 0 {
				found[i].Message += fmt.Sprintf(", by this beside line %d of the file", d.Pos.Line)
			}
			found[i].Hint += wholeGroup(how, name, text, sets, n)
			found[i].Pos = src.pos(n+1, 1, max(1, len([]rune(sets[n].Path))))
			break
		}
	}
	found.Sort()
}

// wholeGroup says how a set stands in for all of its group, where a set can.
func wholeGroup(how Options, name string, text []byte, sets []Set, n int) string {
	group, key, nested := cutLast(sets[n].Path)
	if !nested {
		return ""
	}
	whole := slices.Clone(sets)
	whole[n] = Set{Path: group, Value: fmt.Sprintf("{%s: %s}", key, sets[n].Value)}
	if _, found := readOnce(how, name, text, whole); slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Severity == diag.Error && InSet(d.Pos) }) {
		return "; a set leaves all else that is in " + group + " as it is: write this in the file instead"
	}
	return fmt.Sprintf("; to have it in place of all that is in %s, give the group:   --set '%s=%s'", group, group, whole[n].Value)
}
