package report

import (
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/stress"
)

// StressObject is the JSON of how bad a deal can get. Figures are decimals as strings; of
// a grid the first index counts down and the second across.
type StressObject struct {
	Schema     int                        `json:"schema"`
	Deal       DealObject                 `json:"deal"`
	Plan       map[string]decimal.Decimal `json:"plan"`
	Grid       GridObject                 `json:"grid"`
	BadDays    []DayNote                  `json:"bad_days,omitempty"`
	Ranking    []SwingNote                `json:"ranking,omitempty"`
	BreakEvens map[string]any             `json:"break_evens,omitempty"` // and what delay costs
}

// GridObject is a grid of four figures.
type GridObject struct {
	Across      SideNote            `json:"across"`
	Down        SideNote            `json:"down"`
	Contingency *int                `json:"contingency_row"` // the first at which it is used up, from 0; null without
	Profit      [][]decimal.Decimal `json:"profit"`
	ROI         [][]any             `json:"roi"` // null where no cash is needed
	Cash        [][]decimal.Decimal `json:"cash_needed"`
	Offer       [][]any             `json:"max_offer"` // null where there is none, "any" where there is no end to it
	Misses      [][][]string        `json:"misses"`
}

// SideNote is one side of a grid.
type SideNote struct {
	Label  string            `json:"label"`
	Path   string            `json:"path"`
	Values []decimal.Decimal `json:"values"` // shares, months or dollars
}

// DayNote is a bad day.
type DayNote struct {
	Name   string          `json:"name"`
	Title  string          `json:"title"`
	What   string          `json:"what"`
	Remedy string          `json:"remedy,omitempty"`
	Own    bool            `json:"own"` // of the deal file
	By     decimal.Decimal `json:"by"`  // see stress.Day
	Profit decimal.Decimal `json:"profit"`
	Lost   decimal.Decimal `json:"lost"`
	ROI    any             `json:"roi"`
	Cash   decimal.Decimal `json:"cash_needed"`
	Months decimal.Decimal `json:"months"`
	Misses []string        `json:"misses"`
	Short  decimal.Decimal `json:"short"` // of cash
}

// SwingNote is what the swing of one input does.
type SwingNote struct {
	Path    string          `json:"path"`
	Label   string          `json:"label"`
	Plan    decimal.Decimal `json:"plan"`
	Low     decimal.Decimal `json:"low"`
	High    decimal.Decimal `json:"high"`
	AtLow   decimal.Decimal `json:"profit_at_low"`
	AtHigh  decimal.Decimal `json:"profit_at_high"`
	Swing   decimal.Decimal `json:"swing"`
	Slope   decimal.Decimal `json:"slope"` // dollars for each unit, just at the plan, without jumps
	Step    decimal.Decimal `json:"step"`  // where the slope is 0: dollars of one whole unit more, jumps included
	Unit    decimal.Decimal `json:"unit"`
	Assumed bool            `json:"assumed"`
	Why     string          `json:"why,omitempty"`
	Narrows string          `json:"narrows,omitempty"`
}

// StressJSON writes how bad a deal can get as one object.
func StressJSON(w io.Writer, s *StressPage) error {
	a := s.Answer
	o := StressObject{Schema: Schema, Deal: DealObject{a.Deal.Name, a.Deal.Address, a.Deal.Notes}, Grid: gridObject(s), Plan: map[string]decimal.Decimal{}}
	for _, line := range []string{"price", "owner_profit", "cash_needed", "hold_months", "overrun", "contingency_share"} {
		o.Plan[line] = a.Line(line).Round(ratioPlaces)
	}
	for _, d := range s.Days {
		o.BadDays = append(o.BadDays, dayNote(d))
	}
	for _, x := range s.Ranking {
		o.Ranking = append(o.Ranking, SwingNote{x.Path, x.Label, x.Plan.Round(ratioPlaces), x.Low.Round(ratioPlaces), x.High.Round(ratioPlaces), x.AtLow, x.AtHigh, x.Size(), decimal.NewFromFloat(x.Slope).Round(2), x.Step, x.Unit, x.Assumed, x.Why, x.Narrows})
	}
	if !s.Asked {
		o.BreakEvens = map[string]any{}
		for _, f := range answer.Searched {
			if len(f.Name) > 10 && (f.Name[:10] == "break_even" || f.Name[:9] == "one_more_") {
				o.BreakEvens[f.Name] = f.Value(a)
			}
		}
	}
	return writeJSON(w, o)
}

func dayNote(d stress.Outcome) DayNote {
	return DayNote{d.Name, d.Title, d.What, d.Remedy, d.Own, d.By.Round(ratioPlaces), d.Profit, d.Lost, rateOf(d.ROI, d.Cash), d.Cash, d.Months.Round(ratioPlaces), missed(d.Misses), d.Short}
}

func rateOf(roi, cash decimal.Decimal) any {
	if !cash.IsPositive() {
		return nil
	}
	return roi.Round(ratioPlaces)
}

func gridObject(s *StressPage) GridObject {
	g := s.Grid
	o := GridObject{Across: SideNote{g.Across.Label, g.Across.Path(), g.Across.Values}, Down: SideNote{g.Down.Label, g.Down.Path(), g.Down.Values}}
	if c := g.Down.Contingency(s.Answer.Plan, g.Across); c >= 0 {
		o.Contingency = &c
	}
	for _, row := range g.Cells {
		n := len(row)
		profit, cash, roi, offer, missed := make([]decimal.Decimal, n), make([]decimal.Decimal, n), make([]any, n), make([]any, n), make([][]string, n)
		for i, c := range row {
			profit[i], cash[i], roi[i], missed[i] = c.Profit, c.Cash, rateOf(c.ROI, c.Cash), append([]string{}, c.Misses...)
			switch {
			case c.Offer.Endless:
				offer[i] = "any"
			case c.Offer.Found:
				offer[i] = c.Offer.Price
			}
		}
		o.Profit, o.Cash, o.ROI, o.Offer, o.Misses = append(o.Profit, profit), append(o.Cash, cash), append(o.ROI, roi), append(o.Offer, offer), append(o.Misses, missed)
	}
	return o
}
