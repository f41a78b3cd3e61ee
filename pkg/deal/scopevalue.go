package deal

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// statedValues are the keys of values that hold what the planned options add.
var statedValues = []string{"value.after-repair value", "value.low", "value.lender's value"}

// followScope lets the values of the file follow another scope than the one they were
// stated for: they hold what the options of the file's own scope add, and no more. The
// value before work follows by the model.
func (r *reader) followScope(planned decimal.Decimal, moved bool) {
	for _, key := range statedValues {
		if r.good(key) != nil {
			r.deal.StatedValues = append(r.deal.StatedValues, strings.TrimPrefix(key, "value."))
		}
	}
	if !moved && !r.allOptions {
		return
	}
	now := r.takenAdds()
	root := r.deal.Root
	for _, key := range statedValues {
		g := r.good(key)
		if g == nil {
			continue
		}
		line := g.field.feeds()[0]
		v := root.Given.Of(line)
		before := v.Number.Sub(planned)
		if comes := before.Add(now); r.allOptions && line == "after_repair_value" && r.usedUp(g, before, planned) || !r.allOptions && r.usedUp(g, comes, planned) {
			return
		}
		v.Text = fmt.Sprintf("%s stated, with other options", g.node.text)
		if line == "after_repair_value" {
			root.Withdraw(line)
			v.Number = before
			root.Give("value_before_work", v)
			continue
		}
		v.Number = before.Add(now)
		root.Give(line, v)
		r.deal.Following = append(r.deal.Following, line)
	}
}

// adds is what an option adds to the value.
func (r *reader) adds(p *plan) decimal.Decimal { return p.option.Given.Of("value_added").Number }

// takenAdds is what the options that the scope takes add.
func (r *reader) takenAdds() (sum decimal.Decimal) {
	for _, p := range r.plans {
		if p.taken {
			sum = sum.Add(r.adds(p))
		}
	}
	return sum
}

// planned is what the options of the file's own scope add, and whether another scope
// is asked for.
func (r *reader) planned(byRoom map[*model.Member][]*plan, rooms []*model.Member) (sum decimal.Decimal, moved bool) {
	asked := r.picks
	for _, room := range rooms {
		r.picks = r.ownPicks
		own := r.pick(room, byRoom[room])
		r.picks = asked
		if own != nil {
			sum = sum.Add(r.adds(own))
		}
		moved = moved || own != r.pick(room, byRoom[room])
	}
	return sum, moved
}
