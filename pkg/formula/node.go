package formula

import "github.com/shopspring/decimal"

// A Node is one place in a formula's tree. Exactly one of the four shapes holds:
// a number (Op nil, Name and Text empty), a name, a quoted word, or an operator
// with its arguments.
type Node struct {
	Op   *Op
	Args []*Node
	Name string          // a line's name
	Text string          // a quoted choice, such as "balance"
	Num  decimal.Decimal // a number
	Unit string          // the unit written after a number, or ""
	Set  string          // the set that total adds over, or in which previous looks back
	At   int             // byte offset in the text
}

// IsNumber reports whether n is a plain number.
func (n *Node) IsNumber() bool { return n.Op == nil && n.Name == "" && n.Text == "" }

// Walk calls visit for n and everything below it.
func (n *Node) Walk(visit func(*Node)) {
	visit(n)
	for _, a := range n.Args {
		a.Walk(visit)
	}
}
