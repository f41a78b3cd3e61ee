package deal

import (
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/diag"
)

// mostOffered is how many keys a hint offers for a path that could be short for several.
const mostOffered = 3

// shortFor are the keys that a path which names none may stand for, as the file writes
// them: those that it is written together or short for, by any of their names, the likeliest
// kind alone.
func shortFor(all []target, path string) []string {
	var kinds [4][]string
	for _, t := range all {
		if _, err := strconv.Atoi(t.path[len(t.path)-1]); err == nil {
			continue // of a list
		}
		if kind := t.meantBy(path); kind >= 0 && !slices.Contains(kinds[kind], t.written()) {
			kinds[kind] = append(kinds[kind], t.written())
		}
	}
	for _, found := range kinds {
		if len(found) > 0 {
			return found[:min(len(found), mostOffered)]
		}
	}
	return nil
}

// meantBy is how a path may stand for a target: 0 for all its words without blanks, 1 for
// its first words, 2 for some of its words, 3 for a slip in another of its names, -1 for not
// at all.
func (t target) meantBy(path string) int {
	best := -1
	for i, name := range t.calledAlone() {
		kind := -1
		_, slip := diag.Nearest(path, []string{name})
		switch words := strings.Fields(name); {
		case squeezed(name) == squeezed(path):
			kind = 0
		case strings.HasPrefix(name, path+" "):
			kind = 1
		case i > 0 && len(path) > 3 && len(words) > 1 && !slices.ContainsFunc(strings.Fields(path), func(w string) bool { return !slices.Contains(words, w) }):
			kind = 2
		case slip:
			kind = 3
		}
		if kind >= 0 && (best < 0 || kind < best) {
			best = kind
		}
	}
	return best
}

// calledAlone are the names of a target: the first with the group that it stands in, the
// others without.
func (t target) calledAlone() (out []string) {
	out = append(out, strings.Join(t.path[max(0, len(t.path)-2):], " "), t.path[len(t.path)-1])
	if t.field != nil {
		out = append(out, t.field.names()...)
	}
	return out
}

// written is the name of a target with its own key as the file would write it.
func (t target) written() string {
	path := slices.Clone(t.path)
	if t.field != nil {
		path[len(path)-1] = t.field.Key()
	}
	return strings.Join(path, ".")
}

func squeezed(s string) string { return strings.NewReplacer(" ", "", ".", "").Replace(s) }
