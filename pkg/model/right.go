package model

import (
	"errors"
	"fmt"
	"strings"

	"ledgerboard/pkg/formula"
)

// right reads what stands right of the =: an expression, or "input" and what
// follows it.
func (r *reader) right(text string) (err error) {
	l := r.line
	if l.Input || l.Text != "" {
		return errors.New("the line has a formula already")
	}
	after, isInput := strings.CutPrefix(text, "input")
	if isInput && (after == "" || strings.ContainsAny(after[:1], " ,;")) {
		if after, err = r.input(after); err != nil {
			return err
		}
		text = after
	}
	if l.Text = text; text != "" && !r.sound {
		_, err = formula.Parse(text)
	}
	return err
}

// input reads what follows the word: "of a, b;" where the line is one of words,
// then nothing, "else expression" or "assume expression, when condition". It
// returns the expression.
func (r *reader) input(text string) (string, error) {
	l := r.line
	l.Input = true
	if words, found := strings.CutPrefix(text, " of "); found && l.Unit == "choice" {
		words, text, _ = strings.Cut(words, ";")
		l.Choices = listed(words)
	}
	text = strings.TrimSpace(strings.TrimPrefix(text, ","))
	if text == "" {
		return "", nil
	}
	word, text, found := strings.Cut(text, " ")
	if !found || word != "else" && word != "assume" {
		return "", fmt.Errorf("after input comes else or assume with a value, not %q", strings.TrimSpace(word+" "+text))
	}
	l.Assumed = word == "assume"
	text, when, conditional := strings.Cut(text, ", when ")
	if !conditional {
		return text, nil
	}
	if !l.Assumed {
		return "", errors.New("only what is assumed has a condition")
	}
	var err error
	l.When, err = formula.Parse(when)
	return text, err
}
