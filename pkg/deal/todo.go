package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

// A toDo is how much of a measure work is done to: what is counted of it, in the unit of
// the measure, and a share of all there is.
type toDo struct {
	counted, share decimal.Decimal
	text           string // in the words of the file
	at             diag.Pos
}

// whole is all there is.
var whole = toDo{share: one}

// of is how much it is where there is so much of the measure.
func (a toDo) of(all decimal.Decimal) decimal.Decimal {
	switch {
	case a.counted.IsZero() && a.share.Equal(one): // as most is
		return all
	case a.share.IsZero():
		return a.counted
	}
	return a.counted.Add(a.share.Mul(all))
}

func (a toDo) isWhole() bool { return a.counted.IsZero() && a.share.Equal(one) }

func (a toDo) equal(b toDo) bool { return a.counted.Equal(b.counted) && a.share.Equal(b.share) }

func (a toDo) plus(b toDo) toDo {
	return toDo{counted: a.counted.Add(b.counted), share: a.share.Add(b.share)}
}

func (a toDo) less(b toDo) toDo {
	return toDo{counted: a.counted.Sub(b.counted), share: a.share.Sub(b.share)}
}

// stated is how much of its measure the file has work done that it names.
func (w *work) stated() toDo {
	out := whole
	if v, said := w.member.Given.Look("measure"); said && v.Refers == "" {
		out = toDo{counted: v.Number, text: v.Text, at: v.Pos}
	}
	if v, said := w.member.Given.Look("part"); said {
		out = toDo{out.counted.Mul(v.Number), out.share.Mul(v.Number), v.Text, v.Pos}
	}
	return out
}
