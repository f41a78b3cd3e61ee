package formula

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// deepest nesting accepted; a formula of the document has under ten.
const deepest = 100

// longest number accepted, in digits.
const longest = 60

// Parse reads one formula. The error is a *SyntaxError.
func Parse(text string) (*Node, error) {
	tokens := used.Get().(*[]token)
	defer used.Put(tokens)
	var err error
	if *tokens, err = lex((*tokens)[:0], text); err != nil {
		return nil, err
	}
	p := &parser{tokens: *tokens}
	n, err := p.expression(0)
	if err != nil {
		return nil, err
	}
	if t := p.peek(); t.kind != end {
		return nil, p.unexpected("an operator or the end")
	}
	return n, nil
}

type parser struct {
	tokens []token
	pos    int
	depth  int
}

func (p *parser) peek() token { return p.tokens[p.pos] }

func (p *parser) take() token {
	t := p.tokens[p.pos]
	if t.kind != end {
		p.pos++
	}
	return t
}

func (p *parser) unexpected(wanted string) error {
	t := p.peek()
	return &SyntaxError{t.at, fmt.Sprintf("found %v, expected %s", t, wanted)}
}

// expression parses operators that bind at least as tightly as least.
func (p *parser) expression(least int) (*Node, error) {
	if p.depth++; p.depth > deepest {
		return nil, &SyntaxError{p.peek().at, "too deeply nested"}
	}
	defer func() { p.depth-- }()
	left, err := p.operand()
	for err == nil {
		op := infix(p.peek())
		if op == nil || op.Binds < least {
			return left, nil
		}
		at := p.take().at
		var right *Node
		if right, err = p.expression(op.Binds + 1); err != nil {
			break
		}
		left = &Node{Op: op, Args: []*Node{left, right}, At: at}
		if op.Binds == bindsCompare && infix(p.peek()) != nil && infix(p.peek()).Binds == bindsCompare {
			return nil, &SyntaxError{p.peek().at, "two comparisons in a row; join them with and"}
		}
	}
	return nil, err
}

func infix(t token) *Op {
	if t.kind != symbol && t.kind != word {
		return nil
	}
	if op := byName[t.text]; op != nil && op.Binds > 0 {
		return op
	}
	return nil
}

func (p *parser) operand() (*Node, error) {
	t := p.peek()
	switch {
	case t.kind == number:
		return p.number(p.take())
	case t.kind == quoted:
		if p.take(); t.text == "" {
			return nil, &SyntaxError{t.at, "an empty quote"}
		}
		return &Node{Text: t.text, At: t.at}, nil
	case t.kind == symbol && t.text == "-":
		p.take()
		n, err := p.expression(bindsNegative)
		if err != nil {
			return nil, err
		}
		return &Node{Op: Table[Negative], Args: []*Node{n}, At: t.at}, nil
	case t.kind == symbol && t.text == "(":
		p.take()
		n, err := p.expression(0)
		if err != nil {
			return nil, err
		}
		return n, p.expect(")")
	case t.kind == word && isName(t.text):
		return p.word(p.take())
	}
	return nil, p.unexpected("a number, a name or (")
}

// isName reports whether a word can begin an operand: $ is a unit only, and the
// operators that are written otherwise have no brackets.
func isName(word string) bool {
	op := byName[word]
	return word != "$" && (op == nil || op.Binds == 0 && op.Code != Negative)
}

func (p *parser) number(t token) (*Node, error) {
	d, err := decimal.NewFromString(t.text)
	if err != nil || len(t.text) > longest || strings.HasSuffix(t.text, ".") {
		return nil, &SyntaxError{t.at, fmt.Sprintf("%q is not a number", t.text)}
	}
	n := &Node{Num: d, At: t.at}
	if u := p.peek(); u.kind == word && infix(u) == nil && u.text != "of" {
		n.Unit = p.take().text
	}
	return n, nil
}

func (p *parser) word(t token) (*Node, error) {
	op := byName[t.text]
	open := p.peek()
	called := open.kind == symbol && open.text == "("
	switch {
	case op == nil && called:
		return nil, &SyntaxError{t.at, fmt.Sprintf("%q is not an operator", t.text)}
	case op == nil:
		return &Node{Name: t.text, At: t.at}, nil
	case op.Most == 0:
		return &Node{Op: op, At: t.at}, nil
	case !called:
		return nil, &SyntaxError{t.at, fmt.Sprintf("%q needs its values in brackets", t.text)}
	}
	p.take()
	return p.call(&Node{Op: op, At: t.at})
}

func (p *parser) call(n *Node) (*Node, error) {
	for {
		a, err := p.expression(0)
		if err != nil {
			return nil, err
		}
		n.Args = append(n.Args, a)
		if t := p.peek(); t.kind != symbol || t.text != "," {
			break
		}
		p.take()
	}
	if t := p.peek(); n.Op.OverSet || n.Op.MayOver && t.kind == word && t.text == "of" {
		if t := p.take(); t.kind != word || t.text != "of" || p.peek().kind != word || !isName(p.peek().text) {
			return nil, &SyntaxError{n.At, n.Op.Name + " needs a set, as in total(amount of loan)"}
		}
		n.Set = p.take().text
	}
	if err := p.expect(")"); err != nil {
		return nil, err
	}
	if len(n.Args) < n.Op.Least || len(n.Args) > n.Op.Most {
		return nil, &SyntaxError{n.At, fmt.Sprintf("%s takes %s, found %d", n.Op.Name, n.Op.takes(), len(n.Args))}
	}
	return n, nil
}

func (p *parser) expect(s string) error {
	if t := p.peek(); t.kind != symbol || t.text != s {
		return p.unexpected(fmt.Sprintf("%q", s))
	}
	p.take()
	return nil
}
