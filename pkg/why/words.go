package why

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/formula"
)

// longest is how many characters of a formula may stand for a value in a sentence.
const longest = 40

// opposite are the comparisons that hold where the others do not.
var opposite = map[formula.Code]formula.Code{
	formula.Less: formula.MoreEqual, formula.MoreEqual: formula.Less, formula.More: formula.LessEqual,
	formula.LessEqual: formula.More, formula.Equal: formula.NotEqual, formula.NotEqual: formula.Equal,
}

// fact says a condition in words as it is, with the values on both sides: of one
// that does not hold it says the contrary.
func (t *Tree) fact() string { return t.said(!t.Value.IsZero(), t.Month) }

func (t *Tree) said(holds bool, month int) string {
	switch {
	case t.compares():
		return t.compared(holds, month)
	case t.is(formula.Not):
		return t.terms[0].said(!holds, month)
	case t.is(formula.And, formula.Or):
		var facts []string
		for _, x := range t.terms {
			if x.Value.IsZero() != holds { // what made it so
				facts = append(facts, x.said(holds, month))
			}
		}
		return strings.Join(facts, " and ")
	}
	return t.called(month) + " is " + format(t.Value, "flag", figure)
}

// deciding are the yes or no of the model's own that made a condition hold, or not, where the
// choices of a node end in a bare number or in one other line, which say nothing of them.
func (t *Tree) deciding() (out []Term) {
	for next, _ := t.chosen(); next != nil; next, _ = t.chosen() {
		if t.is(formula.If) {
			out = append(out, t.terms[0].flags(!t.terms[0].Value.IsZero())...)
		}
		t = next
	}
	if t.Kind != Number && t.Kind != Line {
		return nil
	}
	return out
}

func (t *Tree) flags(holds bool) (out []Term) {
	switch {
	case t.is(formula.Not):
		return t.terms[0].flags(!holds)
	case t.is(formula.And, formula.Or):
		for _, x := range t.terms {
			if x.Value.IsZero() != holds {
				out = append(out, x.flags(holds)...)
			}
		}
	case t.Kind == Line && t.Unit == "flag" && t.rule().Kind == Operation:
		out = append(out, plus(t))
	}
	return out
}

func (t *Tree) compared(holds bool, month int) string {
	left, right := t.terms[0].Tree, t.terms[1].Tree
	code := t.Op.Code
	if !holds {
		code = opposite[code]
	}
	words := " " + formula.Table[code].Words + " "
	switch {
	case right.Kind == Word && code == formula.Equal:
		return left.called(month) + " is " + right.Text()
	case right.Kind == Word:
		return left.called(month) + " is " + left.Text() + ", not " + right.Text()
	case left.Kind == Line && left.Unit == "flag":
		return left.called(month) + " is " + left.Text()
	case left.is(formula.Month):
		return left.Text() + words + right.side(month, "month ")
	}
	return left.side(month, "") + words + right.side(month, "")
}

// side names a value and says what it is.
func (t *Tree) side(month int, prefix string) string {
	value := t.Text()
	if prefix != "" && t.Value.IsInteger() {
		value = prefix + t.Value.String()
	}
	name := t.called(month)
	if t.fixed() || name == "" || name == value {
		return value
	}
	return name + " (" + value + ")"
}

// called is a short name of a node: a line's, or the formula if it is short.
func (t *Tree) called(month int) string {
	switch {
	case t.is(formula.Prior, formula.Ago, formula.At) && t.terms[0].Kind == Line:
		return t.terms[0].called(month)
	case t.Kind == Line && t.Month != month:
		return Label(t.Cell, t.Month)
	case t.Kind == Line:
		return t.Cell.Name()
	case t.is(formula.Month):
		return t.Text()
	}
	if s := t.Formula(); len(s) <= longest {
		return s
	}
	return ""
}

// Because says why each choice in a line's formula went as it did, outermost
// first: the branch an if took and its condition with the values on both sides,
// what a bound did, which other month was read.
func (t *Tree) Because() []string {
	_, reasons := t.rule().through()
	return reasons
}

// rule is the tree of a line's formula.
func (t *Tree) rule() *Tree {
	if t.Kind == Line {
		return t.Terms()[0].Tree
	}
	return t
}

// through looks through the choices of a node at what decided, with the reasons.
func (t *Tree) through() (*Tree, []string) { return t.follow(false) }

// telling is through without the reasons that come only from what the deal does
// not speak of.
func (t *Tree) telling() (*Tree, []string) { return t.follow(true) }

func (t *Tree) follow(brief bool) (*Tree, []string) {
	var reasons []string
	for {
		next, why := t.chosen()
		if next == nil {
			return t, reasons
		}
		if why != "" && !(brief && t.is(formula.If) && t.terms[0].Idle()) {
			reasons = append(reasons, why)
		}
		t = next
	}
}

func (t *Tree) chosen() (*Tree, string) {
	switch {
	case t.is(formula.If):
		return t.terms[1].Tree, "because " + t.terms[0].said(!t.terms[0].Value.IsZero(), t.Month)
	case t.is(formula.Prior) && t.terms[0].Kind != Nothing:
		return t.terms[0].Tree, ""
	case t.is(formula.Ago) && t.terms[0].Kind != Nothing:
		if t.terms[1].Value.IsZero() {
			return t.terms[0].Tree, "of the same month, as " + t.terms[1].called(t.Month) + " is " + t.terms[1].Text()
		}
		return t.terms[0].Tree, fmt.Sprintf("%s: %s before month %d", t.terms[0].Role, t.terms[1].side(t.Month, ""), t.Month)
	case t.is(formula.At) && t.terms[0].Kind != Nothing:
		return t.terms[0].Tree, "in " + t.terms[1].side(t.Month, "month ")
	case t.is(formula.Min, formula.Max):
		return t.bounded()
	case t.is(formula.Mul):
		return t.timesOne()
	}
	return nil, ""
}

// timesOne looks through a product of one value and factors that are the number 1.
func (t *Tree) timesOne() (*Tree, string) {
	var value *Tree
	var reasons []string
	for _, x := range t.terms {
		inner, why := x.through()
		switch {
		case inner.Kind == Number && inner.Value.Equal(one):
			reasons = append(reasons, why...)
		case value != nil || x.Sign < 0:
			return nil, ""
		default:
			value = x.Tree
		}
	}
	return value, strings.Join(reasons, "; ")
}

// fixed reports whether a node is made of numbers in the formula only.
func (t *Tree) fixed() bool {
	if t.Kind != Operation || !t.is(formula.Add) {
		return t.Kind == Number || t.Kind == Word || t.is(formula.Month)
	}
	for _, x := range t.terms {
		if !x.hidden() && !x.fixed() {
			return false
		}
	}
	return true
}

// bounded looks through a bound that is a plain number, as in max(0, x), where x decides.
func (t *Tree) bounded() (*Tree, string) {
	var bounds []string
	for i, x := range t.terms {
		if i == t.Took {
			continue
		}
		if x.Kind != Number {
			return nil, ""
		}
		bounds = append(bounds, x.Text())
	}
	if t.terms[t.Took].Kind == Number {
		return nil, ""
	}
	kept := "at least "
	if t.is(formula.Min) {
		kept = "at most "
	}
	return t.terms[t.Took].Tree, kept + strings.Join(bounds, " and ") + ", which changes nothing here"
}
