package report

import (
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/best"
	"ledgerboard/pkg/deal"
)

// BestObject is the JSON of the best options. Figures are decimals as strings.
type BestObject struct {
	Schema    int               `json:"schema"`
	Deal      DealObject        `json:"deal"`
	Best      *ChoiceObject     `json:"best"`
	RunnerUp  *ChoiceObject     `json:"runner_up"`
	Own       *ChoiceObject     `json:"own"`
	MaxOffer  any               `json:"max_offer"`
	Limits    map[string]any    `json:"limits"`
	Costs     map[string]any    `json:"limit_costs"`
	LeastCash *decimal.Decimal  `json:"least_cash,omitempty"` // where no choice keeps the limit: the least that was found to do
	Choices   decimal.Decimal   `json:"choices"`
	WorkedOut int               `json:"worked_out"`
	Proved    bool              `json:"proved"`
	Second    bool              `json:"runner_up_proved"`
	Scope     string            `json:"scope,omitempty"`
	Settled   map[string]string `json:"settled,omitempty"` // rooms that leave no choice: done, or as it is
}

// ChoiceObject is an option for each room and what they come to.
type ChoiceObject struct {
	Options map[string]string          `json:"options,omitempty"`
	Figures map[string]decimal.Decimal `json:"figures"`
}

// BestJSON writes the best options as one object.
func BestJSON(w io.Writer, b *BestPage) error {
	d := b.Own.Deal
	o := BestObject{
		Schema: Schema, Deal: DealObject{d.Name, d.Address, d.Notes}, Limits: map[string]any{}, Costs: map[string]any{}, Scope: b.Scope,
		Choices: decimal.NewFromFloat(b.Found.Choices), WorkedOut: b.Found.Worked, Proved: b.Found.Proved, Second: b.Found.SecondProved,
		Best: b.choice(b.Found.Best), RunnerUp: b.choice(b.Found.RunnerUp),
		Own: &ChoiceObject{Figures: map[string]decimal.Decimal{
			"owner_profit": b.Own.Line("owner_profit"), "cash_needed": b.Own.Line("cash_needed"), "renovation": b.Own.Line("renovation").Round(ratioPlaces),
			"own_hours": b.Own.Line("own_hours").Round(ratioPlaces), "budget": b.Own.Line("budget"),
		}},
	}
	for _, r := range b.Settled {
		if o.Settled == nil {
			o.Settled = map[string]string{}
		}
		o.Settled[r.Room.Label] = deal.AsItIs
		if r.Done {
			o.Settled[r.Room.Label] = "done"
		}
	}
	if b.Offer.Found {
		o.MaxOffer = b.Offer.Price
	}
	for _, x := range b.Prices {
		o.Limits[x.Limit] = x.Most
		if x.Without.Best != nil && b.Found.Best != nil {
			o.Costs[x.Limit] = x.Costs
		} else {
			o.Costs[x.Limit] = nil
		}
		if x.Least != nil {
			o.LeastCash = &x.Least.Cash
		}
	}
	return writeJSON(w, o)
}

func (b *BestPage) choice(c *best.Choice) *ChoiceObject {
	if c == nil {
		return nil
	}
	o := &ChoiceObject{Options: map[string]string{}, Figures: map[string]decimal.Decimal{
		"owner_profit": c.Profit, "cash_needed": c.Cash, "renovation": c.Renovation.Round(ratioPlaces), "own_hours": c.OwnHours.Round(ratioPlaces), "budget": c.Budget,
	}}
	for i, r := range b.Rooms {
		o.Options[r.Room.Label] = named(r, c.Options[i])
	}
	return o
}
