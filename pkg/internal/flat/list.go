package flat

import "ledgerboard/pkg/formula"

// Codes of values that no operator makes; the others have their operator's.
const (
	Number formula.Code = -1 - iota
	Axis
)

// A Value is one entry of a list: a number, an axis, or what an operator makes of values
// that stand before it.
type Value struct {
	Code   formula.Code
	Args   [3]int32 // as many as the operator takes; for an axis its place
	Number float64
}

// Takes is how many of its arguments a value has.
func (v Value) Takes() int { return takes(v.Code) }

func takes(code formula.Code) int {
	switch {
	case code < 0:
		return 0
	case formula.Table[code].Binds > 0, code == formula.Min, code == formula.Max:
		return 2 // more than two are taken two at a time
	}
	return formula.Table[code].Most
}

// A List works wanted cells out from axes.
type List struct {
	Values []Value
	In     []int32 // the value of each axis, or -1 where it does not matter
	Out    []int32 // the value of each wanted cell
}

// shorten leaves out what the wanted values do not need.
func (l *List) shorten() {
	to := make([]int32, len(l.Values)) // 0 for not needed
	for _, o := range l.Out {
		to[o] = 1
	}
	for i := len(l.Values) - 1; i >= 0; i-- {
		if v := l.Values[i]; to[i] > 0 {
			for _, a := range v.Args[:v.Takes()] {
				to[a] = 1
			}
		}
	}
	kept := l.Values[:0]
	for i, v := range l.Values {
		if to[i] == 0 {
			continue
		}
		for k, a := range v.Args[:v.Takes()] {
			v.Args[k] = to[a]
		}
		to[i] = int32(len(kept))
		kept = append(kept, v)
	}
	l.Values = kept
	for i, o := range l.Out {
		l.Out[i] = to[o]
	}
	for i := range l.In {
		l.In[i] = -1
	}
	for i, v := range kept {
		if v.Code == Axis {
			l.In[v.Args[0]] = int32(i)
		}
	}
}
