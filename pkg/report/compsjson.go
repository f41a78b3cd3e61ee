package report

import (
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
)

// CompsObject is the JSON of what sold houses say of a value.
type CompsObject struct {
	Schema       int                         `json:"schema"`
	Deal         DealObject                  `json:"deal"`
	Day          string                      `json:"day"`
	Likely       decimal.Decimal             `json:"likely"`
	Low          decimal.Decimal             `json:"low"`  // one in ten sells for less
	High         decimal.Decimal             `json:"high"` // one in ten sells for more
	DealGoesBy   decimal.Decimal             `json:"after_repair_value"`
	LeaveOneOut  decimal.Decimal             `json:"leave_one_out_error"`
	Figures      map[string]*decimal.Decimal `json:"figures"` // of the house; null where what it is compared by is not known
	Sales        []SaleNote                  `json:"sales"`
	Worths       []WorthNote                 `json:"worths"`
	NotAdjusted  []string                    `json:"not_adjusted"`
	NotUsed      []NotUsedNote               `json:"not_used"`
	Notes        []string                    `json:"notes"`
	Warnings     []Note                      `json:"warnings"`
	NotAppraisal string                      `json:"not_an_appraisal"`
}

// SaleNote is a sale that is used, with the lines of its grid.
type SaleNote struct {
	Name   string         `json:"name"`
	Place  string         `json:"place"`
	Date   string         `json:"sold"`
	Source string         `json:"source,omitempty"`
	Why    string         `json:"why"`
	Doubts string         `json:"doubts,omitempty"`
	Beyond []string       `json:"beyond_customary"`
	Lines  map[string]any `json:"lines"`
}

// WorthNote is what a unit of something is worth.
type WorthNote struct {
	Of    string          `json:"unit"`
	Worth decimal.Decimal `json:"worth"` // dollars; for the month the share that prices change by
	Error decimal.Decimal `json:"standard_error"`
	From  string          `json:"from"`
}

// NotUsedNote is a sale that is not used.
type NotUsedNote struct {
	Name  string `json:"name"`
	Place string `json:"place"`
	Why   string `json:"why"`
}

// CompsJSON writes what sold houses say of the value as one object.
func CompsJSON(w io.Writer, a *answer.Answer) error {
	c, v := a.Deal.Comps, a.Deal.Comps.Value
	o := CompsObject{
		Schema: Schema, Deal: DealObject{a.Deal.Name, a.Deal.Address, a.Deal.Notes}, Day: c.Day.String(),
		Likely: a.Line("value_by_comps"), Low: a.Line("comps_low"), High: a.Line("comps_high"), DealGoesBy: a.Line("after_repair_value"),
		LeaveOneOut: near6(v.Error), NotAppraisal: comps.NotAppraisal,
		Figures: map[string]*decimal.Decimal{}, NotAdjusted: []string{}, NotUsed: []NotUsedNote{}, Notes: v.Notes[:len(v.Notes)-1], Warnings: []Note{},
	}
	for _, l := range a.Model.Doc.Lines {
		if l.Section == "Comparables" && l.Set == "deal" {
			x := a.Line(l.Name).Round(ratioPlaces)
			o.Figures[l.Name] = &x
		}
	}
	for _, f := range deal.Compared() {
		if !f.Figure(&c.Subject.House).Known {
			o.Figures[f.Ours] = nil
		}
	}
	for i, r := range v.Rows {
		lines, _ := members(a, c.Members[i])
		for _, f := range deal.Compared() { // the model takes the house's where the sale's is not known
			if lines[f.Theirs] = nil; f.Figure(&r.House).Known {
				lines[f.Theirs] = near6(f.Figure(&r.House).Value)
			}
		}
		o.Sales = append(o.Sales, SaleNote{c.ID(&r.Sold), c.Place(&r.Sold).String(), r.Date.String(), r.Source, r.Why, r.Doubts, append([]string{}, r.Amber...), lines})
	}
	for _, r := range append([]comps.Rate{v.Trend}, v.Rates...) {
		from := r.From
		if !r.Told() {
			from = "nothing"
		}
		o.Worths = append(o.Worths, WorthNote{r.Unit, near6(r.Worth), near6(r.Error), from})
	}
	for _, l := range v.Untold {
		o.NotAdjusted = append(o.NotAdjusted, l.String())
	}
	for _, p := range c.NotUsed {
		o.NotUsed = append(o.NotUsed, NotUsedNote{c.ID(&p.Sold), c.Place(&p.Sold).String(), p.Why})
	}
	for _, d := range deal.WeightyFirst(a.Warnings) {
		if compsCode(d) {
			o.Warnings = append(o.Warnings, Note{d.Code, d.Pos.String(), d.Message, d.Hint})
		}
	}
	return writeJSON(w, o)
}

// near6 is an estimate to six decimals.
func near6(x float64) decimal.Decimal { return decimal.NewFromFloat(x).Round(6) }
