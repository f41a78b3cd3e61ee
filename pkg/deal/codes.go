package deal

import (
	"slices"
	"sync"

	"ledgerboard/pkg/diag"
)

// A Code is one kind of thing that can be said about a deal file.
type Code struct {
	Name     string // stable, as in diag.Diag.Code
	Severity diag.Severity
	Meaning  string // in one line
}

// Codes returns every code, mistakes first, in the order of the table.
func Codes() []Code {
	return slices.Concat(fileCodes(), valueCodes(), feeCodes(), dealCodes(), compCodes(), roomCodes(), bookCodes(), rangeCodes(), badDayCodes(), doubtCodes(), compDoubts(), roomDoubts())
}

var severities = sync.OnceValue(func() map[string]diag.Severity {
	all := map[string]diag.Severity{}
	for _, c := range Codes() {
		all[c.Name] = c.Severity
	}
	return all
})

// wholeInRooms are doubts among those of rooms that hang on all of the work.
var wholeInRooms = []string{"own-hours-few", "bad-not-planned", "good-but-mended", "not-seen-replaced", "contingency-for-age"}

// OfTheWhole reports whether a doubt hangs on all of the work together, so that it says nothing of a
// scope that leaves most rooms as they are, for want of the option.
func OfTheWhole(code string) bool {
	return slices.Contains(wholeInRooms, code) || slices.ContainsFunc(doubtCodes(), func(c Code) bool { return c.Name == code })
}

// finding makes a diagnostic with the severity of its code; a code that is not in
// the table is a mistake, and a test finds it.
func finding(code string, at diag.Pos, format string, args ...any) diag.Diag {
	d := diag.Errorf(at, code, format, args...)
	d.Severity = severities()[code]
	return d
}

func mistakes(rows [][2]string) []Code { return codes(diag.Error, rows) }

func codes(s diag.Severity, rows [][2]string) []Code {
	out := make([]Code, len(rows))
	for i, r := range rows {
		out[i] = Code{r[0], s, r[1]}
	}
	return out
}

func fileCodes() []Code {
	return mistakes([][2]string{
		{"file-empty", "the file says nothing"},
		{"file-too-large", "the file is over a megabyte"},
		{"file-not-utf8", "the file is not UTF-8 text"},
		{"odd-character", "a character that cannot be seen"},
		{"yaml-syntax", "the file is not YAML"},
		{"tab-indent", "a line is indented with a tab"},
		{"more-documents", "more than one document in a file"},
		{"yaml-anchor", "an anchor or alias"},
		{"yaml-merge", "a merge key"},
		{"yaml-tag", "a YAML tag"},
		{"nested-too-deep", "brackets or indentation nested too deep"},
		{"too-many", "more entries than are read"},
		{"key-not-text", "a key that is not a word"},
		{"duplicate-key", "a key given twice"},
		{"not-a-deal", "the file is a list or a single value"},
		{"comma-in-list", "a comma in a list that could part numbers or thousands"},
		{"unknown-set-path", "--set names a key that there is not"},
		{"ambiguous-set-path", "--set names a key that there is more than once"},
		{"set-into-value", "--set reaches into a value that has no parts"},
	})
}
