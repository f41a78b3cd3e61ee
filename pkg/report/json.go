package report

import (
	"encoding/json"
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// Schema is the version of the JSON objects; it changes when a name goes or
// changes its meaning.
const Schema = 1

// An Object is the JSON of an answer. Figures are decimals as strings; null is
// "there is none".
type Object struct {
	Schema   int            `json:"schema"`
	Deal     DealObject     `json:"deal"`
	Verdict  VerdictObject  `json:"verdict"`
	Warnings []Note         `json:"warnings"`
	Assumed  []AssumedNote  `json:"assumed"`
	Cautions []CautionNote  `json:"cautions"`
	Results  map[string]any `json:"results"`
}

// DealObject names the deal.
type DealObject struct {
	Name    string `json:"name"`
	Address string `json:"address,omitempty"`
	Notes   string `json:"notes,omitempty"`
}

// VerdictObject is the advice and what it rests on.
type VerdictObject struct {
	Advice       answer.Verdict `json:"advice"`
	DontGoAbove  any            `json:"dont_go_above"`
	AskingPasses bool           `json:"asking_passes"`
	Targets      []string       `json:"targets"`
	Misses       []MissNote     `json:"misses"`
	Shakes       []ShakeNote    `json:"shakes"`
	Bridge       []StepNote     `json:"bridge"`
	CashAside    *AsideNote     `json:"cash_aside,omitempty"`
	MissedBelow  any            `json:"missed_below,omitempty"` // a price under a maximum offer at which a target is missed
	Unproved     []string       `json:"unproved"`               // figures whose search took something for granted
}

// AsideNote is the maximum offers where cash is no matter, and how much of the cash
// needed a thousand dollars off the price frees; only where cash holds the offer back.
type AsideNote struct {
	MaxOffer    any             `json:"max_offer"`
	MaxOfferLow any             `json:"max_offer_low"`
	Frees       decimal.Decimal `json:"frees"`
}

// MissNote is a target missed at the asking price, and by how many dollars.
type MissNote struct {
	Target string          `json:"target"`
	Short  decimal.Decimal `json:"short"`
}

// ShakeNote is something that can go wrong and what it would do.
type ShakeNote struct {
	Name   string          `json:"name"`
	By     decimal.Decimal `json:"by"` // see answer.Shake
	Profit decimal.Decimal `json:"profit"`
	Lost   decimal.Decimal `json:"lost"`
	Cash   decimal.Decimal `json:"cash_needed"`
	Misses []string        `json:"misses"`
}

// StepNote is a line of the bridge from the rule of thumb to the maximum offer.
type StepNote struct {
	Line   string          `json:"line"`
	Amount decimal.Decimal `json:"amount"`
}

// Note is a warning with its place.
type Note struct {
	Code    string `json:"code"`
	Place   string `json:"place,omitempty"`
	Message string `json:"message"`
	Hint    string `json:"hint,omitempty"`
}

// AssumedNote is a default that moves money.
type AssumedNote struct {
	Line    string `json:"line"`
	Of      string `json:"of,omitempty"`
	Value   string `json:"value"`
	Meaning string `json:"meaning"`
}

// CautionNote is a caution with its source.
type CautionNote struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

// JSON writes the answer as one object.
func JSON(w io.Writer, a *answer.Answer) error { return writeJSON(w, NewObject(a)) }

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

// NewObject turns an answer into its JSON object.
func NewObject(a *answer.Answer) Object {
	o := Object{
		Schema:  Schema,
		Deal:    DealObject{a.Deal.Name, a.Deal.Address, a.Deal.Notes},
		Verdict: verdictObject(a),
		Results: figures(a), Warnings: []Note{}, Assumed: []AssumedNote{}, Cautions: []CautionNote{},
	}
	for _, d := range a.Warnings {
		o.Warnings = append(o.Warnings, Note{d.Code, d.Pos.String(), d.Message, d.Hint})
	}
	for _, x := range a.Deal.Firsts {
		o.Assumed = append(o.Assumed, AssumedNote{"scope", x.Parent.Label, x.Label, answer.FirstWhy})
	}
	for _, c := range a.Assumed {
		o.Assumed = append(o.Assumed, AssumedNote{c.Line.ID(), c.Member.Path(), a.AssumedValue(c), c.Line.Meaning})
	}
	for _, c := range a.Cautions {
		o.Cautions = append(o.Cautions, CautionNote{c.ID, c.Title, c.Text, c.Source})
	}
	return o
}

func verdictObject(a *answer.Answer) VerdictObject {
	v := VerdictObject{
		Unproved: append([]string{}, a.Unproved()...),
		Advice:   a.Verdict, DontGoAbove: a.DontGoAbove(), AskingPasses: len(a.Missed()) == 0,
		Targets: solve.Targets(a.Deal.Targets), Misses: []MissNote{}, Shakes: []ShakeNote{}, Bridge: []StepNote{},
	}
	if gap := decimal.Max(a.Gap, a.GapLow); gap.IsPositive() {
		v.MissedBelow = gap
	}
	if x := a.Aside; x != nil {
		v.CashAside = &AsideNote{bearable(x.Offer), bearable(x.OfferLow), x.Frees}
	}
	for _, m := range a.Missed() {
		v.Misses = append(v.Misses, MissNote(m))
	}
	for _, s := range a.Shakes {
		v.Shakes = append(v.Shakes, ShakeNote{s.Name, s.By.Round(ratioPlaces), s.Profit, s.Lost, s.Cash, missed(s.Misses)})
	}
	for _, s := range a.Bridge {
		v.Bridge = append(v.Bridge, StepNote(s))
	}
	return v
}

// bearable is an offer, or nothing where there is none or no end to it.
func bearable(o solve.Offer) any {
	if !o.Found || o.Endless {
		return nil
	}
	return o.Price
}

func missed(misses []answer.Miss) []string {
	names := []string{}
	for _, m := range misses {
		names = append(names, m.Target)
	}
	return names
}

// ratioPlaces is how exactly a figure that is no money is shown; money is exact.
const ratioPlaces = 12

func shown(c *model.Cell, x decimal.Decimal) any {
	if c.Line.Unit == "choice" {
		return c.Line.Choices[x.IntPart()-1]
	}
	return x.Round(ratioPlaces)
}

// figures are all lines of the deal, the months, the loans and what was found by
// search.
func figures(a *answer.Answer) map[string]any {
	out, monthly := members(a, a.Model.Root)
	out["months"] = monthly
	loans := []any{}
	for i, l := range a.Loans() {
		one, months := members(a, l)
		one["name"], one["months"], one["apr"] = l.Label, months, a.Rate(i)
		loans = append(loans, one)
	}
	out["loans"] = loans
	if a.Line("cash_needed").IsZero() {
		out["roi"], out["annualised_roi"], out["cash_needed_month"] = nil, nil, nil
	}
	for _, f := range answer.Searched {
		out[f.Name] = f.Value(a)
	}
	return out
}

// members returns the single and the monthly lines of a member.
func members(a *answer.Answer, m *model.Member) (single, monthly map[string]any) {
	single, monthly = map[string]any{}, map[string]any{}
	for _, l := range a.Model.Doc.Lines {
		if l.Set != m.Set {
			continue
		}
		c := a.Model.Cell(m, l)
		if !l.Monthly {
			single[l.Name] = shown(c, a.Values.Of(c))
			continue
		}
		list := make([]any, a.Values.Months()+1)
		for i := range list {
			list[i] = shown(c, a.Values.In(c, i))
		}
		monthly[l.Name] = list
	}
	return single, monthly
}

// CashJSON writes the months as one object.
func CashJSON(w io.Writer, a *answer.Answer) error {
	_, monthly := members(a, a.Model.Root)
	loans := []any{}
	for _, l := range a.Loans() {
		_, months := members(a, l)
		loans = append(loans, map[string]any{"name": l.Label, "months": months})
	}
	return writeJSON(w, map[string]any{
		"schema": Schema, "deal": DealObject{a.Deal.Name, a.Deal.Address, a.Deal.Notes},
		"results": map[string]any{
			"cash_needed": a.Line("cash_needed"), "cash_needed_month": a.Line("cash_needed_month"),
			"sale_month": a.Line("sale_month"), "months": monthly, "loans": loans,
		},
	})
}
