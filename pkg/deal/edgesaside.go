package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// asideBeside is how what is set aside for a part of the house is doubted beside the least and the most that the
// file says: the file refuses it, and in the sheet figures follow all the same, so that a firm bid may be
// tried there. A part that was seen has nothing set aside.
func (d *Deal) asideBeside(c *model.Cell) (out []Beside) {
	part := func(line string, times decimal.Decimal) Part {
		return Part{Cell: d.Model.Find(c.Member, line), Times: times}
	}
	aside := Sum{Parts: []Part{part("set_aside", one)}}
	given := func(line string) bool { return d.Model.Find(c.Member, line).Given != nil }
	if given("if_bad_most") {
		out = append(out, Beside{{Parts: []Part{part("set_aside", one), part("if_bad_most", one.Neg())}}})
	}
	if given("if_bad_least") {
		out = append(out, Beside{{Parts: []Part{part("if_bad_least", one), part("set_aside", one.Neg())}}, aside})
	}
	return out
}
