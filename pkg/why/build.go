package why

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// A frame is where a formula is read: for a line, from a member, in a month.
type frame struct {
	*Reader
	cell   *model.Cell
	member *model.Member
	month  int
}

// layOut returns the terms of a line.
func (r *Reader) layOut(t *Tree) []Term {
	c := t.Cell
	f := frame{r, c, c.Member, t.Month}
	if c.Line.Monthly && (t.Month < 0 || t.Month > r.values.Months()) {
		return []Term{plus(f.leaf(Nothing, nil, decimal.Decimal{}))}
	}
	var rule *Tree
	if c.Given != nil && c.Given.Refers == "" {
		rule = f.leaf(Given, nil, c.Expr.Number)
	} else {
		rule = f.build(c.Expr, c.Line.Formula())
	}
	if _, plain := plainUnits[c.Line.Unit]; plain || rule.Unit == "" {
		rule.push(c.Line.Unit)
	}
	out := []Term{plus(rule)}
	if cut := t.Value.Sub(rule.Value); !cut.IsZero() && formula.Keep(rule.Value).Equal(t.Value) {
		out = append(out, plus(f.leaf(Rounding, nil, cut)))
	}
	return out
}

func (f frame) leaf(k Kind, n *formula.Node, v decimal.Decimal) *Tree {
	t := &Tree{Kind: k, Cell: f.cell, Month: f.month, Value: v, number: v, node: n, reader: f.Reader}
	if v.IsZero() {
		t.dims = formula.AnyUnit
	}
	return t
}

func (f frame) operation(op *formula.Op, n *formula.Node, terms ...Term) *Tree {
	t := &Tree{Kind: Operation, Cell: f.cell, Month: f.month, Op: op, node: n, terms: terms, reader: f.Reader}
	t.Took = t.decider()
	t.Value, t.err = t.again()
	t.measure()
	return t
}

// build lays an expression out and works it out; written is its place in the
// formula, which a default's word of choice does not know.
func (f frame) build(e *model.Expr, written *formula.Node) *Tree {
	if e.Op == nil {
		return f.simple(e, written)
	}
	switch e.Op.Code {
	case formula.Add, formula.Sub, formula.Negative:
		var terms []Term
		f.flatten(e, 1, &terms)
		return f.operation(formula.Table[formula.Add], e.Node, terms...)
	case formula.Mul, formula.Div:
		return f.operation(formula.Table[formula.Mul], e.Node, f.factors(e)...)
	case formula.If:
		return f.choose(e)
	}
	if e.Op.Exact == nil {
		return f.across(e)
	}
	var terms []Term
	for i := range e.Args {
		x := f.arg(e, i)
		if x.is(formula.Min, formula.Max) && x.Op == e.Op { // the smallest of the smallest of some
			terms = append(terms, x.terms...)
			continue
		}
		terms = append(terms, plus(x))
	}
	if e.Op.Code == formula.Cents {
		return f.cents(e, terms[0])
	}
	return f.operation(e.Op, e.Node, terms...)
}

func (f frame) simple(e *model.Expr, written *formula.Node) *Tree {
	switch n := e.Node; {
	case !e.IsNumber():
		return f.Explain(f.model.Cells[e.Reads(f.member)], f.month)
	case n == nil: // a default's word of choice
		return f.leaf(Number, written, e.Number)
	case n.Text != "":
		return f.leaf(Word, n, e.Number)
	default:
		t := f.leaf(Number, n, e.Number)
		if t.Unit = n.Unit; n.Unit != "" {
			t.dims, _ = formula.ParseUnit(n.Unit) // checked with the document
		}
		return t
	}
}

// arg lays out an expression's i-th value.
func (f frame) arg(e *model.Expr, i int) *Tree { return f.build(e.Args[i], e.Node.Args[i]) }

// flatten collects the signed terms of sums, differences and signs.
func (f frame) flatten(e *model.Expr, sign int, out *[]Term) {
	signs := []int{sign, sign}
	switch e.Op.Code {
	case formula.Sub:
		signs[1] = -sign
	case formula.Negative:
		signs[0] = -sign
	}
	for i, a := range e.Args {
		if a.Op != nil && a.Op.Code <= formula.Sub || a.Op != nil && a.Op.Code == formula.Negative {
			f.flatten(a, signs[i], out)
			continue
		}
		x := plus(f.arg(e, i))
		x.Sign = signs[i]
		*out = append(*out, x)
	}
}

// factors collects a product from the left, in the order in which it is worked out.
func (f frame) factors(e *model.Expr) []Term {
	var out []Term
	if a := e.Args[0]; a.Op != nil && (a.Op.Code == formula.Mul || a.Op.Code == formula.Div) {
		out = f.factors(a)
	} else {
		out = []Term{plus(f.arg(e, 0))}
	}
	x := plus(f.arg(e, 1))
	if e.Op.Code == formula.Div {
		x.Sign = -1
	}
	return append(out, x)
}

// choose lays out the condition and the branch taken; the other may have no value.
func (f frame) choose(e *model.Expr) *Tree {
	cond := f.arg(e, 0)
	took := 1
	if cond.Value.IsZero() {
		took = 2
	}
	t := f.operation(e.Op, e.Node, plus(cond), plus(f.arg(e, took)))
	t.Took = took
	t.Value, t.err = t.again()
	return t
}

func (f frame) cents(e *model.Expr, inside Term) *Tree {
	t := f.operation(e.Op, e.Node, inside)
	rounding := f.leaf(Rounding, nil, t.Value.Sub(inside.Value))
	rounding.Unit = "$"
	t.terms = append(t.terms, plus(rounding))
	return t
}
