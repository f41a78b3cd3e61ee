package model

// components finds the sets of nodes that reach each other (Tarjan), those first that
// others reach.
type components struct {
	to    func(node int, visit func(int)) // calls visit with the nodes next to one
	found func(set []int)                 // gets each set, which is not kept
	state []state                         // by node
	count int32
	stack []int
}

type state struct {
	number, low int32 // 0 means not seen
	onStack     bool
}

func newComponents(nodes int, to func(node int, visit func(int)), found func(set []int)) *components {
	return &components{to: to, found: found, state: make([]state, nodes)}
}

// visit finds the sets that a node reaches and that are not found yet.
func (c *components) visit(i int) {
	if c.state[i].number > 0 {
		return
	}
	c.count++
	c.state[i] = state{c.count, c.count, true}
	c.stack = append(c.stack, i)
	c.to(i, func(j int) {
		if c.state[j].number == 0 {
			c.visit(j)
			c.state[i].low = min(c.state[i].low, c.state[j].low)
		} else if c.state[j].onStack {
			c.state[i].low = min(c.state[i].low, c.state[j].number)
		}
	})
	if c.state[i].low < c.state[i].number {
		return
	}
	at := len(c.stack) - 1
	for c.stack[at] != i {
		at--
	}
	set := c.stack[at:]
	for _, j := range set {
		c.state[j].onStack = false
	}
	c.found(set)
	c.stack = c.stack[:at]
}
