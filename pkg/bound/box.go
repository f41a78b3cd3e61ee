package bound

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A Box asks for some cells while several others vary at once.
type Box struct {
	prepared *walk.Prepared
	want     []int
	walker   walk.Walker[Plane, *planeRules]
}

// NewBox asks for cells of a prepared question while its axes vary. Its last month is
// the last that any of their values lead to.
func NewBox(p *walk.Prepared, want ...*model.Cell) *Box {
	work := walk.As(p.Fixed, func(x decimal.Decimal) Plane { return Plane{C: float.Near(x)} })
	return &Box{p, model.Indexes(want), walk.Walker[Plane, *planeRules]{Values: work, Rules: &planeRules{}}}
}

// An Input is a given cell with its values: At plus, of each way to vary, so much.
type Input struct {
	Cell *model.Cell
	At   Plane
}

// Varying is the plane of way k over the range from a to b.
func Varying(k int, a, b float64) Plane {
	s := make([]float64, k+1)
	s[k] = (b - a) / 2
	return Plane{C: a + s[k], S: s}
}

// Plus is x + y.
func (x Plane) Plus(y Plane) Plane { return new(arena).plus(x, 1, y) }

// A Piece is a part of a box, in which some planes of the ways to vary are at least 0,
// with planes that enclose the wanted cells there: one of each, or of each month. Their
// slopes are those of the ways.
type Piece struct {
	Where []Plane
	Want  [][]Plane
}

// A part of a box is what is left to work out where some planes are at least 0: the
// steps from one on, with what was known before.
type part struct {
	where          []Plane
	from, last     int
	errors, slopes int // kept apart, and taken of the arena, before that step
}

// Over returns pieces that cover the box. It is cut along the difference of two values
// of which either may be the smaller, such as what is asked for and what a cap leaves,
// if the error would be more than so much; into no more pieces than the most. It is
// ErrVaries where the number of months is not one. A box answers one question at a time.
func (b *Box) Over(ways int, grave float64, most int, inputs ...Input) ([]Piece, error) {
	b.walker.Changed = map[int]Plane{}
	for _, in := range inputs {
		b.walker.Changed[in.Cell.Index] = in.At
	}
	todo, out := []part{{last: b.prepared.Fixed.Last, errors: ways}}, []Piece(nil)
	for len(todo) > 0 {
		at := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		r := b.walker.Rules
		r.grave = grave
		if len(out)+len(todo)+2 > most {
			r.grave = math.Inf(1)
		}
		err := b.walk(&at)
		switch {
		case r.empty:
		case err != nil:
			return nil, err
		case r.open != nil:
			d := r.open.along(ways)
			up, down := Plane{C: d.C + d.E, S: d.S}, Plane{C: d.E - d.C, S: new(arena).scaled(-1, d).S}
			yes, no := at, at
			yes.where, no.where = append(slices.Clip(at.where), up), append(slices.Clip(at.where), down)
			todo = append(todo, yes, no)
		default:
			out = append(out, Piece{at.where, b.wanted(ways)})
		}
	}
	return out, nil
}

// walk works a part out up to the step that needs it cut, or to the end. What came
// before that step holds for the pieces too: they need not be walked from the start.
func (b *Box) walk(at *part) error {
	w, r := &b.walker, b.walker.Rules
	r.holds, r.open, r.empty, r.used = at.where, nil, false, at.errors
	r.release(at.slopes)
	w.Last = at.last
	for ; at.from < len(b.prepared.Varying); at.from++ {
		at.last, at.errors, at.slopes = w.Last, r.used, len(r.taken)
		if err := w.Steps(b.prepared.Varying[at.from : at.from+1]); err != nil {
			return err
		}
		if r.open != nil || r.empty {
			return nil
		}
	}
	if _, one := r.Whole(w.Scalar[w.Model.Horizon]); !one {
		return ErrVaries
	}
	return nil
}

// wanted are the planes of the cells asked for, after a walk.
func (b *Box) wanted(ways int) [][]Plane {
	out := make([][]Plane, len(b.want))
	for i, c := range b.want {
		if !b.walker.Model.Cells[c].Line.Monthly {
			out[i] = []Plane{b.walker.Scalar[c].along(ways)}
			continue
		}
		for _, x := range b.walker.Month(c) {
			out[i] = append(out[i], x.along(ways))
		}
	}
	return out
}

// along keeps the slopes of the first ways and adds the others to the error.
func (x Plane) along(ways int) Plane {
	out := Plane{C: x.C, S: make([]float64, ways)}
	copy(out.S, x.S)
	out.E = x.radius() - Plane{S: out.S}.radius()
	return out
}
