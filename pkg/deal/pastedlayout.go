package deal

import (
	"regexp"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
)

// tableKey is the key of a pasted table with nothing but its bar behind it, or not even that.
var tableKey = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^ *table: *(\|?)[-+1-9]? *(?:#.*)?$`) })

// cellsApart is what parts the cells of a row.
var cellsApart = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile("[,;|\t]|\\S  +\\S") })

const (
	writeBar   = "write a bar behind the key,   table: |   and indent every line of the table further than it"
	furtherOut = "indent every line of the table further than   table:   above it"
)

// pastedTable is about a row of a pasted table that is not kept as it stands: its key has no
// bar, or it is indented no further than that.
func (f flaw) pastedTable() (diag.Diag, bool) {
	key := f.line - 1
	var bar []string
	for ; key > 0 && bar == nil; key-- {
		text := f.text(key)
		if bar = tableKey().FindStringSubmatch(text); bar != nil {
			break
		}
		if t := strings.TrimSpace(text); t != "" && !cellsApart().MatchString(t) {
			return diag.Diag{}, false
		}
	}
	if bar == nil || !cellsApart().MatchString(strings.TrimSpace(f.text(f.line))) {
		return diag.Diag{}, false
	}
	first := key + 1
	for strings.TrimSpace(f.text(first)) == "" {
		first++
	}
	switch inside := len(indentOf(f.text(f.line))) > len(indentOf(f.text(key))); {
	case bar[1] == "":
		return f.row(first, "the table has no bar behind its key in line %d, so its lines are not read as they stand", key).WithHint(writeBar), true
	case !inside:
		return f.row(f.line, "the row is indented no further than   table:   in line %d, so it is no part of the table", key).WithHint(furtherOut), true
	}
	return diag.Diag{}, false
}

// row is a finding about a row of a pasted table.
func (f flaw) row(line int, format string, args ...any) diag.Diag {
	d := f.rest(line, format, args...)
	d.Code = "table-layout"
	return d
}

// pastedAsItStands refuses a table below its key without the bar: its lines run together.
func (r *reader) pastedAsItStands(g *reading) bool {
	if g.node.quoted || g.node.at.Line == g.key.at.Line {
		return true
	}
	r.say("table-layout", g.node.at, "the table has no bar behind its key, so its lines run together")("%s", writeBar)
	return false
}
