package stress

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// An Outcome is what a bad day comes to, exactly.
type Outcome struct {
	Day
	Profit decimal.Decimal // the owner's profit then
	Lost   decimal.Decimal // profit lost
	ROI    decimal.Decimal // the return on cash then; it means nothing where no cash is needed
	Cash   decimal.Decimal // cash needed then
	Months decimal.Decimal // how long the house is owned then
	Misses []Miss          // targets missed then
	Short  decimal.Decimal // cash short of what the owner can use, then

	Margin   decimal.Decimal // the owner's margin then
	Interest decimal.Decimal // interest of all loans then
	Undrawn  decimal.Decimal // what never comes of the holdbacks then
}

// A Miss is a target that is missed, and by how many dollars.
type Miss struct {
	Target string // the line, such as roi_to_spare
	Short  decimal.Decimal
}

// Words names missed targets in a word each.
func Words(misses []Miss) string {
	if len(misses) == 0 {
		return "none"
	}
	var out []string
	for _, m := range misses {
		word := strings.TrimSuffix(m.Target, "_to_spare")
		if word == "roi" {
			word = "return"
		}
		out = append(out, word)
	}
	return strings.Join(out, ", ")
}

// Run works a bad day out.
func (p *Plan) Run(d Day) (Outcome, error) {
	p, d, err := p.wide(d)
	if err != nil {
		return Outcome{}, err
	}
	targets := solve.Targets(p.Deal.Targets)
	var want []*model.Cell
	lines := []string{"owner_profit", "roi", "cash_needed", "hold_months", "cash_to_spare", "owner_margin", "interest", "holdback", "draws"}
	for _, line := range append(lines, targets...) {
		want = append(want, p.cell(line))
	}
	changes, err := p.changes(d)
	if err != nil {
		return Outcome{}, err
	}
	v, err := exact.NewPlan(p.Model, want...).Evaluate(changes...)
	if err != nil {
		return Outcome{}, err
	}
	o := Outcome{Day: d, Profit: v.Of(want[0]), ROI: v.Of(want[1]), Cash: v.Of(want[2]), Months: v.Of(want[3])}
	if !o.Months.IsPositive() { // of which a file would be refused
		return Outcome{}, fmt.Errorf("%w: the bad day %s", ErrTooLong, d.Name)
	}
	o.Margin, o.Interest, o.Undrawn = v.Of(want[5]), v.Of(want[6]), v.Of(want[7]).Sub(v.Of(want[8]))
	o.Lost = p.Line("owner_profit").Sub(o.Profit)
	if p.Deal.HasCash {
		o.Short = decimal.Max(decimal.Zero, v.Of(want[4]).Neg())
	}
	for i, t := range targets {
		if x := v.Of(want[i+len(lines)]); x.IsNegative() {
			o.Misses = append(o.Misses, Miss{t, x.Neg()})
		}
	}
	return o, nil
}

// wide is a plan whose model has all that a bad day of the file changes.
func (p *Plan) wide(d Day) (*Plan, Day, error) {
	for _, x := range p.Deal.BadDays {
		if !d.Own || x.Name != d.Name {
			continue
		}
		var inputs []deal.Input
		for _, c := range x.Changes {
			inputs = append(inputs, c.Input)
		}
		w, err := p.asking(inputs...)
		if err != nil || w == p {
			return p, d, err
		}
		return w, w.own(x), nil
	}
	return p, d, nil
}

// changes are those of a bad day, with the loans as it leaves them.
func (p *Plan) changes(d Day) ([]exact.Change, error) {
	if d.sized == nil {
		return slices.Concat(d.moves, p.held), nil
	}
	budgets, err := p.budgets(d.moves)
	return slices.Concat(d.moves, d.sized, budgets), err
}

// Missed is by how many dollars a target is missed then; 0 if it holds.
func (o Outcome) Missed(target string) decimal.Decimal {
	for _, m := range o.Misses {
		if m.Target == target {
			return m.Short
		}
	}
	return decimal.Zero
}
