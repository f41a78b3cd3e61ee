package main

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// placed is the place a diagnostic begins with, in a file named like the example.
var placed = regexp.MustCompile(`(?m)^\S*\.yaml:(\d+)(?::\d+)?: `)

// lines are the numbers of the lines that an example is about.
func (e *example) lines() []int {
	var out []int
	for _, m := range placed.FindAllStringSubmatch(e.said, -1) {
		n, _ := strconv.Atoi(m[1]) // digits only
		out = append(out, n)
	}
	return out
}

// excerpt returns those lines of a file with the keys they stand under; "…"
// stands for what is left out.
func excerpt(text string, wanted []int) string {
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	var keep []int
	for _, n := range wanted {
		if n < 1 || n > len(lines) {
			continue
		}
		keep = append(keep, n)
		depth := indent(lines[n-1])
		for up := n - 1; up > 0 && depth > 0; up-- {
			if d := indent(lines[up-1]); strings.TrimSpace(lines[up-1]) != "" && d < depth {
				keep, depth = append(keep, up), d
			}
		}
	}
	slices.Sort(keep)
	var b strings.Builder
	for i, n := range slices.Compact(keep) {
		if i > 0 && !slices.Contains(keep, n-1) {
			b.WriteString(strings.Repeat(" ", indent(lines[n-1])) + "…\n")
		}
		b.WriteString(visible(strings.TrimRight(lines[n-1], "\r")) + "\n")
	}
	return b.String()
}

// indent counts the blanks in front of a line, or of the dash of a list's item.
func indent(line string) int {
	return len(line) - len(strings.TrimLeft(line, " \t"))
}

// visible shows what is no visible text as a mark, as the program does.
func visible(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' || unicode.IsPrint(r) {
			return r
		}
		return '�'
	}, strings.ToValidUTF8(s, "�"))
}
