package answer

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
)

// Priced is the deal at another price than the asking one, all else worked out anew.
type Priced struct {
	answer *Answer
	values *exact.Values
}

// At works the deal out at a price and an after-repair value.
func (a *Answer) At(price, value decimal.Decimal) (*Priced, error) {
	changes := []exact.Change{a.change("price", price)}
	if !value.Equal(a.Line("after_repair_value")) {
		changes = append(changes, a.change("after_repair_value", value))
	}
	v, err := exact.NewPlan(a.small).Evaluate(changes...)
	return &Priced{a, v}, err
}

// Line returns the value of a line of the deal.
func (p *Priced) Line(name string) decimal.Decimal {
	m := p.answer.small
	return p.values.Of(m.Find(m.Root, name))
}

// Loan returns the value of a line of the loan with that number.
func (p *Priced) Loan(number int, name string) decimal.Decimal {
	m := p.answer.small
	return p.values.Of(m.Find(m.Root.In("loan")[number], name))
}
