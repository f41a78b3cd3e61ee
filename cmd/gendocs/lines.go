package main

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

const linesIntro = `# The lines of the model

Every deal is worked out by these lines and by nothing else. This page is made
from them. A line has a name, a unit, a rule and one line of meaning. A name in
front of a dot is the set the line stands in: every loan has its own
` + "`loan.points`" + `. *By month* means one value for each month, from 0, the purchase
closing, to the month of the sale. ` + "`ledgerboard why FILE NAME`" + ` shows how a line
comes out in a deal.

A rule that says *given by the deal* is an input, found in the
[deal file](deal-file.md); what follows *or else* stands in where the file does
not give it, and what follows *or assumed* moves money, so the bid says it.
`

// linesPage lists every line by section, then what is found by search.
func linesPage(string) (string, error) {
	doc, err := model.Standard()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	b.WriteString(linesIntro)
	setsPart(&b, doc)
	wordsPart(&b)
	section := ""
	for _, l := range doc.Lines {
		if l.Section != section {
			section = l.Section
			fmt.Fprintf(&b, "\n## %s\n\n", section)
		}
		fmt.Fprintf(&b, "- `%s` (%s): %s  \n  %s\n", l.ID(), per(l), l.Meaning, rule(l))
	}
	b.WriteString("\n## Found by search\n\nNo formula gives these; a search asks the lines above again and again.\n\n")
	for _, f := range answer.Searched {
		fmt.Fprintf(&b, "- `%s` (%s): %s\n", f.Name, f.Unit, f.Meaning)
	}
	return b.String(), nil
}

func per(l *model.Line) string {
	if l.Monthly {
		return l.Unit + ", by month"
	}
	return l.Unit
}

// rule is a line's formula, or what an input is without the file.
func rule(l *model.Line) string {
	if !l.Input {
		return "`= " + l.Text + "`"
	}
	text := "given by the deal"
	if len(l.Choices) > 0 {
		text += ", one of " + strings.Join(l.Choices, ", ")
	}
	switch {
	case l.Text == "":
		return text
	case l.Assumed:
		text += ", or assumed: `" + l.Text + "`"
	default:
		text += ", or else: `" + l.Text + "`"
	}
	if l.When != nil {
		text += ", when `" + l.When.String() + "`"
	}
	return text
}

func setsPart(b *strings.Builder, doc *model.Document) {
	b.WriteString("\n## Sets\n\n")
	for _, s := range doc.Sets {
		if s.Name == model.Deal {
			continue
		}
		fmt.Fprintf(b, "- `%s` of %s: %s", s.Name, strings.Join(s.Parents, " or "), s.Meaning)
		if len(s.Kinds) > 0 {
			fmt.Fprintf(b, "; one of `%s`", strings.Join(s.Kinds, "`, `"))
		}
		b.WriteByte('\n')
	}
}

// wordsPart lists the words of the formulas; signs need no words.
func wordsPart(b *strings.Builder) {
	b.WriteString("\n## Words of the rules\n\nBesides + - * / and comparisons (`<>` is *is not*):\n\n")
	for _, o := range formula.Table {
		if strings.Trim(o.Name, "+-*/<>=") != "" {
			fmt.Fprintf(b, "- `%s`: %s\n", usage(o), o.Words)
		}
	}
}

// usage shows an operator with places for its values.
func usage(o *formula.Op) string {
	switch {
	case o.Binds > 0:
		return "x " + o.Name + " y"
	case o.OverSet:
		return o.Name + "(x of set)"
	case o.Most == 0:
		return o.Name
	}
	places := []string{"x", "y", "z"}[:min(o.Least, 3)]
	text := strings.Join(places, ", ")
	if o.Most > o.Least {
		text += ", …"
	}
	return o.Name + "(" + text + ")"
}
