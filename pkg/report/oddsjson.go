package report

import (
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/odds"
)

// OddsObject is the JSON of what may come of a deal. Figures are decimals as strings; null
// is "there is none".
type OddsObject struct {
	Schema        int                     `json:"schema"`
	Deal          DealObject              `json:"deal"`
	Seed          uint64                  `json:"seed"`
	Trials        int64                   `json:"trials"`
	WithoutAnswer int64                   `json:"without_answer"` // trials whose times leave no hold
	Confidence    decimal.Decimal         `json:"confidence"`
	SafeOffer     *SafeObject             `json:"safe_offer"`
	MaxOffer      any                     `json:"max_offer"`
	Figures       map[string]FigureObject `json:"figures"`
	Loss          EstimateObject          `json:"loss"` // the chance of it
	Targets       []TargetOdds            `json:"targets"`
	AnyMissed     EstimateObject          `json:"any_target_missed"`
	CashBeyond    *EstimateObject         `json:"cash_beyond_all"` // past all the cash there is, the reserve too
	Shortfall     EstimateObject          `json:"expected_shortfall"`
	Histogram     []StepObject            `json:"profit_histogram"`
	Ranges        []RangeObject           `json:"ranges"`
	Ties          []TieObject             `json:"ties"`
}

// EstimateObject is a figure from trials with its standard error.
type EstimateObject struct {
	Value decimal.Decimal `json:"value"`
	Error decimal.Decimal `json:"error"`
}

// SafeObject is the safe offer, and how often all targets hold there.
type SafeObject struct {
	Price decimal.Decimal `json:"price"`
	Error decimal.Decimal `json:"error"`
	Holds EstimateObject  `json:"holds"`
}

// FigureObject is a figure of the trials and of the plan. Of the maximum offer, null is "no price
// holds all targets"; in the mean such a trial counts as $0. The return is of the trials in which
// cash is needed; null where that is none.
type FigureObject struct {
	Planned any             `json:"planned"`
	P10     *EstimateObject `json:"p10"`
	P50     *EstimateObject `json:"p50"`
	P90     *EstimateObject `json:"p90"`
	Mean    *EstimateObject `json:"mean"`
}

// TargetOdds is how often a target is missed.
type TargetOdds struct {
	Target string         `json:"target"`
	Missed EstimateObject `json:"missed"`
}

// StepObject is a slice of the profits; the first and the last hold all beyond.
type StepObject struct {
	From  decimal.Decimal `json:"from"`
	To    decimal.Decimal `json:"to"`
	Share decimal.Decimal `json:"share"`
}

// RangeObject is an input that varied.
type RangeObject struct {
	Input   string           `json:"input"`
	Planned decimal.Decimal  `json:"planned"`
	Low     decimal.Decimal  `json:"low"`
	Likely  *decimal.Decimal `json:"likely"` // null for a spread that has none
	High    decimal.Decimal  `json:"high"`
	Means   string           `json:"means"`
	Spread  string           `json:"spread"`
	Cases   []CaseObject     `json:"cases,omitempty"`
	Assumed bool             `json:"assumed"`
	// MovesNothing says that another range stands over what it would move.
	MovesNothing bool   `json:"moves_nothing,omitempty"`
	Why          string `json:"why,omitempty"`
	Place        string `json:"place,omitempty"`
}

// CaseObject is one of a few values.
type CaseObject struct {
	Value  decimal.Decimal `json:"value"`
	Weight decimal.Decimal `json:"weight"`
}

// TieObject is a rank correlation of two inputs.
type TieObject struct {
	Between     [2]string       `json:"between"`
	Correlation decimal.Decimal `json:"correlation"`
	Assumed     bool            `json:"assumed"`
}

// moneyPlaces and sharePlaces are how exactly figures of trials are told.
const (
	moneyPlaces = 2
	sharePlaces = 6
)

// FigureNames are the names of the figures of a trial, by their place.
var FigureNames = [...]string{"owner_profit", "profit_after_own_hours", "roi", "cash_needed", "hold_months", "max_offer"}

