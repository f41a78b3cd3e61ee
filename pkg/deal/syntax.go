package deal

import (
	"errors"
	"strings"

	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
)

// syntax turns the YAML reader's complaint into a diagnostic with a way out.
func (g grower) syntax(err error) diag.Diag {
	var bad *yaml.LoadError
	line, col, message := 1, 0, err.Error()
	if errors.As(err, &bad) {
		line, col, message = max(1, bad.Mark.Line), bad.Mark.Column, bad.Message
	}
	line = min(line, len(g.src.lines))
	text := string(g.src.line(line))
	at := g.src.pos(line, col, 1)
	if i := strings.IndexByte(text, '\t'); i >= 0 && strings.TrimSpace(text[:i]) == "" {
		at.Col = len([]rune(text[:i])) + 1
		return finding("tab-indent", at, "the line is indented with a tab").WithHint("use spaces, two for each level")
	}
	d := finding("yaml-syntax", at, "the file cannot be read here: %s", message)
	switch {
	case strings.Contains(message, "mapping values are not allowed"):
		return d.WithHint(`if the text has a colon, put it in quotes: notes: "seen: once"; otherwise check the indentation of this line`)
	case strings.Contains(message, "cannot start any token"):
		return d.WithHint("a value that begins with @, ` or %% goes in quotes")
	case strings.Contains(message, "expected ',' or"):
		return d.WithHint("a bracket is opened and not closed, or a comma is missing between two entries")
	case strings.Contains(message, "document"):
		return d.WithHint("a deal file begins with its first key; leave out lines that begin with %% or ---")
	}
	return d.WithHint("check the indentation, the colons with a space behind them, and the quotes around this place")
}
