package deal

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
)

// A flaw is a place where the text is not YAML. The YAML reader says where it gave
// up, which is often behind the place where the mistake was made.
type flaw struct {
	g         grower
	says      string // the YAML reader's words
	line, col int    // where it gave up, from 1
	open      diag.Pos
}

// syntax turns the YAML reader's complaint into a diagnostic with a way out.
func (g grower) syntax(err error) diag.Diag {
	f := flaw{g: g, says: err.Error(), line: 1, col: 1}
	var bad *yaml.LoadError
	if errors.As(err, &bad) {
		f.says, f.line, f.col = bad.Message, bad.Mark.Line, bad.Mark.Column
		f.open = g.src.pos(bad.ContextMark.Line, bad.ContextMark.Column, 1)
	}
	f.insideText()
	if d, ok := f.pastedTable(); ok {
		return d
	}
	text := f.text(f.line)
	if blank := indentOf(text); strings.Contains(blank, "\t") {
		return finding("tab-indent", g.src.pos(f.line, strings.IndexByte(blank, '\t')+1, 1), "the line is indented with a tab").
			WithHint("use spaces, two for each level")
	}
	if d, ok := f.leftOpen(); ok {
		return d
	}
	for _, m := range flaws {
		if strings.Contains(f.says, m.says) {
			return m.tell(f)
		}
	}
	return f.at("the file cannot be read here").WithHint("check the indentation, the colons with a space behind them, and the quotes around this place")
}

// flaws are what the YAML reader says, and what to say for it. Never written to.
var flaws = []struct {
	says string
	tell func(flaw) diag.Diag
}{
	{"unexpected end of stream", flaw.openQuote},
	{"unexpected document indicator", flaw.openQuote},
	{"expected ',' or", flaw.inBrackets},
	{"expected node content", flaw.noContent},
	{"cannot start any token", flaw.oddStart},
	{"mapping values are not allowed", flaw.colon},
	{"could not find expected ':'", flaw.noColon},
	{"did not find expected key", flaw.indented},
	{"did not find expected '-'", flaw.indented},
	{"block sequence entries", flaw.dash},
	{"expected alphabetic or numeric", flaw.star},
	{"unknown anchor", flaw.star},
	{"expected comment or line break", flaw.folded},
	{"escape", flaw.escape},
	{"hexadecimal", flaw.escape},
	{"directive", flaw.directive},
	{"non-alphabetical", flaw.directive},
	{"comment without", flaw.hash},
	{"mapping keys are not allowed", flaw.question},
	{"expected whitespace or line break", flaw.mark},
	{"tag", flaw.mark},
	{"YAML document", flaw.directive},
	{"document start", flaw.first},
}

// insideText moves a place beyond the last text to the end of that text.
func (f *flaw) insideText() {
	f.line = min(max(f.line, 1), len(f.g.src.lines))
	f.col = max(f.col, 1)
	for f.line > 1 && strings.TrimSpace(f.text(f.line)) == "" {
		f.line--
		f.col = utf8.RuneCountInString(f.text(f.line)) + 1
	}
}

// text is a line as it stands.
func (f flaw) text(n int) string { return string(f.g.src.line(n)) }

// before and after are the text of the line on either side of the place.
func (f flaw) before() string { return string(f.g.src.line(f.line)[:f.col0()]) }
func (f flaw) after() string  { return string(f.g.src.line(f.line)[f.col0():]) }

func (f flaw) col0() int { return min(f.col-1, len(f.g.src.line(f.line))) }

func (f flaw) at(format string, args ...any) diag.Diag {
	return finding("yaml-syntax", f.g.src.pos(f.line, f.col, 1), format, args...)
}

// opened is a finding where what was not ended began.
func (f flaw) opened(format string, args ...any) diag.Diag {
	if f.open.Line < 1 {
		return f.at(format, args...)
	}
	return finding("yaml-syntax", f.open, format, args...)
}

// rest is a finding about a line's text from its first character on.
func (f flaw) rest(line int, format string, args ...any) diag.Diag {
	text := f.text(line)
	blank := indentOf(text)
	return finding("yaml-syntax", f.g.src.pos(line, len(blank)+1, max(1, utf8.RuneCountInString(strings.TrimSpace(text)))), format, args...)
}

// above is the number of the last line before this one that says something, or 0.
func (f flaw) above() int {
	for n := f.line - 1; n > 0; n-- {
		if t := strings.TrimSpace(f.text(n)); t != "" && t[0] != '#' {
			return n
		}
	}
	return 0
}

// indentOf is the blank before a line's text.
func indentOf(text string) string { return text[:len(text)-len(strings.TrimLeft(text, " \t"))] }

// spaces says how far a line is indented.
func spaces(n int) string {
	switch n {
	case 0:
		return "not indented"
	case 1:
		return "indented by 1 space"
	}
	return fmt.Sprintf("indented by %d spaces", n)
}
