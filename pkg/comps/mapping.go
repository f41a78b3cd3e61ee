package comps

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
)

// mapped finds which column holds what, first by what the caller says, then by the
// names of the headers, and reports whether there is enough to go on.
func (r *reader) mapped(header []string, o Options) bool {
	r.record = slices.Clone(header)
	r.record[0] = strings.TrimPrefix(r.record[0], "\ufeff")
	taken := map[int]int{} // field to column
	good := r.stated(taken, o.Columns)
	if name, _ := plain(r.record[0]); len(r.columns) == 0 && len(r.record) == 1 && strings.Contains(name, " ") && fieldOf(name) < 0 {
		r.found.Add(diag.Errorf(r.header(0), "no-column", "nothing parts the first line into columns: no comma, tab, semicolon or bar, and no two blanks").
			WithHint("part the columns by one of these in every line, e.g.   address; sold on; price   and delete lines that stand above the row of headings"))
		return false
	}
	like := map[int][]int{} // field to the columns that are called so
	for at, h := range r.record {
		name, _ := plain(h)
		switch f := fieldOf(name); {
		case slices.ContainsFunc(r.columns, func(c column) bool { return c.at == at }):
		case perArea(h) && good:
			r.found.Add(r.unread(at, "it is a price per area", "it follows from the price and the area, which want columns of their own"))
		case perArea(h): // one was stated, and refused
		case inPercent(h) && FieldNamed(h) != "":
			r.found.Add(r.unread(at, "it holds shares", "write the "+FieldNamed(h)+" itself, in a column of its own, for a share of something else is not read"))
		case inDollars(h):
			r.found.Add(r.unread(at, "it is in dollars", "the "+FieldNamed(h)+" wants a column of its own"))
		case f >= 0:
			like[f] = append(like[f], at)
		case r.takeOwn(ownHeader(o.Own, h), at):
		case name != "":
			r.list.Unread = append(r.list.Unread, strings.TrimSpace(h))
		case strings.TrimSpace(h) == "":
			r.nameless = append(r.nameless, at)
		}
	}
	r.onePlace(like, taken, o.Plane)
	r.oneCountOfBaths(like, taken)
	for f := range fields {
		if len(like[f]) > 0 {
			r.takeOne(taken, f, like[f])
		}
	}
	slices.SortFunc(r.columns, func(a, b column) int { return fieldOf(a.name) - fieldOf(b.name) })
	for _, need := range []string{"date", "price"} {
		if _, ok := taken[fieldOf(need)]; !ok {
			r.found.Add(r.noColumn(need))
			good = false
		}
	}
	return good
}

// takeOne takes the column with the most telling name of those that may hold a field;
// where the caller has named one it only says that they are left alone.
func (r *reader) takeOne(taken map[int]int, f int, columns []int) {
	if said, ok := taken[f]; ok {
		for _, at := range columns {
			h := diag.Quote(strings.TrimSpace(r.record[at]))
			r.found.Add(r.unread(at, fmt.Sprintf("columns names %s as the %s", diag.Quote(strings.TrimSpace(r.record[said])), fields[f].name), fmt.Sprintf("if it should be read instead, say   columns: {%s: %s}", fields[f].name, h)))
		}
		return
	}
	slices.SortStableFunc(columns, r.moreTelling(f))
	for _, at := range columns[1:] {
		if fields[f].name == "address" { // a parcel beside it is usual, and either tells sales apart
			break
		}
		r.found.Add(diag.Warnf(r.header(at), "column-twice", "%s is read from %q; %q looks like it too",
			fields[f].name, r.record[columns[0]], r.record[at]).WithHint("if that is not so, say it under columns, e.g.   columns: {%s: %s}", fields[f].name, r.record[at]))
	}
	name, unit := plain(r.record[columns[0]])
	r.take(taken, f, columns[0], unit)
	switch {
	case slices.Contains(ofMore, name):
		r.found.Add(diag.Warnf(r.header(columns[0]), "column-of-more", "%s may count a basement or garage too, and is read as the living area, which is what is finished above ground", diag.Quote(strings.TrimSpace(r.record[columns[0]]))).
			WithHint("if it does, the house's living area must count them too; once you have looked, say   columns: {living area: %s}", strings.TrimSpace(r.record[columns[0]])))
	case name == "land" && unit == "":
		r.columns[len(r.columns)-1].read = (*row).land
	case name == "parking":
		r.columns[len(r.columns)-1].read = (*row).parking
	case name == "year", name == "yr":
		d := r.unread(columns[0], "it holds the years of the sales", fmt.Sprintf("if they are those in which the houses were built, say so, e.g.   columns: {year built: %s}", strings.TrimSpace(r.record[columns[0]])))
		r.year = &d
	}
}

