package deal

import "github.com/shopspring/decimal"

// A flow is what givers give takers: how much each giver has yet for each taker, and what it gave.
type flow struct {
	has, gave [][]decimal.Decimal // by giver and taker
	room      []decimal.Decimal   // of each taker
}

// mostGiven is the most that givers can give together, of whom each gives the most that it has for one
// taker, and no taker takes more than it has room for. It finds ways for more until there is none
// (L. R. Ford, D. R. Fulkerson, Maximal Flow through a Network, 1956; from memory).
func mostGiven(has [][]decimal.Decimal, room []decimal.Decimal) (sum decimal.Decimal) {
	f := flow{has: has, room: room, gave: make([][]decimal.Decimal, len(has))}
	for giver := range has {
		f.gave[giver] = make([]decimal.Decimal, len(room))
	}
	for giver := range has {
		left := decimal.Max(decimal.Zero, has[giver]...)
		for more := left; more.IsPositive() && left.IsPositive(); left = left.Sub(more) {
			more = f.give(giver, left, map[int]bool{giver: true})
			sum = sum.Add(more)
		}
	}
	return sum
}

// give lets a giver give up to so much to a taker, who may leave as much to be given by another that
// was not asked yet, and returns how much it gave.
func (f *flow) give(giver int, much decimal.Decimal, asked map[int]bool) decimal.Decimal {
	for taker, has := range f.has[giver] {
		can := decimal.Min(much, has)
		if !can.IsPositive() {
			continue
		}
		if now := decimal.Min(can, f.room[taker]); now.IsPositive() {
			f.room[taker] = f.room[taker].Sub(now)
			return f.move(giver, taker, now)
		}
		for other := range f.gave {
			back := decimal.Min(can, f.gave[other][taker])
			if asked[other] || !back.IsPositive() {
				continue
			}
			asked[other] = true
			if now := f.give(other, back, asked); now.IsPositive() {
				f.move(other, taker, now.Neg())
				return f.move(giver, taker, now)
			}
		}
	}
	return decimal.Zero
}

func (f *flow) move(giver, taker int, much decimal.Decimal) decimal.Decimal {
	f.gave[giver][taker] = f.gave[giver][taker].Add(much)
	f.has[giver][taker] = f.has[giver][taker].Sub(much)
	return much
}
