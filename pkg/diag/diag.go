package diag

import (
	"fmt"
	"strings"
)

// Severity tells a mistake, which stops the work, from a doubt, which does not.
type Severity int

// The zero value is Error, so a Diag that forgets to say is taken seriously.
const (
	Error   Severity = iota // the file cannot be used as it stands
	Warning                 // the file can be used, but probably does not say what was meant
)

// String returns "error" or "warning".
func (s Severity) String() string {
	if s == Warning {
		return "warning"
	}
	return "error"
}

// MarshalText returns the word, so that JSON shows it and not a number.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Pos is a place in a file. Lines and columns count from 1; zero means not known.
type Pos struct {
	File string `json:"file,omitempty"`
	Line int    `json:"line,omitempty"`
	Col  int    `json:"col,omitempty"` // in characters, not bytes; a tab is one
	Len  int    `json:"len,omitempty"` // characters meant, from Col on; 0 if not known
	// Cell is the place in a workbook, as in Bid form!F12; Line and Col are then its row
	// and column.
	Cell string `json:"cell,omitempty"`
}

// String returns "file:12:8", leaving out what is not known: "file:12", "file", "".
// Without a file it is "line 12:8"; in a workbook, "file: sheet!H12".
func (p Pos) String() string {
	if p.Cell != "" {
		return strings.TrimPrefix(p.File+": "+p.Cell, ": ")
	}
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line < 1 {
		return b.String()
	}
	if p.File == "" {
		b.WriteString("line ")
	} else {
		b.WriteByte(':')
	}
	fmt.Fprintf(&b, "%d", p.Line)
	if p.Col > 0 {
		fmt.Fprintf(&b, ":%d", p.Col)
	}
	return b.String()
}

// Diag is one mistake or doubt about a user's file.
type Diag struct {
	Code     string   `json:"code"` // stable kebab-case name, e.g. "unknown-key"
	Severity Severity `json:"severity"`
	Pos      Pos      `json:"pos,omitzero"`
	Message  string   `json:"message"`        // what is wrong, with the value found; lower case, no full stop
	Hint     string   `json:"hint,omitempty"` // what would do instead
}

// Errorf returns a mistake at p; format and args give the message.
func Errorf(p Pos, code, format string, args ...any) Diag {
	return Diag{Code: code, Severity: Error, Pos: p, Message: fmt.Sprintf(format, args...)}
}

// Warnf returns a doubt about p; format and args give the message.
func Warnf(p Pos, code, format string, args ...any) Diag {
	return Diag{Code: code, Severity: Warning, Pos: p, Message: fmt.Sprintf(format, args...)}
}

// WithHint returns d with the hint set.
func (d Diag) WithHint(format string, args ...any) Diag {
	d.Hint = fmt.Sprintf(format, args...)
	return d
}

// Error returns one line, "file:12:8: error: message", without the hint.
func (d Diag) Error() string { return clean(d.place()+d.Severity.String()+": ") + oneLine(d.Message) }

// String returns the line of Error and, if there is a hint, "  hint: …" on a second line.
func (d Diag) String() string {
	if d.Hint == "" {
		return d.Error()
	}
	return d.Error() + "\n  hint: " + oneLine(d.Hint)
}

func (d Diag) place() string {
	if s := d.Pos.String(); s != "" {
		return s + ": "
	}
	return ""
}
