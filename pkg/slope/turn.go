package slope

import (
	"math"

	"ledgerboard/pkg/formula"
)

// turns says by axis whether something that it moves stands just at a kink or a step.
func (p *pass) turns(axes int) []bool {
	out, words := make([]bool, axes), (axes+63)/64
	movers := make([]uint64, len(p.Values)*words) // by value, a bit for each axis
	for a, at := range p.In {
		if at >= 0 {
			movers[int(at)*words+a/64] |= 1 << (a % 64)
		}
	}
	for i := range p.Values {
		v := &p.Values[i]
		own := movers[i*words:][:words]
		for _, a := range v.Args[:v.Takes()] {
			for w, bits := range movers[int(a)*words:][:words] {
				own[w] |= bits
			}
		}
		if v.Code < 0 || !atTurn(v.Code, p.args(v)) {
			continue
		}
		for a := range out {
			out[a] = out[a] || own[a/64]>>(a%64)&1 == 1
		}
	}
	return out
}

// near is how far float64 may be off and count as just at a turn.
const near = 1e-8

// atTurn reports whether an operator's values are just where its rule takes another turn.
func atTurn(code formula.Code, x [3]float64) bool {
	switch code {
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual, formula.Min, formula.Max:
		return math.Abs(x[0]-x[1]) <= near
	case formula.Ceil, formula.Floor:
		return math.Abs(x[0]-math.Round(x[0])) <= near
	case formula.Div:
		return x[0] == 0 && x[1] == 0
	}
	return false
}
