package comps

import (
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
)

// mapped finds which column holds what, first by what the caller says, then by the
// names of the headers, and reports whether there is enough to go on.
func (r *reader) mapped(header []string, stated map[string]string) bool {
	r.record = slices.Clone(header)
	r.record[0] = strings.TrimPrefix(r.record[0], "\ufeff")
	taken := map[int]int{} // field to column
	good := r.stated(taken, stated)
	for at, h := range r.record {
		name, unit := plain(h)
		f := fieldOf(name)
		if f < 0 || slices.ContainsFunc(r.columns, func(c column) bool { return c.at == at }) {
			continue
		}
		if old, twice := taken[f]; twice {
			if _, said := stated[fields[f].name]; !said {
				r.found.Add(diag.Warnf(r.header(at), "column-twice", "%s is read from %q; %q looks like it too",
					fields[f].name, r.record[old], h).WithHint("say which one holds it"))
			}
			continue
		}
		r.take(taken, f, at, unit)
	}
	slices.SortFunc(r.columns, func(a, b column) int { return a.at - b.at })
	for _, need := range []string{"date", "price"} {
		if _, ok := taken[fieldOf(need)]; !ok {
			r.found.Add(r.noColumn(need))
			good = false
		}
	}
	return good
}

// stated maps the columns that the caller names.
func (r *reader) stated(taken map[int]int, stated map[string]string) bool {
	good := true
	for _, name := range slices.Sorted(maps.Keys(stated)) {
		f := slices.IndexFunc(fields, func(f field) bool { return f.name == name })
		if f < 0 {
			d := diag.Errorf(diag.Pos{File: r.file}, "unknown-field", "there is no field %s", diag.Quote(name))
			if near, ok := diag.Nearest(name, fieldNames()); ok {
				d = d.WithHint("did you mean %q?", near)
			} else {
				d = d.WithHint("the fields are %s", strings.Join(fieldNames(), ", "))
			}
			r.found.Add(d)
			good = false
			continue
		}
		at := slices.IndexFunc(r.record, func(h string) bool {
			return strings.EqualFold(strings.TrimSpace(h), strings.TrimSpace(stated[name]))
		})
		if at < 0 {
			d := diag.Errorf(diag.Pos{File: r.file, Line: 1}, "unknown-column", "there is no column %s for %s", diag.Quote(stated[name]), name)
			if near, ok := diag.Nearest(stated[name], r.record); ok {
				d = d.WithHint("did you mean %q?", near)
			} else {
				d = d.WithHint("there are %s", strings.Join(r.record, ", "))
			}
			r.found.Add(d)
			good = false
			continue
		}
		_, unit := plain(r.record[at])
		r.take(taken, f, at, unit)
	}
	return good
}

// take notes that a column holds a field. The unit of a header counts where the
// field has one.
func (r *reader) take(taken map[int]int, f, at int, unit string) {
	c := column{at: at, field: fields[f], header: strings.TrimSpace(r.record[at])}
	if unit != "" && c.unit != "" {
		c.unit = unit
	}
	taken[f] = at
	r.columns = append(r.columns, c)
}

func (r *reader) header(at int) diag.Pos {
	line, col := r.table.FieldPos(at)
	return diag.Pos{File: r.file, Line: line, Col: col, Len: utf8.RuneCountInString(r.record[at])}
}

func (r *reader) noColumn(name string) diag.Diag {
	d := diag.Errorf(diag.Pos{File: r.file, Line: 1}, "no-column", "no column holds the %s of a sale", name)
	return d.WithHint("name one %q, or say which holds it; there are %s", fields[fieldOf(name)].names[0], strings.Join(r.record, ", "))
}
