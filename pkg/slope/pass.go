package slope

import (
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/flat"
)

// A pass is a list worked out where no axis has moved.
type pass struct {
	*flat.List
	values []float64
	movers []uint64 // by value, a bit for each axis that moves it
	words  int      // of bits for each value
}

func newPass(l *flat.List, axes int) *pass {
	p := &pass{List: l, values: make([]float64, len(l.Values)), words: (axes + 63) / 64}
	p.movers = make([]uint64, len(l.Values)*p.words)
	for i := range l.Values {
		v := &l.Values[i]
		own := p.moversOf(int32(i))
		switch v.Code {
		case flat.Number:
			p.values[i] = v.Number
		case flat.Axis:
			own[v.Args[0]/64] |= 1 << (v.Args[0] % 64)
		default:
			args := p.args(v)
			p.values[i] = formula.Table[v.Code].Float(args[:v.Takes()])
			for _, a := range v.Args[:v.Takes()] {
				for w, bits := range p.moversOf(a) {
					own[w] |= bits
				}
			}
		}
	}
	return p
}

func (p *pass) moversOf(i int32) []uint64 { return p.movers[int(i)*p.words:][:p.words] }

func (p *pass) moves(axis int, i int32) bool {
	return p.movers[int(i)*p.words+axis/64]>>(axis%64)&1 == 1
}

func (p *pass) args(v *flat.Value) [3]float64 { return argsOf(v, p.values) }

func argsOf(v *flat.Value, values []float64) (args [3]float64) {
	for k, a := range v.Args[:v.Takes()] {
		args[k] = values[a]
	}
	return args
}

// back is the slope of one value for each axis: what each value passes on to those that
// it is made of, from the last to the first.
func (p *pass) back(from int32, axes int) []float64 {
	owed, out := make([]float64, len(p.Values)), make([]float64, axes)
	owed[from] = 1
	for i := from; i >= 0; i-- {
		v := &p.Values[i]
		switch {
		case owed[i] == 0 || v.Code == flat.Number:
		case v.Code == flat.Axis:
			out[v.Args[0]] = owed[i]
		default:
			var by [3]float64
			args := p.args(v)
			formula.Table[v.Code].Slope(args[:v.Takes()], by[:v.Takes()])
			for k, a := range v.Args[:v.Takes()] {
				if by[k] != 0 {
					owed[a] += owed[i] * by[k]
				}
			}
		}
	}
	return out
}
