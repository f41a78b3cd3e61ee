package flat

import "ledgerboard/pkg/formula"

// make is the place of what an operator makes of values, found among those made before,
// worked out, or made shorter where that changes nothing.
func (b *builder) make(code formula.Code, args ...int32) int32 {
	v := Value{Code: code}
	copy(v.Args[:], args)
	if x, ok := b.worked(code, args); ok {
		return b.number(x)
	}
	if at, ok := b.shorter(code, v.Args); ok {
		return at
	}
	return b.add(v)
}

// worked is an operator's value where it is the same whatever the axes are.
func (b *builder) worked(code formula.Code, args []int32) (float64, bool) {
	var values [3]float64
	for i, a := range args {
		v := &b.list.Values[a]
		if v.Code != Number {
			if len(args) == 2 {
				return settled(code, b.spans[args[0]], b.spans[args[1]])
			}
			return 0, false
		}
		values[i] = v.Number
	}
	return formula.Table[code].Float(values[:len(args)]), true
}

func (b *builder) is(at int32, x float64) bool {
	v := &b.list.Values[at]
	return v.Code == Number && v.Number == x
}

// shorter is the place of a value that an operator's value always equals.
func (b *builder) shorter(code formula.Code, args [3]int32) (int32, bool) {
	x, y := args[0], args[1]
	switch code {
	case formula.Add:
		switch {
		case b.is(x, 0):
			return y, true
		case b.is(y, 0):
			return x, true
		}
	case formula.Sub:
		switch {
		case b.is(y, 0):
			return x, true
		case x == y:
			return b.number(0), true
		case b.is(x, 0):
			return b.make(formula.Negative, y), true
		}
	case formula.Mul:
		switch {
		case b.is(x, 1):
			return y, true
		case b.is(y, 1):
			return x, true
		case b.is(x, 0) || b.is(y, 0):
			return b.number(0), true
		}
	case formula.Div:
		if b.is(y, 1) || b.is(x, 0) {
			return x, true
		}
	case formula.And:
		switch {
		case b.is(x, 0) || b.is(y, 0):
			return b.number(0), true
		case b.sure(x) && b.isFlag(y):
			return y, true
		case b.sure(y) && b.isFlag(x):
			return x, true
		}
	case formula.Or:
		switch {
		case b.sure(x) || b.sure(y):
			return b.number(1), true
		case b.is(x, 0) && b.isFlag(y):
			return y, true
		case b.is(y, 0) && b.isFlag(x):
			return x, true
		}
	case formula.Equal:
		if b.is(y, 1) && b.isFlag(x) {
			return x, true
		}
	case formula.Cents:
		return x, b.inCents(x)
	case formula.Min, formula.Max:
		return b.outer(code, x, y)
	case formula.If:
		return b.chosen(args)
	}
	return 0, false
}

// sure reports whether a condition always holds.
func (b *builder) sure(at int32) bool {
	v := &b.list.Values[at]
	return v.Code == Number && v.Number != 0
}

// outer is the one of two values that is always the smaller, or the larger.
func (b *builder) outer(code formula.Code, x, y int32) (int32, bool) {
	if b.within(code, x, y) {
		return x, true
	}
	if b.within(code, y, x) {
		return y, true
	}
	less, more := b.spans[x], b.spans[y]
	if code == formula.Max {
		less, more = more, less
	}
	switch {
	case x == y || less.hi <= more.lo:
		return x, true
	case more.hi <= less.lo:
		return y, true
	}
	return 0, false
}

// within reports whether a value is the smaller, or the larger, of another and something.
func (b *builder) within(code formula.Code, at, other int32) bool {
	v := &b.list.Values[at]
	return v.Code == code && (v.Args[0] == other || v.Args[1] == other)
}

func (b *builder) chosen(args [3]int32) (int32, bool) {
	switch {
	case b.is(args[0], 0):
		return args[2], true
	case b.sure(args[0]):
		return args[1], true
	case args[1] == args[2]:
		return args[1], true
	case b.is(args[1], 1) && b.is(args[2], 0) && b.isFlag(args[0]):
		return args[0], true
	}
	return 0, false
}

// isFlag reports whether a value is always 0 or 1.
func (b *builder) isFlag(at int32) bool {
	switch b.list.Values[at].Code {
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual, formula.And, formula.Or, formula.Not:
		return true
	}
	return b.is(at, 0) || b.is(at, 1)
}

// inCents reports whether rounding a value to the cent surely changes nothing.
func (b *builder) inCents(at int32) bool {
	v := &b.list.Values[at]
	switch v.Code {
	case Number:
		return formula.Cents64(v.Number) == v.Number
	case formula.Cents:
		return true
	case formula.Negative:
		return b.inCents(v.Args[0])
	case formula.Min, formula.Max:
		return b.inCents(v.Args[0]) && b.inCents(v.Args[1])
	case formula.If:
		return b.inCents(v.Args[1]) && b.inCents(v.Args[2])
	}
	return false
}