// stated maps the columns that the caller names.
func (r *reader) stated(taken map[int]int, stated map[string]string) bool {
	good := true
	for _, name := range slices.Sorted(maps.Keys(stated)) {
		f := slices.IndexFunc(fields, func(f field) bool { return f.name == name })
		own := ""
		if f < 0 {
			own = ownCalled(r.row.own, name)
		}
		if f < 0 && own == "" {
			d := diag.Errorf(diag.Pos{File: r.file}, "unknown-field", "there is no field %s", diag.Quote(name))
			if near, ok := diag.Nearest(name, FieldNames()); ok {
				d = d.WithHint("did you mean %q?", near)
			} else {
				d = d.WithHint("the fields are %s", strings.Join(FieldNames(), ", "))
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
				d = d.WithHint("there are %s", r.headings())
			}
			r.found.Add(d)
			good = false
			continue
		}
		if perArea(r.record[at]) {
			r.found.Add(diag.Errorf(r.header(at), "column-per-area", "%s is a price per area, and cannot be the %s", diag.Quote(strings.TrimSpace(r.record[at])), name).
				WithHint("name the column that holds the %s itself, or leave it out of columns", name))
			good = false
			continue
		}
		if own != "" {
			r.takeOwn(own, at)
			continue
		}
		_, unit := plain(r.record[at])
		r.take(taken, f, at, unit)
	}
	return good
}

// unread says that a column which looks like one that is read is left alone, and why.
func (r *reader) unread(at int, why, hint string) diag.Diag {
	return diag.Warnf(r.header(at), "columns-unread", "%s is not read: %s", diag.Quote(strings.TrimSpace(r.record[at])), why).WithHint("%s", hint)
}

// take notes that a column holds a field. The unit of a header counts where the
// field has one.
func (r *reader) take(taken map[int]int, f, at int, unit string) {
	c := column{at: at, field: fields[f], header: strings.TrimSpace(r.record[at])}
	if unit != "" && c.unit != "" {
		c.unit = unit
	}
	if name, _ := plain(c.header); c.name == "baths" && strings.Contains(name, "total") {
		c.read = (*row).totalBaths
	}
	taken[f] = at
	r.columns = append(r.columns, c)
}

func (r *reader) header(at int) diag.Pos {
	line, col := r.table.FieldPos(at)
	return diag.Pos{File: r.file, Line: line, Col: col, Len: utf8.RuneCountInString(r.record[at])}
}

// headings are those of the table, without the blanks that bars leave around them.
func (r *reader) headings() string {
	var out []string
	for _, h := range r.record {
		out = append(out, strings.TrimSpace(h))
	}
	return strings.Join(out, ", ")
}

func (r *reader) noColumn(name string) diag.Diag {
	d := diag.Errorf(diag.Pos{File: r.file, Line: 1}, "no-column", "no column holds the %s of a sale", name)
	title := ""
	if len(r.columns) == 0 {
		title = ", and delete lines that stand above the row of headings"
	}
	return d.WithHint("name one %q, or say which holds it, e.g.   columns: {%s: \"...\"}%s; there are %s", fields[fieldOf(name)].names[0], name, title, r.headings())
}
