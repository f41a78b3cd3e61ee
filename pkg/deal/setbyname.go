package deal

import (
	"slices"
	"strconv"
	"strings"
)

// byEntryName are the paths that a path stands for which names an entry of a list, such
// as a loan or a line of work, by what the file calls it in place of its number.
func byEntryName(all []target, path string) (out []string) {
	for _, t := range all {
		for i, item := range t.entriesOfList() {
			for _, name := range item.calledInSets() {
				rest, ok := behindName(t, name, path)
				if ok {
					out = append(out, t.name()+"."+strconv.Itoa(i+1)+"."+rest)
				}
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// entryNames are all names of entries of lists.
func entryNames(all []target) (out []string) {
	for _, t := range all {
		for _, item := range t.entriesOfList() {
			out = append(out, item.calledInSets()...)
		}
	}
	return out
}

func (t target) entriesOfList() []*node {
	if t.field == nil || t.field.Kind != List || t.value == nil {
		return nil
	}
	return t.value.items
}

// behindName is what a path says behind the name of an entry, which may stand alone or
// behind its list.
func behindName(list target, name, path string) (rest string, ok bool) {
	for i := range list.path {
		if rest, ok = strings.CutPrefix(path, strings.Join(list.path[i:], ".")+"."+name+"."); ok {
			return rest, true
		}
	}
	return strings.CutPrefix(path, name+".")
}

// calledInSets are the names of an entry of a list: its name, or its trade and its work,
// each alone or both together as the pages show them.
func (n *node) calledInSets() (out []string) {
	var parts []string
	for _, key := range []string{"name", "trade", "work"} {
		if e := n.entryOf(key); e != nil && e.value.shape == scalar && e.value.text != "" {
			parts = append(parts, e.value.text)
		}
	}
	if len(parts) == 2 {
		parts = append(parts, parts[0]+": "+parts[1])
	}
	for _, p := range parts {
		out = append(out, setPath(p))
	}
	return out
}
