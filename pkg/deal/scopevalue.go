package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// statedValues are the keys of values that hold what the planned options add.
var statedValues = []string{"value.after-repair value", "value.low", "value.lender's value"}

// followScope lets the values of the file follow another scope than the one they were
// stated for: they hold what the options of the file's own scope add, and no more. The
// value before work follows by the model. Beside a value by sold houses that follows the
// condition they wait for it: see followCondition.
func (r *reader) followScope() {
	for _, key := range statedValues {
		if r.good(key) != nil {
			r.deal.StatedValues = append(r.deal.StatedValues, strings.TrimPrefix(key, "value."))
		}
	}
	if !r.planned.moved && !r.allOptions || r.byCondition() {
		return
	}
	planned, now := r.planned.adds, r.takenAdds()
	if !r.allOptions {
		r.moved = now.Sub(planned)
	}
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

// ofScope are the lines of what the house is worth and sells for, which the file states for its
// own scope.
var ofScope = []string{"after_repair_value", "lender_value", "sale_price"}

// moveAside lets what the file says beside the plan, in ranges and on bad days, follow another
// scope with the values of the plan.
func (r *reader) moveAside() {
	if r.moved.IsZero() {
		return
	}
	for i := range r.deal.Ranges {
		x := &r.deal.Ranges[i]
		if x.Member != r.deal.Root || !slices.Contains(ofScope, x.Line) {
			continue
		}
		x.Moved = r.moved
		x.Low, x.Likely, x.High = x.Low.Add(r.moved), x.Likely.Add(r.moved), x.High.Add(r.moved)
		for k := range x.Cases {
			x.Cases[k].Value = x.Cases[k].Value.Add(r.moved)
		}
	}
	for _, d := range r.deal.BadDays {
		for i := range d.Changes {
			if c := &d.Changes[i]; c.how == comesTo && c.Member == r.deal.Root && slices.Contains(ofScope, c.Line) {
				c.Value = c.Value.Add(r.moved)
				c.Text = fmt.Sprintf("%s (%s stated, with other options)", c.Says(c.Value), c.Text)
			}
		}
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

// ownScope is the file's own scope, which another may be asked for beside.
func (r *reader) ownScope(byRoom map[*model.Member][]*plan, rooms []*model.Member) (out plannedScope) {
	asked := r.picks
	for _, room := range rooms {
		r.picks = r.ownPicks
		own := r.pick(room, byRoom[room])
		r.picks = asked
		if own == nil {
			out.takes = append(out.takes, AsItIs)
		} else {
			out.takes = append(out.takes, plainKey(own.option.Label))
			out.adds = out.adds.Add(r.adds(own))
		}
		out.moved = out.moved || own != r.pick(room, byRoom[room])
	}
	return out
}
