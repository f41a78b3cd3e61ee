package pricebook

import "go.yaml.in/yaml/v4"

// A node is a part of a book as it is read: what is needed of the library's, which is
// three times as large, and a deal reads thousands.
type node struct {
	Kind         yaml.Kind
	Line, Column int32
	Null         bool // nothing stands there
	Value        string
	Content      []*node
}

func nodeOf(n *yaml.Node) *node {
	out := &node{n.Kind, int32(n.Line), int32(n.Column), n.Tag == "!!null", n.Value, make([]*node, len(n.Content))}
	for i, c := range n.Content {
		out.Content[i] = nodeOf(c)
	}
	return out
}
