package why

import "ledgerboard/pkg/formula"

// plainUnits are the units without a dimension; a line's tells how to show them.
var plainUnits = map[string]struct{}{"share": {}, "flag": {}, "choice": {}, "count": {}}

// measure finds the unit of an operation from its terms and hands it on to
// numbers among them that have none: in 1 + overrun, the 1 is 100%.
func (t *Tree) measure() {
	terms := t.terms
	switch {
	case t.is(formula.Mul):
		t.measureProduct()
		return
	case t.is(formula.Month, formula.FirstMonth):
		t.Unit = "month"
	case t.is(formula.Cents):
		t.Unit = "$"
	case t.is(formula.If):
		terms = terms[1:]
	case t.is(formula.Ago, formula.At, formula.LevelPayment):
		terms = terms[:1]
	case t.is(formula.And, formula.Or, formula.Not) || t.compares():
		t.Unit = "flag"
	case t.is(formula.Power, formula.Root):
		return
	}
	unit := t.Unit
	for _, x := range terms {
		if x.dims != formula.AnyUnit {
			t.dims = x.dims
		}
		if unit == "" || t.compares() && unit == "flag" {
			unit = x.Unit
		}
	}
	if t.Unit == "flag" || t.is(formula.FirstMonth) {
		t.dims = formula.Unit{}
	} else {
		t.Unit = unit
	}
	for _, x := range terms {
		if !t.is(formula.FirstMonth) {
			x.push(unit)
		}
	}
}

func (t *Tree) measureProduct() {
	t.dims = t.terms[0].dims
	share := false
	for i, x := range t.terms {
		share = share || x.Unit == "share"
		if i == 0 {
			continue
		}
		code := formula.Mul
		if x.Sign < 0 {
			code = formula.Div
		}
		t.dims, _ = formula.Table[code].Unit([]formula.Unit{t.dims, x.dims}) // checked with the document
	}
	switch {
	case t.dims != formula.Unit{} && t.dims != formula.AnyUnit:
		t.Unit = t.dims.String()
	case share:
		t.Unit = "share"
	}
}

// push gives a unit to a node that has none, and to what it is made of.
func (t *Tree) push(unit string) {
	if t.Kind == Line || unit == "" || t.Unit == unit {
		return
	}
	if _, plain := plainUnits[t.Unit]; t.Unit != "" && !plain {
		return
	}
	t.Unit = unit
	for i, x := range t.terms {
		second := i > 0 && t.is(formula.Ago, formula.At)
		cond := i == 0 && t.is(formula.If)
		if x.Unit == "" && !second && !cond && !t.is(formula.Mul, formula.Power, formula.Root, formula.LevelPayment, formula.FirstMonth) {
			x.push(unit)
		}
	}
}
