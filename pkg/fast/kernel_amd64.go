package fast

import (
	"golang.org/x/sys/cpu"

	"ledgerboard/pkg/formula"
)

// quickest are the forms that run quickest on this machine.
func quickest() map[formula.Code]form {
	if cpu.X86.HasAVX2 {
		return wide
	}
	return portable
}

// wide are the portable forms, eight trials at a time.
var wide = map[formula.Code]form{
	formula.Add:       {both: addAVX2, first: addNumberAVX2, second: addNumberAVX2},
	formula.Sub:       {both: subAVX2, first: subFromAVX2, second: subNumberAVX2},
	formula.Mul:       {both: mulAVX2, first: mulNumberAVX2, second: mulNumberAVX2},
	formula.Div:       {both: divAVX2, first: divNumberAVX2, second: divByAVX2},
	formula.Min:       {both: leastAVX2, first: leastNumberAVX2, second: leastNumberAVX2},
	formula.Max:       {both: mostAVX2, first: mostNumberAVX2, second: mostNumberAVX2},
	formula.Less:      {both: lessAVX2, second: lessNumberAVX2},
	formula.LessEqual: {both: lessEqualAVX2, second: lessEqualNumberAVX2},
	formula.More:      {both: moreAVX2, second: moreNumberAVX2},
	formula.MoreEqual: {both: moreEqualAVX2, second: moreEqualNumberAVX2},
	formula.Equal:     {both: equalAVX2, second: equalNumberAVX2},
	formula.NotEqual:  {both: notEqualAVX2, second: notEqualNumberAVX2},
	formula.Negative:  {both: negativeAVX2},
	formula.Not:       {both: notAVX2},
	formula.And:       {both: andAVX2},
	formula.Or:        {both: orAVX2},
	formula.If:        {both: chooseAVX2},
	formula.Cents:     {both: centsAVX2},
	formula.Ceil:      {both: ceilAVX2},
	formula.Floor:     {both: floorAVX2},
}

//go:noescape
func addAVX2(m []float64, n int, s *step)

//go:noescape
func subAVX2(m []float64, n int, s *step)

//go:noescape
func mulAVX2(m []float64, n int, s *step)

//go:noescape
func divAVX2(m []float64, n int, s *step)

//go:noescape
func addNumberAVX2(m []float64, n int, s *step)

//go:noescape
func subNumberAVX2(m []float64, n int, s *step)

//go:noescape
func mulNumberAVX2(m []float64, n int, s *step)

//go:noescape
func divByAVX2(m []float64, n int, s *step)

//go:noescape
func subFromAVX2(m []float64, n int, s *step)

//go:noescape
func divNumberAVX2(m []float64, n int, s *step)

//go:noescape
func leastAVX2(m []float64, n int, s *step)

//go:noescape
func leastNumberAVX2(m []float64, n int, s *step)

//go:noescape
func mostAVX2(m []float64, n int, s *step)

//go:noescape
func mostNumberAVX2(m []float64, n int, s *step)

//go:noescape
func lessAVX2(m []float64, n int, s *step)

//go:noescape
func lessNumberAVX2(m []float64, n int, s *step)

//go:noescape
func lessEqualAVX2(m []float64, n int, s *step)

//go:noescape
func lessEqualNumberAVX2(m []float64, n int, s *step)

//go:noescape
func moreAVX2(m []float64, n int, s *step)

//go:noescape
func moreNumberAVX2(m []float64, n int, s *step)

//go:noescape
func moreEqualAVX2(m []float64, n int, s *step)

//go:noescape
func moreEqualNumberAVX2(m []float64, n int, s *step)

//go:noescape
func equalAVX2(m []float64, n int, s *step)

//go:noescape
func equalNumberAVX2(m []float64, n int, s *step)

//go:noescape
func notEqualAVX2(m []float64, n int, s *step)

//go:noescape
func notEqualNumberAVX2(m []float64, n int, s *step)

//go:noescape
func andAVX2(m []float64, n int, s *step)

//go:noescape
func orAVX2(m []float64, n int, s *step)

//go:noescape
func notAVX2(m []float64, n int, s *step)

//go:noescape
func negativeAVX2(m []float64, n int, s *step)

//go:noescape
func chooseAVX2(m []float64, n int, s *step)

//go:noescape
func centsAVX2(m []float64, n int, s *step)

//go:noescape
func ceilAVX2(m []float64, n int, s *step)

//go:noescape
func floorAVX2(m []float64, n int, s *step)
