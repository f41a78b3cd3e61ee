package deal

import "strconv"

// inside is where a value is set: where a single one stands in for a group that could be
// written as one, such as a charge with its amount, it is for that alone, and what else the
// group says stays.
func (t target) inside(root *node, v *node) []string {
	key := "amount" // of charges, which have names of their own
	if t.field != nil {
		key = t.field.Short
	}
	n := root.under(t.path)
	if n == nil {
		return t.path
	}
	if key == "" || v.shape != scalar || n.shape != mapping || n.find(key) == nil {
		return t.path
	}
	return append(t.path[:len(t.path):len(t.path)], key)
}

// under is the value that stands at a path of keys and numbers of items, nil if none does.
func (n *node) under(path []string) *node {
	for _, part := range path {
		if n == nil {
			return nil
		}
		i, err := strconv.Atoi(part)
		switch e := n.find(part); {
		case err == nil && n.shape == list:
			n = n.item(i - 1)
		case e != nil:
			n = e.value
		default:
			return nil
		}
	}
	return n
}