// OddsJSON writes the odds as one object.
func OddsJSON(w io.Writer, p *OddsPage) error {
	d := p.Deal
	o := OddsObject{
		Schema: Schema, Deal: DealObject{d.Name, d.Address, d.Notes}, Seed: p.Seed, Trials: p.Trials, WithoutAnswer: p.None,
		Confidence: near(p.Confidence, sharePlaces), MaxOffer: bearable(p.PlanOffer), Figures: map[string]FigureObject{},
		Loss: estimated(p.Loss, sharePlaces), AnyMissed: estimated(p.AnyMissed, sharePlaces), Targets: []TargetOdds{},
		Shortfall: estimated(p.Figures[chance.Profit].Shortfall(tail), moneyPlaces), Ranges: []RangeObject{}, Ties: []TieObject{},
	}
	if p.Safe.Found {
		o.SafeOffer = &SafeObject{p.Safe.Price, near(p.Safe.Error, moneyPlaces), estimated(p.Safe.Holds, sharePlaces)}
	}
	for i, name := range FigureNames {
		o.Figures[name] = p.figureObject(i)
	}
	for i, t := range p.Watched {
		o.Targets = append(o.Targets, TargetOdds{t, estimated(p.Missed[i], sharePlaces)})
	}
	if p.Beyond != nil {
		e := estimated(*p.Beyond, sharePlaces)
		o.CashBeyond = &e
	}
	for _, s := range steps(p.Figures[chance.Profit]) {
		o.Histogram = append(o.Histogram, StepObject{near(s.from, moneyPlaces), near(s.to, moneyPlaces), near(s.share, sharePlaces)})
	}
	for _, r := range p.Ranges {
		o.Ranges = append(o.Ranges, rangeObject(r))
	}
	for _, t := range p.Ties {
		o.Ties = append(o.Ties, TieObject{[2]string{p.Ranges[t.A].Path, p.Ranges[t.B].Path}, t.Rho, t.Assumed})
	}
	return writeJSON(w, o)
}

// figureObject is a figure; the return on cash is told as a share, as everywhere.
func (p *OddsPage) figureObject(figure int) FigureObject {
	h, places, scale := p.Figures[figure], int32(moneyPlaces), 1.0
	var planned any = bearable(p.PlanOffer)
	if figure < chance.Offer {
		planned = p.Plan[figure].Round(ratioPlaces)
	}
	switch figure {
	case chance.Return:
		if places, scale, planned = sharePlaces, 0.01, p.Plan[figure].Shift(-2).Round(ratioPlaces); !p.PlanReturns() {
			planned = nil
		}
	case chance.Months:
		places = sharePlaces
	}
	one := func(e odds.Estimate) EstimateObject {
		return estimated(odds.Estimate{Value: e.Value * scale, Error: e.Error * scale}, places)
	}
	at := func(part float64) *EstimateObject {
		e := h.Percentile(part)
		if lacking(p.Odds, figure, part) {
			return nil
		}
		o := one(e)
		return &o
	}
	out := FigureObject{planned, at(tail), at(0.5), at(1 - tail), nil}
	if h.Trials() > 0 {
		mean := one(h.Mean())
		out.Mean = &mean
	}
	return out
}

func estimated(e odds.Estimate, places int32) EstimateObject {
	return EstimateObject{near(e.Value, places), near(e.Error, places)}
}

func rangeObject(r chance.Range) RangeObject {
	o := RangeObject{
		Input: r.Path, Planned: r.Plan.Round(ratioPlaces), Low: r.Low.Round(ratioPlaces), High: r.High.Round(ratioPlaces),
		Means: deal.OneInTen, Spread: r.Spread, Assumed: r.Assumed, Why: r.Why,
	}
	if r.HasLikely() {
		likely := r.Likely.Round(ratioPlaces)
		o.Likely = &likely
	}
	if r.Means == odds.AtEnds {
		o.Means = deal.VeryEnds
	}
	for _, c := range r.Cases {
		o.Cases = append(o.Cases, CaseObject(c))
	}
	if len(r.Cases) > 0 {
		o.Spread = "cases"
	}
	o.MovesNothing = r.Idle != ""
	if !r.Assumed {
		o.Place = r.Pos.String()
	}
	return o
}
