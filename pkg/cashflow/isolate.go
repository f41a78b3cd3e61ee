package cashflow

import "math/big"

// dyadic is the number num / 2^exp.
type dyadic struct {
	num *big.Int
	exp uint
}

// suspectDepth is how often an interval is halved before a repeated root is
// suspected: Descartes' bound can't fall to 1 around one, however narrow the
// interval. A wrong suspicion costs time only.
const suspectDepth = 64

// unitRoots returns the distinct roots of p strictly between 0 and 1, each
// narrowed to rateBits. p must not be zero at 0 or 1.
func (p poly) unitRoots() []dyadic {
	var roots []dyadic
	depth := uint(suspectDepth)
	for p.degree() > 0 {
		cells, hit, deep := p.isolate(depth)
		switch {
		case hit != nil:
			// A root on the edge of a cell would belong to neither side.
			roots = append(roots, *hit)
			p = p.without(*hit)
		case deep:
			p, depth = p.squareFree(), ^uint(0)
		default:
			for _, c := range cells {
				roots = append(roots, p.narrow(c))
			}
			return roots
		}
	}
	return roots
}

// isolate halves (0, 1) until every part holds no root or exactly one, and
// returns the cells of the latter: from c to c + 1/2^c.exp. It stops early at a
// root that is itself a halving point, and at the given depth.
func (p poly) isolate(depth uint) (cells []dyadic, hit *dyadic, deep bool) {
	type part struct {
		p  poly // p over the cell, stretched to (0, 1)
		at dyadic
	}
	todo := []part{{p, dyadic{num: new(big.Int)}}}
	for len(todo) > 0 {
		here := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		switch here.p.unitChanges() {
		case 0:
			continue
		case 1:
			cells = append(cells, here.at)
			continue
		}
		if here.at.exp >= depth {
			return nil, nil, true
		}
		left := here.p.halved()
		right := left.shifted()
		low := dyadic{new(big.Int).Lsh(here.at.num, 1), here.at.exp + 1}
		middle := dyadic{new(big.Int).Add(low.num, big.NewInt(1)), low.exp}
		if right[0].Sign() == 0 {
			return nil, &middle, false
		}
		todo = append(todo, part{right, middle}, part{left, low})
	}
	return cells, nil, false
}
