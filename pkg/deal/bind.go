package deal

import (
	"errors"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// bind lays the deal over the standard document. What stands against it is said
// with a place; the checks before leave little of it.
func (r *reader) bind() {
	if r.early != nil {
		r.deal.Model, r.deal.Known = r.early.Values.Model, r.early
		r.late()
		return
	}
	doc, err := model.Standard()
	if err == nil {
		if r.deal.Model, err = model.Bind(doc, r.deal.Root); err == nil {
			r.deal.Known = walk.NewKnown(r.deal.Model)
		}
	}
	for _, e := range flat(err) {
		r.unbound(e)
	}
}

// late hands the deal's own inputs that were given after it was bound on to the model:
// the year's tax figures, which need to know the day of the sale.
func (r *reader) late() {
	for _, c := range r.deal.Model.Cells {
		if c.Member != r.deal.Root {
			return
		}
		if v, given := r.deal.Root.Given.Look(c.Line.Name); given && c.Given == nil {
			r.deal.Model.Give(c, v)
		}
	}
}

func (r *reader) unbound(err error) {
	var missing *model.MissingError
	var circle *model.CircleError
	switch {
	case errors.As(err, &missing):
		at := missing.Cell.Member.Pos
		if at.Line == 0 {
			at = r.needed()
		}
		r.say("missing-input", at, "%s is not given: %s", missing.Cell.Name(), missing.Cell.Line.Meaning)("add it")
	case errors.As(err, &circle):
		r.say("circle", r.placeOf(circle.Cells), "%v", err)("state one of them as an amount in dollars")
	default:
		r.say("not-bound", r.needed(), "the deal does not fit the model: %v", err)("this is a mistake of the program; please report it with the file")
	}
}

// placeOf is where the file feeds one of the cells.
func (r *reader) placeOf(cells []*model.Cell) diag.Pos {
	for _, c := range cells {
		if c.Given != nil && c.Given.Pos.Line > 0 {
			return c.Given.Pos
		}
	}
	for _, c := range cells {
		if c.Member.Pos.Line > 0 {
			return c.Member.Pos
		}
	}
	return r.needed()
}

// flat takes a joined error apart.
func flat(err error) []error {
	if err == nil {
		return nil
	}
	joined, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return []error{err}
	}
	var out []error
	for _, e := range joined.Unwrap() {
		out = append(out, flat(e)...)
	}
	return out
}
