package modeltest

import (
	"fmt"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

var (
	one    = decimal.NewFromInt(1)
	nibble = rapid.IntRange(0, 15)
)

// chance is true about n times in 16; it shrinks to false. Rapid prefers small
// numbers, so it is rather less.
func (d *drawer) chance(n int) bool { return nibble.Draw(d.t, "chance") >= 16-n }

// upTo draws a whole number from 0 to most; most is at most 15.
func (d *drawer) upTo(most int) int { return rapid.IntRange(0, most).Draw(d.t, "number") }

func pick[E any](d *drawer, from ...E) E { return from[d.upTo(len(from)-1)] }

// part draws a number from 0 to 1 in 65535 steps, nearly evenly.
func (d *drawer) part() decimal.Decimal {
	n := 0
	for range 4 {
		n = n*16 + nibble.Draw(d.t, "digit")
	}
	return decimal.NewFromInt(int64(n)).DivRound(decimal.NewFromInt(65535), 12)
}

func (d *drawer) between(low, high, step decimal.Decimal) decimal.Decimal {
	return low.Add(d.part().Mul(high.Sub(low)).Div(step).Round(0).Mul(step))
}

// money draws dollars: an edge, a round sum, whole dollars or cents.
func (d *drawer) money(low, high float64) decimal.Decimal {
	a, b := dec(low), dec(high)
	switch n := nibble.Draw(d.t, "kind of sum"); {
	case n == 1:
		return a
	case n == 2:
		return b
	case n < 9:
		step := decimal.NewFromInt(1)
		for step.Mul(decimal.NewFromInt(200)).LessThan(b) {
			step = step.Mul(decimal.NewFromInt(10))
		}
		return decimal.Max(a, d.between(decimal.Zero, b, step))
	case n < 13:
		return d.between(a, b, one)
	}
	return d.between(a, b, decimal.New(1, -2))
}

// share draws a fraction: an edge, or one of steps of 1/8 of a percent or 0.01%.
func (d *drawer) share(low, high float64) decimal.Decimal {
	a, b := dec(low), dec(high)
	switch n := nibble.Draw(d.t, "kind of share"); {
	case n == 1:
		return a
	case n == 2:
		return b
	case n < 10:
		return decimal.Min(b, d.between(a, b, decimal.New(125, -5)))
	}
	return decimal.Min(b, d.between(a, b, decimal.New(1, -4)))
}

// dec turns a constant of this package into a decimal; its text is exact.
func dec(x float64) decimal.Decimal { return decimal.RequireFromString(fmt.Sprint(x)) }

// months draws a time: none, whole, quarters or tenths of months, weeks or days.
func (d *drawer) months(most int) decimal.Decimal {
	switch n := nibble.Draw(d.t, "kind of time"); {
	case n < 2:
		return decimal.Zero
	case n < 6:
		d.use("whole months")
		return decimal.NewFromInt(int64(1 + d.upTo(most-1)))
	case n < 9:
		return decimal.New(int64(1+d.upTo(most*4-1)), 0).Div(decimal.NewFromInt(4))
	case n < 12:
		return decimal.New(int64(1+d.upTo(most*10-1)), -1)
	case n < 15:
		return d.text(fmt.Sprintf("%d weeks", 1+d.upTo(most*4-1)))
	}
	return d.text(fmt.Sprintf("%d days", 1+d.upTo(most*30-1)))
}

func (d *drawer) text(duration string) decimal.Decimal {
	d.use("days and weeks")
	x, err := quantity.ParseDuration(duration)
	if err != nil {
		d.t.Fatalf("%s: %v", duration, err)
	}
	return x
}

// give draws and gives an input n times in 16.
func (d *drawer) give(n int, m *model.Member, line string, x func() decimal.Decimal) bool {
	if !d.chance(n) {
		return false
	}
	m.GiveNumber(line, x())
	return true
}

func (d *drawer) giveMoney(n int, m *model.Member, line string, low, high float64) bool {
	return d.give(n, m, line, func() decimal.Decimal { return d.money(low, high) })
}

func (d *drawer) giveShare(n int, m *model.Member, line string, low, high float64) bool {
	return d.give(n, m, line, func() decimal.Decimal { return d.share(low, high) })
}

// giveFlag gives yes or no.
func (d *drawer) giveFlag(n int, m *model.Member, line string) bool {
	if !d.chance(n) {
		return false
	}
	yes := d.chance(11)
	m.GiveNumber(line, yesNo(yes))
	return yes
}

func yesNo(yes bool) decimal.Decimal {
	if yes {
		return one
	}
	return decimal.Zero
}

func choose(m *model.Member, line, word string) { m.Give(line, model.Value{Choice: word, Text: word}) }
