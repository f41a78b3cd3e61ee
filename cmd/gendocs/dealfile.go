package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"ledgerboard/pkg/deal"
)

// The generated table stands between these lines of the hand-written page.
const (
	keysBegin = "<!-- keys: made by make docs from here -->\n"
	keysEnd   = "<!-- keys: to here -->\n"
)

var errNoMarkers = errors.New("the lines between which the keys stand are missing")

func schemaPage(string) (string, error) { return string(deal.Schema()), nil }

// dealFilePage renews the table of keys in the hand-written page.
func dealFilePage(root string) (string, error) {
	old, err := os.ReadFile(filepath.Join(root, "docs", "deal-file.md"))
	if err != nil {
		return "", err
	}
	before, rest, ok := strings.Cut(string(old), keysBegin)
	_, after, ended := strings.Cut(rest, keysEnd)
	if !ok || !ended {
		return "", errNoMarkers
	}
	return before + keysBegin + keys(deal.Table()) + keysEnd + after, nil
}

// keys is a table for each group at the top of the file.
func keys(all []deal.Field) string {
	var b strings.Builder
	top := "-"
	for _, f := range all {
		if t := topOf(f); t != top {
			top = t
			fmt.Fprintf(&b, "\n### %s\n\n| key | takes | without it | example |\n|---|---|---|---|\n", heading(top))
		}
		fmt.Fprintf(&b, "| `%s`<br>%s | %s | %s | %s |\n", f.Path, cell(f.Meaning+others(f)), cell(takes(f)), cell(without(f)), code(f.Example))
	}
	b.WriteByte('\n')
	return b.String()
}

// topOf is the group a key is listed under; keys alone at the top share one.
func topOf(f deal.Field) string {
	first, _, deeper := strings.Cut(f.Path, ".")
	first = strings.TrimSuffix(first, "[]")
	switch {
	case deeper, f.Kind == deal.Group, f.Kind == deal.List, f.Kind == deal.Fees, f.Kind == deal.Ties:
		return first
	}
	return ""
}

func heading(top string) string {
	switch top {
	case "":
		return "Alone"
	case "<fee>":
		return "Details of any charge"
	}
	return "`" + top + "`"
}

func others(f deal.Field) string {
	if len(f.Other) == 0 {
		return ""
	}
	return "; also `" + strings.Join(f.Other, "`, `") + "`"
}

// takes says what a key takes and within which limits.
func takes(f deal.Field) string {
	text := string(f.Kind)
	if len(f.Choices) > 0 {
		text += ": " + strings.Join(f.Choices, ", ")
	}
	if f.Range != "" {
		text += ", " + f.Range
	}
	if f.Doubt != "" {
		text += "; usual is " + f.Doubt
	}
	return text
}

func without(f deal.Field) string {
	switch {
	case f.Required:
		return "*needed*"
	case f.Default == "":
		return "nothing"
	}
	return f.Default
}

func cell(s string) string { return strings.ReplaceAll(s, "|", "\\|") }

func code(s string) string {
	if s == "" {
		return ""
	}
	return "`" + cell(s) + "`"
}
