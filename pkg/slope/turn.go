package slope

import (
	"math"

	"ledgerboard/pkg/formula"
)

// markTurns marks the axes that move something which stands just at a kink or a step.
func (p *pass) markTurns(turns []bool) {
	for i := range p.Values {
		v := &p.Values[i]
		if v.Code < 0 || !atTurn(v.Code, p.args(v)) {
			continue
		}
		for a := range turns {
			turns[a] = turns[a] || p.moves(a, int32(i))
		}
	}
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
