package fast

// Run works the wanted cells out with the axes at the given values, in the order in
// which they were named, and writes them to out. Only what has moved since the run
// before is worked out anew. A program runs once at a time.
func (p *Program) Run(axes, out []float64) {
	p.findDue(axes)
	for n, due := range p.due {
		if due {
			p.due[n] = false
			p.carryOut(&p.code[n])
		}
	}
	for i, s := range p.out {
		out[i] = p.slots[s]
	}
}

// findDue sets the axes and finds the instructions to carry out.
func (p *Program) findDue(axes []float64) {
	if p.last == nil {
		for n := range p.due {
			p.due[n] = true
		}
	}
	for i, s := range p.in {
		p.slots[s] = axes[i]
		if p.last != nil && p.last[i] != axes[i] {
			for _, n := range p.moves[i] {
				p.due[n] = true
			}
		}
	}
	p.last = append(p.last[:0], axes...)
}

func (p *Program) carryOut(c *instruction) {
	args := p.args[c.from:c.up]
	if c.rule == nil {
		var sum float64
		for _, a := range args {
			sum += p.slots[a]
		}
		p.slots[c.to] = sum
		return
	}
	values := p.values[:0]
	for _, a := range args {
		values = append(values, p.slots[a])
	}
	p.slots[c.to] = c.rule(values)
}

// Size is the number of instructions.
func (p *Program) Size() int { return len(p.code) }
