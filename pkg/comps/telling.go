package comps

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// moreTelling orders the columns that may hold a field by their headers alone, so that the
// order in which they stand plays no part: by name, then those with a unit, then by letters.
func (r *reader) moreTelling(f int) func(a, b int) int {
	measures := []string{"sqft", "acres", "m2", "mi", "km", "ft", "m", ""}
	return func(a, b int) int {
		x, u := plain(r.record[a])
		y, v := plain(r.record[b])
		return cmp.Or(fields[f].rank(x)-fields[f].rank(y),
			slices.Index(measures, u)-slices.Index(measures, v),
			strings.Compare(strings.ToLower(r.record[a]), strings.ToLower(r.record[b])))
	}
}

// onePlace leaves the columns of one kind of place: a longitude beside northings is none.
// What the caller names goes before what is found, degrees before metres unless those are
// wanted, and half a pair is not read.
func (r *reader) onePlace(like map[int][]int, taken map[int]int, plane bool) {
	kinds := [][2]string{{"longitude", "latitude"}, {"x", "y"}}
	if plane {
		slices.Reverse(kinds)
	}
	for _, kind := range kinds {
		r.leaveHalf(taken, like, kind)
	}
	rank := func(kind [2]string) (n int) {
		for _, name := range kind {
			f := fieldOf(name)
			if _, said := taken[f]; said {
				n += 4 // the caller says so
			} else if len(like[f]) > 0 {
				n++
			}
		}
		return n
	}
	if rank(kinds[1]) > rank(kinds[0]) {
		slices.Reverse(kinds)
	}
	read, other := kinds[0], kinds[1]
	if n := rank(read); n == 1 { // half of each at most
		for _, kind := range kinds {
			r.leave(like, kind, func(name string) string { return withoutHalf(kind, name) })
		}
		return
	}
	r.leave(like, other, func(string) string { return fmt.Sprintf("%s and %s tell where a house stands", read[0], read[1]) })
}

// leaveHalf takes a column that the caller names from those that are read where it is half of
// a place and none holds the other half.
func (r *reader) leaveHalf(taken map[int]int, like map[int][]int, kind [2]string) {
	for i, name := range kind {
		at, said := taken[fieldOf(name)]
		other := fieldOf(kind[1-i])
		if _, both := taken[other]; !said || both || len(like[other]) > 0 {
			continue
		}
		r.found.Add(r.unread(at, withoutHalf(kind, name), sayBoth(kind)))
		r.columns = slices.DeleteFunc(r.columns, func(c column) bool { return c.at == at })
		delete(taken, fieldOf(name))
	}
}

func withoutHalf(kind [2]string, name string) string {
	missing := kind[0]
	if name == missing {
		missing = kind[1]
	}
	return "no column holds the " + missing + " beside it"
}

func sayBoth(names [2]string) string {
	return fmt.Sprintf("if it should be read, say so for both, e.g.   columns: {%s: ..., %s: ...}", names[0], names[1])
}

// leave takes the columns of two fields from those that are read, and says why.
func (r *reader) leave(like map[int][]int, names [2]string, why func(name string) string) {
	for _, name := range names {
		f := fieldOf(name)
		for _, at := range like[f] {
			r.found.Add(r.unread(at, why(name), sayBoth(names)))
		}
		delete(like, f)
	}
}

// oneCountOfBaths leaves all baths in one figure unread beside full and half ones, which
// tell more, unless the caller names that column.
func (r *reader) oneCountOfBaths(like map[int][]int, taken map[int]int) {
	total, full, half := fieldOf("baths"), fieldOf("full baths"), fieldOf("half baths")
	has := func(f int) bool { _, said := taken[f]; return said || len(like[f]) > 0 }
	if !has(total) || !has(full) || !has(half) {
		return
	}
	if _, said := taken[total]; said {
		r.leave(like, [2]string{"full baths", "half baths"}, func(string) string { return "the column that baths names tells them all" })
		return
	}
	for _, at := range like[total] {
		r.found.Add(r.unread(at, "full and half baths have columns of their own", fmt.Sprintf("if it should be read instead, say   columns: {baths: %s}", strings.TrimSpace(r.record[at]))))
	}
	delete(like, total)
}
