package fast

// Run works the wanted cells out with the axes at the given values, in the order in
// which they were named, and writes them to out. A program runs once at a time.
func (p *Program) Run(axes, out []float64) {
	for i, s := range p.in {
		p.slots[s] = axes[i]
	}
	for n := range p.code {
		c := &p.code[n]
		args := p.args[c.from:c.up]
		if c.rule == nil {
			var sum float64
			for _, a := range args {
				sum += p.slots[a]
			}
			p.slots[c.to] = sum
			continue
		}
		values := p.values[:0]
		for _, a := range args {
			values = append(values, p.slots[a])
		}
		p.slots[c.to] = c.rule(values)
	}
	for i, s := range p.out {
		out[i] = p.slots[s]
	}
}

// Size is the number of instructions.
func (p *Program) Size() int { return len(p.code) }
