package why

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// Kind tells what a node of a tree is.
type Kind int

// The kinds. Only Line and Operation have terms; the others end the walk.
const (
	Line      Kind = iota // a line of a member, in a month
	Operation             // an operator over its terms
	Number                // a number that stands in a formula or a default
	Word                  // a word of choice that stands in a formula
	Given                 // what the deal says
	Nothing               // no month or no member is there to read, which counts 0
	Rounding              // what rounding added, exactly
)

var kindNames = [...]string{"line", "operation", "number", "word", "given", "nothing", "rounding"}

// String returns the kind in a word.
func (k Kind) String() string { return kindNames[k] }

// NoMonth is the month of what has one value for the whole deal.
const NoMonth = -1

// A Tree is a value with how it came about. Trees of one Reader share their
// lines; they are laid out on demand and not for use by several goroutines.
type Tree struct {
	Kind  Kind
	Cell  *model.Cell     // the line it is or, for other kinds, in whose formula it stands
	Month int             // NoMonth for what has one value
	Value decimal.Decimal // exact
	Unit  string          // as lines have it; "" for a plain number
	Op    *formula.Op     // of an Operation; + stands for sums, * for products of any length
	Took  int             // index of the term that decided a min, max, lowest, first_month or if

	node   *formula.Node // what was written, or nil
	number decimal.Decimal
	dims   formula.Unit
	err    error
	terms  []Term
	laid   bool
	idle   *bool
	reader *Reader
}

// A Term is one part of a node.
type Term struct {
	Sign  int    // -1 for what is taken away, and for a factor that divides; else 1
	Role  string // "month 3" or the member's label where a total adds over them
	Month int    // the month of Role, or NoMonth
	*Tree
}

// Values are the worked-out cells of a deal; the command line hands them in, as
// the exact reader gives them.
type Values interface {
	// In is the value of a cell in a month, for a line of one value in any.
	In(c *model.Cell, month int) decimal.Decimal
	// Months is the month of the sale.
	Months() int
}

// A Reader explains any number of figures of one deal and shares what they have
// in common.
type Reader struct {
	// Units names a unit of the model for people, of one and of several, as it is for a
	// member: gal for what a can of paint holds. nil leaves units as the model has them.
	Units  func(x *model.Member, unit string) (one, several string)
	model  *model.Model
	values Values
	lines  map[place]*Tree
}

type place struct{ cell, month int }

// NewReader returns a reader of a deal's values, which must have been worked out
// whole and without changed inputs.
func NewReader(m *model.Model, v Values) *Reader {
	return &Reader{model: m, values: v, lines: map[place]*Tree{}}
}

// Explain returns the tree of a line, in a month if it has one for each.
func Explain(m *model.Model, v Values, c *model.Cell, month int) *Tree {
	return NewReader(m, v).Explain(c, month)
}

// Explain returns the tree of a line, in a month if it has one for each.
func (r *Reader) Explain(c *model.Cell, month int) *Tree {
	if !c.Line.Monthly {
		month = NoMonth
	}
	at := place{c.Index, month}
	if t := r.lines[at]; t != nil {
		return t
	}
	dims, _ := formula.ParseUnit(c.Line.Unit) // checked with the document
	t := &Tree{
		Kind: Line, Cell: c, Month: month, Value: r.values.In(c, month),
		Unit: c.Line.Unit, dims: dims, node: c.Line.Formula(), reader: r,
	}
	r.lines[at] = t
	return t
}

// Terms returns the parts of a node, none where the walk ends. A line has one
// term, its formula's tree, and a second for digits cut off behind the sixtieth.
func (t *Tree) Terms() []Term {
	if t.Kind == Line && !t.laid {
		t.laid = true
		t.terms = t.reader.layOut(t)
	}
	return t.terms
}

// Parts returns signed terms whose values add exactly to the node's: the terms
// of a sum, looking through roundings and the choices of an if. What is no sum
// has one part.
func (t *Tree) Parts() []Term {
	if t.Kind == Line {
		terms := t.Terms()
		return append(terms[0].parts(), terms[1:]...)
	}
	return t.parts()
}

func (t *Tree) parts() []Term {
	switch {
	case t.adds():
		return t.terms[:len(t.terms):len(t.terms)]
	case t.is(formula.If) && len(t.terms) > 1:
		return t.terms[1].parts()
	case t.is(formula.Cents):
		return append(t.terms[0].parts(), t.terms[1:]...)
	}
	return []Term{plus(t)}
}

// Meaning is what the line means, in words.
func (t *Tree) Meaning() string { return t.Cell.Line.Meaning }

// Formula is the formula as written, "" where there is none.
func (t *Tree) Formula() string {
	if t.node == nil {
		return ""
	}
	return t.node.String()
}

// Source tells where a line's value comes from.
type Source string

// The sources of a line's value.
const (
	FromDeal  Source = "given"   // the deal says it
	Assumed   Source = "assumed" // a default that moves money
	ByDefault Source = "default" // a default
	ByFormula Source = "formula" // worked out

)

// Source tells where the line's value comes from.
func (t *Tree) Source() Source {
	switch l := t.Cell.Line; {
	case t.Cell.Assumed():
		return Assumed
	case t.Cell.Given != nil:
		return FromDeal
	case !l.Input:
		return ByFormula
	}
	return ByDefault
}

// Walk visits t and everything below it, each line once.
func (t *Tree) Walk(visit func(*Tree)) { t.walk(visit, map[*Tree]bool{}) }

func (t *Tree) walk(visit func(*Tree), seen map[*Tree]bool) {
	if seen[t] {
		return
	}
	seen[t] = true
	visit(t)
	for _, x := range t.Terms() {
		x.walk(visit, seen)
	}
}

func plus(t *Tree) Term { return Term{Sign: 1, Month: NoMonth, Tree: t} }

func (t *Tree) is(codes ...formula.Code) bool {
	if t.Kind != Operation {
		return false
	}
	for _, c := range codes {
		if t.Op.Code == c {
			return true
		}
	}
	return false
}

// adds reports whether the node is the sum of its signed terms.
func (t *Tree) adds() bool {
	return t.is(formula.Add, formula.Total, formula.Sum, formula.Running)
}

// compares reports whether the node is a yes or no made of two sides.
func (t *Tree) compares() bool {
	return t.is(formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual)
}
