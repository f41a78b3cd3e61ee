package report

import (
	"io"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
)

// Lines writes rows of the model: all of them briefly, with what is found by search
// behind them, or a few in full.
func Lines(w io.Writer, lines []*model.Line, full bool, s Style) error {
	p := newPage(w, s)
	section := ""
	for _, l := range lines {
		if l.Section != section && !full {
			section = l.Section
			p.heading(section)
		}
		p.line("  %s  %s", p.paint(bold, l.ID()), p.paint(dim, about(l)))
		p.text("      ", l.Meaning)
		if f := l.Rule(); f != "" {
			p.text("      = ", f)
		}
	}
	if full {
		return p.flush()
	}
	p.heading("Found by search, not by a formula")
	for _, f := range answer.Searched {
		p.line("  %s  %s", p.paint(bold, f.Name), p.paint(dim, f.Unit))
		p.text("      ", f.Meaning)
	}
	return p.flush()
}

// about says a line's unit and index: "$ by month".
func about(l *model.Line) string {
	unit := l.Unit
	if l.Monthly {
		unit += " by month"
	}
	return unit
}

// LineNote is a line of the model as JSON.
type LineNote struct {
	Name    string   `json:"name"`
	Set     string   `json:"set"`
	Monthly bool     `json:"by_month"`
	Unit    string   `json:"unit"`
	Formula string   `json:"formula"`
	Input   bool     `json:"input"`
	Choices []string `json:"choices,omitempty"`
	Meaning string   `json:"meaning"`
}

// SearchedNote is a result found by search as JSON.
type SearchedNote struct {
	Name    string `json:"name"`
	Unit    string `json:"unit"`
	Meaning string `json:"meaning"`
}

// LinesJSON writes rows of the model, and results found by search, as one object.
func LinesJSON(w io.Writer, lines []*model.Line, found []answer.Found) error {
	notes, searched := []LineNote{}, []SearchedNote{}
	for _, l := range lines {
		notes = append(notes, LineNote{l.ID(), l.Set, l.Monthly, l.Unit, l.Rule(), l.Input, l.Choices, l.Meaning})
	}
	for _, f := range found {
		searched = append(searched, SearchedNote{f.Name, f.Unit, f.Meaning})
	}
	return writeJSON(w, map[string]any{"schema": Schema, "lines": notes, "searched": searched})
}
