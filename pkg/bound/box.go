package bound

import (
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A Box asks for some cells while several others vary at once.
type Box struct {
	prepared *walk.Prepared
	want     []int
	work     *walk.Values[Plane]
}

// NewBox asks for cells of a prepared question while its axes vary. Its last month is
// the last that any of their values lead to.
func NewBox(p *walk.Prepared, want ...*model.Cell) *Box {
	b := &Box{p, model.Indexes(want), walk.New[Plane](p.Model)}
	b.work.Last = p.Fixed.Last
	varies := map[int]bool{}
	for _, s := range p.Varying {
		for _, c := range s.Cells {
			varies[c] = true
		}
	}
	for c, x := range p.Fixed.Scalar {
		if varies[c] {
			continue
		}
		b.work.Scalar[c] = Plane{C: x.InexactFloat64()}
		if all := p.Fixed.Month(c); all != nil {
			b.work.SetMonth(c, planesOf(all))
		}
	}
	return b
}

func planesOf(months []decimal.Decimal) []Plane {
	out := make([]Plane, len(months))
	for i, x := range months {
		out[i] = Plane{C: x.InexactFloat64()}
	}
	return out
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
func (x Plane) Plus(y Plane) Plane { return x.plus(1, y) }

// A Piece is a part of a box, in which some planes of the ways to vary are at least 0,
// with planes that enclose the wanted cells there: one of each, or of each month. Their
// slopes are those of the ways.
type Piece struct {
	Where []Plane
	Want  [][]Plane
}

// Over returns pieces that cover the box. It is cut along the difference of two values
// of which either may be the smaller, such as what is asked for and what a cap leaves,
// if the error would be more than so much; into no more pieces than the most. It is
// ErrVaries where the number of months is not one. A box answers one question at a time.
func (b *Box) Over(ways int, grave float64, most int, inputs ...Input) ([]Piece, error) {
	changed := map[int]Plane{}
	for _, in := range inputs {
		changed[in.Cell.Index] = in.At
	}
	todo, out := [][]Plane{nil}, []Piece(nil)
	for len(todo) > 0 {
		where := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		r := &planeRules{used: ways, region: region{holds: where, grave: grave}}
		if len(out)+len(todo)+2 > most {
			r.grave = math.Inf(1)
		}
		want, err := b.over(ways, r, changed)
		switch {
		case err != nil && !r.empty:
			return nil, err
		case r.empty:
		case r.open != nil:
			d := r.open.along(ways)
			up, down := Plane{C: d.C + d.E, S: d.S}, Plane{C: d.E - d.C, S: d.scaled(-1).S}
			where = where[:len(where):len(where)]
			todo = append(todo, append(where, up), append(where, down))
		default:
			out = append(out, Piece{where, want})
		}
	}
	return out, nil
}

func (b *Box) over(ways int, r *planeRules, changed map[int]Plane) ([][]Plane, error) {
	last := b.work.Last
	defer func() { b.work.Last = last }()
	w := walk.Walker[Plane, *planeRules]{Values: b.work, Rules: r, Changed: changed}
	if err := w.Steps(b.prepared.Varying); err != nil {
		return nil, err
	}
	if _, one := r.Whole(w.Scalar[w.Model.Horizon]); !one {
		return nil, ErrVaries
	}
	out := make([][]Plane, len(b.want))
	for i, c := range b.want {
		if !w.Model.Cells[c].Line.Monthly {
			out[i] = []Plane{w.Scalar[c].along(ways)}
			continue
		}
		for _, x := range w.Month(c) {
			out[i] = append(out[i], x.along(ways))
		}
	}
	return out, nil
}

// along keeps the slopes of the first ways and adds the others to the error.
func (x Plane) along(ways int) Plane {
	out := Plane{C: x.C, S: make([]float64, ways)}
	copy(out.S, x.S)
	out.E = x.radius() - Plane{S: out.S}.radius()
	return out
}
