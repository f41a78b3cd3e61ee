package fast

import "ledgerboard/pkg/internal/flat"

// Run works the wanted cells out with the axes at the given values, in the order in
// which they were named, and writes them to out. Only what has moved since the run
// before is worked out anew. A program runs once at a time.
func (p *Program) Run(axes, out []float64) {
	p.findDue(axes)
	for i, due := range p.due {
		if due {
			p.due[i] = false
			p.values[i] = p.carryOut(&p.list.Values[i])
		}
	}
	for i, at := range p.list.Out {
		out[i] = p.values[at]
	}
}

// findDue sets the axes and finds the values to work out.
func (p *Program) findDue(axes []float64) {
	if p.last == nil {
		for i, v := range p.list.Values {
			p.due[i] = v.Code >= 0
		}
	}
	for i, at := range p.list.In {
		if at >= 0 {
			p.values[at] = axes[i]
		}
		if p.last != nil && p.last[i] != axes[i] {
			for _, n := range p.moves[i] {
				p.due[n] = true
			}
		}
	}
	p.last = append(p.last[:0], axes...)
}

// Size is the number of operations.
func (p *Program) Size() (n int) {
	for _, v := range p.list.Values {
		if v.Code != flat.Number && v.Code != flat.Axis {
			n++
		}
	}
	return n
}
