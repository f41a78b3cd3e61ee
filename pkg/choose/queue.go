package choose

// A node is a partial choice: that of its parent, and an option for one room more.
type node struct {
	bound  int64
	parent int32 // index of a node, or -1
	option int16
	depth  int16 // rooms decided
	narrow bool  // the bound is what Narrow says
}

// A queue holds every node made, and on top of a heap the open one to look at next:
// the highest bound, of these the deepest, of these the first made.
type queue struct {
	nodes []node
	heap  []int32
}

func (q *queue) before(a, b int32) bool {
	x, y := &q.nodes[a], &q.nodes[b]
	switch {
	case x.bound != y.bound:
		return x.bound > y.bound
	case x.depth != y.depth:
		return x.depth > y.depth
	}
	return a < b
}

// Len, Less, Swap, Push and Pop are for container/heap.
func (q *queue) Len() int           { return len(q.heap) }
func (q *queue) Less(i, j int) bool { return q.before(q.heap[i], q.heap[j]) }
func (q *queue) Swap(i, j int)      { q.heap[i], q.heap[j] = q.heap[j], q.heap[i] }

// Push takes the index of a node.
func (q *queue) Push(x any) { q.heap = append(q.heap, x.(int32)) }

// Pop gives it back.
func (q *queue) Pop() any {
	last := len(q.heap) - 1
	x := q.heap[last]
	q.heap = q.heap[:last]
	return x
}

// choice writes the rooms that a node decides over an open choice.
func (q *queue) choice(n int32, order, out []int) {
	for i := range out {
		out[i] = -1
	}
	for ; n >= 0 && q.nodes[n].depth > 0; n = q.nodes[n].parent {
		out[order[q.nodes[n].depth-1]] = int(q.nodes[n].option)
	}
}
