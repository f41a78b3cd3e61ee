package answer

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/solve"
	"ledgerboard/pkg/stress"
)

// A Shake is something that goes wrong now and then, and what it would do.
type Shake = stress.Outcome

// shakes works out each thing that can go wrong in this deal: first those that miss
// some target by more than any other, then the rest; among either those that miss
// the most targets, then the one that costs most.
func (a *Answer) shakes() error {
	for _, d := range a.Plan.Days() {
		if !d.Usual {
			continue
		}
		o, err := a.Plan.Run(d)
		if err != nil {
			return err
		}
		if o.Lost.IsPositive() || o.Cash.GreaterThan(a.Line("cash_needed")) {
			a.Shakes = append(a.Shakes, o) // what takes neither profit nor cash breaks nothing
		}
	}
	slices.SortStableFunc(a.Shakes, func(x, y Shake) int {
		return cmp.Or(cmp.Compare(len(y.Misses), len(x.Misses)), harm(y).Cmp(harm(x)))
	})
	worst := a.worst()
	slices.SortStableFunc(a.Shakes, func(x, y Shake) int { return cmp.Compare(rank(worst, x), rank(worst, y)) })
	a.Telling = min(max(usualTelling, len(worst)), len(a.Shakes))
	return nil
}

// usualTelling is how many shakes a page tells of.
const usualTelling = 3

// worst are the names of the shakes that miss a target by more than any other does.
func (a *Answer) worst() map[string]bool {
	names := map[string]bool{}
	for _, t := range solve.Targets(a.Deal.Targets) {
		worst, short := "", decimal.Zero
		for _, s := range a.Shakes {
			if x := s.Missed(t); x.GreaterThan(short) {
				worst, short = s.Name, x
			}
		}
		if worst != "" {
			names[worst] = true
		}
	}
	return names
}

func rank(worst map[string]bool, s Shake) int {
	if worst[s.Name] {
		return 0
	}
	return 1
}

// harm ranks shakes that miss as many targets: profit lost, and cash that is not there.
func harm(s Shake) decimal.Decimal { return s.Lost.Add(s.Short) }

// daysAMonth turns dollars a month into dollars a day.
var daysAMonth = formula.Divide(decimal.NewFromInt(365), decimal.NewFromInt(12))

func (a *Answer) delays() (err error) {
	if a.Late, err = a.delay("late_sale"); err != nil {
		return err
	}
	a.Stalled, err = a.delay("standstill")
	return err
}

func (a *Answer) delay(line string) (Delay, error) {
	then, err := a.held("owner_profit", a.change(line, a.Line(line).Add(decimal.NewFromInt(1))))
	if err != nil {
		return Delay{}, err
	}
	lost := a.Line("owner_profit").Sub(then)
	return Delay{lost, formula.Divide(lost, daysAMonth).Round(2)}, nil
}
