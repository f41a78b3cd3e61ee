package why

import "ledgerboard/pkg/formula"

// Idle reports whether a value comes only from inputs that the deal does not
// give, so that a zero of this kind is not worth a line in print.
func (t *Tree) Idle() bool {
	if t.idle == nil {
		idle := t.findIdle()
		t.idle = &idle
	}
	return *t.idle
}

func (t *Tree) findIdle() bool {
	switch t.Kind {
	case Given:
		return false
	case Line, Operation:
	default:
		return true
	}
	if t.is(formula.Month) || t.Kind == Line && (t.Cell.Given != nil || t.Cell.Assumed()) {
		return false
	}
	zero := t.is(formula.Mul) && t.Value.IsZero() // one idle zero makes the whole product one
	for _, x := range t.Terms() {
		idle := x.Idle()
		if zero && idle && x.Value.IsZero() {
			return true
		}
		if !zero && !idle {
			return false
		}
	}
	return !zero
}

// visible reports whether print can show a rounding; a quotient may miss a whole
// cent by its fortieth digit.
func (t *Tree) visible() bool {
	return t.Kind != Rounding || t.Unit == "$" && !t.Value.Round(6).IsZero()
}

// hidden reports whether a term is left out of print.
func (t *Tree) hidden() bool { return t.Value.IsZero() && t.Idle() }
