package why

import (
	"strings"

	"ledgerboard/pkg/formula"
)

// Words says how the value came out, with the numbers in place of the names:
// "85% x $212,500.00 = $180,625.00, rounded to the cent".
func (t *Tree) Words() string {
	rule, _ := t.rule().through()
	inside := rule
	if rule.is(formula.Cents) {
		inside, _ = rule.terms[0].through()
	}
	said := inside.say(false)
	if result := inside.Text(); said != result && !inside.sentence() {
		said += " = " + result
	}
	if rule.is(formula.Cents) && rule.terms[1].visible() {
		said += ", rounded to the cent: " + rule.Text()
	}
	return said
}

// sentence reports whether what say gives is a statement, not an amount.
func (t *Tree) sentence() bool {
	return t.is(formula.Lowest, formula.FirstMonth, formula.And, formula.Or, formula.Not) || t.compares()
}

// say puts numbers in place of names; inner is for a part of a larger formula.
func (t *Tree) say(inner bool) string {
	if t.Kind != Operation {
		return t.text(factor)
	}
	switch t.Op.Code {
	case formula.Add:
		return t.saySum(inner)
	case formula.Mul:
		return t.sayProduct()
	case formula.If:
		return t.terms[1].say(inner)
	case formula.Min, formula.Max:
		if x, _ := t.bounded(); x != nil {
			return x.say(inner)
		}
		return bracketed(t.Op.Words+" "+t.list(" and "), inner)
	case formula.Cents:
		if !t.terms[1].visible() {
			return t.terms[0].say(inner)
		}
		return bracketed(t.terms[0].say(true)+" rounded to the cent", inner)
	case formula.Ceil, formula.Floor:
		return bracketed(t.terms[0].whole()+" "+t.Op.Words, inner)
	case formula.Power:
		return bracketed(t.terms[0].whole()+" to the power of "+t.terms[1].whole(), inner)
	case formula.Root:
		return bracketed("the square root of "+t.terms[0].whole(), inner)
	case formula.LevelPayment:
		rate := format(t.terms[1].Value, "share", factor)
		return bracketed("the level payment that clears "+t.terms[0].Text()+" at "+rate+" a month over "+format(t.terms[2].Value, "month", figure), inner)
	}
	if t.sentence() && !inner {
		return t.state()
	}
	return t.text(factor)
}

func (t *Tree) state() string {
	switch {
	case t.is(formula.Lowest) && t.Took >= 0:
		return "the lowest is that of " + t.terms[t.Took].Role
	case t.is(formula.FirstMonth) && t.Took < 0:
		return "it holds in no month, which counts as month 0"
	case t.is(formula.FirstMonth):
		return t.terms[t.Took].Role + " is the first in which " + t.terms[t.Took].fact()
	}
	return t.fact()
}

// whole says a part so that what stands around it belongs to all of it.
func (t *Tree) whole() string {
	s := t.say(true)
	return bracketed(s, product(s))
}

// product reports whether what is said has factors outside all brackets.
func product(s string) bool {
	depth := 0
	for i, c := range s {
		switch {
		case c == '(':
			depth++
		case c == ')':
			depth--
		case depth == 0 && (strings.HasPrefix(s[i:], " x ") || strings.HasPrefix(s[i:], " / ")):
			return true
		}
	}
	return false
}

func bracketed(s string, need bool) string {
	if need {
		return "(" + s + ")"
	}
	return s
}

// saySum leaves out zeros.
func (t *Tree) saySum(inner bool) string {
	var b strings.Builder
	said := 0
	for _, x := range t.terms {
		if x.Value.IsZero() {
			continue
		}
		said++
		switch {
		case x.Sign < 0:
			b.WriteString(" - ")
		case b.Len() > 0:
			b.WriteString(" + ")
		}
		s := x.say(x.Sign < 0 || x.is(formula.Add))
		b.WriteString(bracketed(s, strings.HasPrefix(s, "-") && b.Len() > 0))
	}
	if b.Len() == 0 {
		return t.Text()
	}
	s := b.String()
	if rest, minus := strings.CutPrefix(s, " - "); minus {
		s = "-" + rest
	}
	return bracketed(s, inner && said > 1)
}

// sayProduct leaves out factors that are the number 1.
func (t *Tree) sayProduct() string {
	var b strings.Builder
	for _, x := range t.terms {
		inner, _ := x.through()
		if inner.Kind == Number && inner.Value.Equal(one) {
			continue
		}
		switch {
		case b.Len() == 0 && x.Sign < 0:
			b.WriteString("1 / ")
		case b.Len() == 0:
		case x.Sign < 0:
			b.WriteString(" / ")
		default:
			b.WriteString(" x ")
		}
		s := x.say(true)
		if x.Unit == "flag" {
			s = x.Value.String()
		}
		b.WriteString(bracketed(s, x.Sign < 0 && product(s)))
	}
	if b.Len() == 0 {
		return t.text(factor)
	}
	return b.String()
}

func (t *Tree) list(last string) string {
	parts := make([]string, len(t.terms))
	for i, x := range t.terms {
		parts[i] = x.say(true)
	}
	n := len(parts) - 1
	return strings.Join(parts[:n], ", ") + last + parts[n]
}
