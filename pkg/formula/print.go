package formula

import "strings"

// String prints the tree as a formula that parses to the same tree.
func (n *Node) String() string {
	var b strings.Builder
	n.write(&b, 0)
	return b.String()
}

func (n *Node) write(b *strings.Builder, least int) {
	switch {
	case n.Name != "":
		b.WriteString(n.Name)
	case n.Text != "":
		b.WriteString(`"` + n.Text + `"`)
	case n.Op == nil:
		b.WriteString(n.Num.String())
		if n.Unit != "" {
			b.WriteString(" " + n.Unit)
		}
	case n.Op.Code == Negative:
		n.bracketed(b, least > bindsNegative, func() {
			b.WriteString("-")
			n.Args[0].write(b, bindsNegative)
		})
	case n.Op.Binds > 0:
		n.bracketed(b, n.Op.Binds < least, func() {
			left := n.Op.Binds
			if left == bindsCompare {
				left++ // comparisons do not chain
			}
			n.Args[0].write(b, left)
			b.WriteString(" " + n.Op.Name + " ")
			n.Args[1].write(b, n.Op.Binds+1)
		})
	default:
		n.writeCall(b)
	}
}

func (n *Node) bracketed(b *strings.Builder, need bool, inner func()) {
	if need {
		b.WriteString("(")
		defer b.WriteString(")")
	}
	inner()
}

func (n *Node) writeCall(b *strings.Builder) {
	b.WriteString(n.Op.Name)
	if n.Op.Most == 0 {
		return
	}
	b.WriteString("(")
	for i, a := range n.Args {
		if i > 0 {
			b.WriteString(", ")
		}
		a.write(b, 0)
	}
	if n.Set != "" {
		b.WriteString(" of " + n.Set)
	}
	b.WriteString(")")
}
